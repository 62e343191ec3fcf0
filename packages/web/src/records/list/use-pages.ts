import type { Kind } from '@plugside/records/model';
import { useCallback, useEffect, useRef, useState } from 'react';
import { UnreachableError } from '../../api/problem.ts';
import { listRecords } from '../../api/records.ts';
import type { Values } from '../form/draft.ts';

/** Fetched at a time. */
const PAGE = 300;
/** What one answer of the server holds at most. */
const GREATEST_PAGE = 5000;

export interface Pages {
  state: 'loading' | 'ready' | 'unreachable' | 'failed';
  reason?: string;
  records: readonly Values[];
  total: number;
  next?: string | undefined;
}

const EMPTY: Pages = { state: 'loading', records: [], total: 0 };

/**
 * A kind's records that a search finds, in the order asked for, page by page. What was found stays
 * on the page while the next search is under way.
 * @param sort as the server takes it
 * @param atLeast fetched at first, where more than a page was shown before
 * @param changed another number reads anew
 */
export function usePages(
  kind: Kind,
  search: string,
  sort: string,
  atLeast: number,
  changed: number,
) {
  const [pages, setPages] = useState<Pages>(EMPTY);
  const [attempt, setAttempt] = useState(0);
  const stop = useRef<AbortController | null>(null);
  /** Where the page begins that was fetched last: the rows may stand on the page a moment later. */
  const fetched = useRef<string | undefined>(undefined);
  const first = useRef(atLeast);
  first.current = atLeast;

  const load = useCallback(
    async (after: string | undefined) => {
      stop.current?.abort();
      const mine = new AbortController();
      stop.current = mine;
      const { signal } = mine;
      try {
        const page = await listRecords(
          kind,
          {
            search: search || undefined,
            sort,
            limit: after === undefined ? firstPage(first.current) : PAGE,
            after,
          },
          signal,
        );
        if (signal.aborted) return;
        fetched.current = after;
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
      } finally {
        if (stop.current === mine) stop.current = null;
      }
    },
    [kind, search, sort],
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
    /** Asked again while it is under way, it goes on. */
    more: () => {
      const { state, next } = pages;
      if (state !== 'ready' || stop.current !== null) return;
      if (next !== undefined && next !== fetched.current) void load(next);
    },
  };
}

const firstPage = (atLeast: number): number => Math.min(Math.max(PAGE, atLeast), GREATEST_PAGE);
