import { useRef } from 'react';
import type { Loaded } from '../api/use-loaded.ts';

/** What was loaded last stays on the page while it is read anew, so that nothing jumps. */
export function useLast<T>(loaded: Loaded<T>): Loaded<T> {
  const last = useRef<Loaded<T>>(loaded);
  if (loaded.state !== 'loading') last.current = loaded;
  return last.current;
}
