import { Component, type ReactNode } from 'react';

interface DrawingGuardProps {
  /** What is guarded, for the message: "The drawing". */
  what: string;
  /** A new value tries again. */
  resetOn: unknown;
  children: ReactNode;
}

/** Keeps a picture that fails from taking the page with it, and says so in its place. */
export class DrawingGuard extends Component<DrawingGuardProps, { failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override componentDidUpdate(before: DrawingGuardProps): void {
    if (this.state.failed && before.resetOn !== this.props.resetOn)
      this.setState({ failed: false });
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children;
    return (
      <p className="nothing" role="status">
        {this.props.what} cannot be drawn for this plan. The numbers beside it still hold. Undo the
        last change to get it back.
      </p>
    );
  }
}
