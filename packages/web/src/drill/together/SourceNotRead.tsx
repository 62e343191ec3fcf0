import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';

interface SourceNotReadProps {
  /** "The hydrant". */
  what: string;
  onRetry(): void;
  /** To pick another. */
  another: ReactNode;
}

/** What a drill was to be made from could not be read. */
export function SourceNotRead({ what, onRetry, another }: SourceNotReadProps) {
  return (
    <div className="source-picked">
      <p className="tone-warning" role="alert">
        {what} could not be read.
      </p>
      <p className="room-actions">
        <Button className="plain-button" onPress={onRetry}>
          Try again
        </Button>
        {another}
      </p>
    </div>
  );
}
