import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { Loaded } from '../api/use-loaded.ts';
import { Unreachable } from '../places/Unreachable.tsx';

interface OnceProps<T> {
  loaded: Loaded<T>;
  retry(): void;
  what: string;
  children(value: T): ReactNode;
}

/** Shows what was fetched, or why it was not and what to do. */
export function Once<T>({ loaded, retry, what, children }: OnceProps<T>) {
  if (loaded.state === 'ready') return children(loaded.value);
  if (loaded.state === 'loading') {
    return (
      <p className="nothing" role="status">
        Reading…
      </p>
    );
  }
  if (loaded.state === 'unreachable') return <Unreachable what={what} onRetry={retry} />;
  return (
    <div className="records-empty" role="alert">
      <p>
        <b>{what} could not be read.</b> {loaded.reason}
      </p>
      <p>
        <Button className="plain-button" onPress={retry}>
          Try again
        </Button>
      </p>
    </div>
  );
}
