import { Component, type ReactNode } from 'react';
import { PlaceHeader } from './PlaceHeader.tsx';

interface PlaceGuardProps {
  name: string;
  /** A new value tries again. */
  resetOn: unknown;
  children: ReactNode;
}

/** Keeps a place that fails, or cannot be fetched, from taking the others with it. */
export class PlaceGuard extends Component<PlaceGuardProps, { failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override componentDidUpdate(before: PlaceGuardProps): void {
    if (this.state.failed && before.resetOn !== this.props.resetOn) {
      this.setState({ failed: false });
    }
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children;
    return (
      <div className="page">
        <PlaceHeader title={this.props.name} />
        <main>
          <p className="nothing" role="alert">
            {this.props.name} failed, or could not be fetched. Load the page again; what was saved
            is kept. The other places work on.
          </p>
        </main>
      </div>
    );
  }
}
