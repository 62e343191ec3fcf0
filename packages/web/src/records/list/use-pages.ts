import type { Kind } from '@plugside/records/model';
import { useCallback, useEffect, useRef, useState } from 'react';
import { UnreachableError } from '../../api/problem.ts';
import { listRecords } from '../../api/records.ts';
import type { Values } from '../form/draft.ts';

/** One answer of the server holds this many at most; a list that fits in one is sorted. */
export const PAGE = 2000;

export interface Pages {
  state: 'loading' | 'ready' | 'unreachable' | 'failed';
  reason?: string;
  records: readonly Values[];
  total: number;
  next?: string | undefined;
}

const EMPTY: Pages = { state: 'loading', records: [], total: 0 };

/**
 * A kind's records that a search finds, page by page. What was found stays on the page while the
 * next search is under way.
 * @param changed another number reads anew
 */
export function usePages(kind: Kind, search: string, changed: number) {
  const [pages, setPages] = useState<Pages>(EMPTY);
  const [attempt, setAttempt] = useState(0);
  const stop = useRef<AbortController | null>(null);

  const load = useCallback(
    async (after: string | undefined) => {
      stop.current?.abort();
      stop.current = new AbortController();
      const { signal } = stop.current;
      try {
        const page = await listRecords(
          kind,
          { search: search || undefined, limit: PAGE, after },
          signal,
        );
        if (signal.aborted) return;
        setPages((before) => ({
          state: 'ready',
          records: after === undefined ? page.records : [...before.records, ...page.records],
          total: page.total,
          next: page.next,
        }));
      } catch (error) {
        if (signal.aborted) return;
        const reason = error instanceof Error ? error.message : String(error);
        const state = error instanceof UnreachableError ? 'unreachable' : 'failed';
        setPages((before) => ({ ...before, state, reason }));
      }
    },
    [kind, search],
  );

  // biome-ignore lint/correctness/useExhaustiveDependencies: a change and another try read anew
  useEffect(() => {
    setPages((before) => ({ ...before, state: 'loading' }));
    void load(undefined);
    return () => stop.current?.abort();
  }, [load, changed, attempt]);

  return {
    pages,
    retry: () => setAttempt((before) => before + 1),
    more: () => pages.next !== undefined && void load(pages.next),
  };
}
