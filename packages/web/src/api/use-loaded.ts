import { useCallback, useEffect, useState } from 'react';
import { UnreachableError } from './problem.ts';

export type Loaded<T> =
  | { state: 'loading' }
  | { state: 'ready'; value: T }
  | { state: 'unreachable' }
  | { state: 'failed'; reason: string };

/**
 * What a request brings, kept up with the key it was made for; null asks for nothing.
 * @returns the outcome, and a way to ask again
 */
export function useLoaded<T>(
  key: string | null,
  load: (signal: AbortSignal) => Promise<T>,
): [Loaded<T>, () => void] {
  const [loaded, setLoaded] = useState<{ key: string | null; outcome: Loaded<T> }>({
    key: null,
    outcome: { state: 'loading' },
  });
  const [attempt, setAttempt] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says when to load anew
  useEffect(() => {
    if (key === null) return;
    const stop = new AbortController();
    setLoaded({ key, outcome: { state: 'loading' } });
    load(stop.signal).then(
      (value) => {
        if (!stop.signal.aborted) setLoaded({ key, outcome: { state: 'ready', value } });
      },
      (error: unknown) => {
        if (stop.signal.aborted) return;
        const outcome: Loaded<T> =
          error instanceof UnreachableError
            ? { state: 'unreachable' }
            : { state: 'failed', reason: error instanceof Error ? error.message : String(error) };
        setLoaded({ key, outcome });
      },
    );
    return () => stop.abort();
  }, [key, attempt]);
  const retry = useCallback(() => setAttempt((before) => before + 1), []);
  return [loaded.key === key ? loaded.outcome : { state: 'loading' }, retry];
}
