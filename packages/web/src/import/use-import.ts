/** An import as the server tells of it, kept up while it is at work. */
import type { Mapping } from '@plugside/records/import-fields';
import { useCallback, useEffect, useRef, useState } from 'react';
import { changeMapping, getImport, guessAnew, type ImportView, runImport } from '../api/imports.ts';
import { ProblemError, type RefusedField, UnreachableError } from '../api/problem.ts';
import {
  isFresh,
  type Recalled,
  recall,
  rememberedLists,
  rememberList,
  unmarkFresh,
} from './remembered.ts';

const POLL_MS = 400;

export interface ImportHandle {
  view: ImportView | null;
  /** It is being looked up whether the list is remembered. */
  looking: boolean;
  /** The server does not know it, or does not answer. */
  away: 'gone' | 'unreachable' | null;
  /** What the last change or request was refused for. */
  problem: string | null;
  /** Of the mapping as it is shown, where the server did not take it: it must be mended first. */
  issues: readonly RefusedField[];
  /** What was remembered of this list, told until it is dealt with. */
  recalled: Recalled;
  forgetRecalled(): void;
  /** Sends a request that answers with the import. */
  act(request: () => Promise<ImportView | undefined>): Promise<boolean>;
  setMapping(mapping: Mapping): void;
  guess(kind: Mapping['kind']): Promise<boolean>;
  /** Runs with the mapping as it is shown, and not where that was refused. */
  run(dryRun: boolean): Promise<boolean>;
  retry(): void;
}

const busy = (view: ImportView | null) =>
  view === null || view.state === 'reading' || view.state === 'running';

export function useImport(id: string): ImportHandle {
  const [view, setView] = useState<ImportView | null>(null);
  const [away, setAway] = useState<ImportHandle['away']>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [recalled, setRecalled] = useState<Recalled>(null);
  const [issues, setIssues] = useState<readonly RefusedField[]>([]);
  /** A new file, until it is known whether its list is remembered. */
  const [looking, setLooking] = useState(() => isFresh(id));
  const [attempt, setAttempt] = useState(0);
  /** Requests go one after the other: a run must not overtake the mapping that it is to use. */
  const queue = useRef<Promise<unknown>>(Promise.resolve());
  const refused = useRef(false);
  const looked = useRef(false);
  /** Of several changes on the way, the last one's answer counts. */
  const latest = useRef(0);

  const act = useCallback((request: () => Promise<ImportView | undefined>) => {
    latest.current += 1;
    const mine = latest.current;
    const send = async () => {
      try {
        const next = await request();
        if (mine === latest.current) {
          if (next) setView(next);
          setProblem(null);
          setIssues([]);
        }
        return true;
      } catch (error) {
        if (mine !== latest.current) return false;
        if (error instanceof UnreachableError) setAway('unreachable');
        else if (error instanceof ProblemError && error.status === 404) setAway('gone');
        else {
          setProblem(error instanceof Error ? error.message : String(error));
          setIssues(error instanceof ProblemError ? (error.problem.issues ?? []) : []);
        }
        return false;
      }
    };
    const sent = queue.current.then(send);
    queue.current = sent;
    return sent;
  }, []);

  const sendMapping = useCallback(
    async (request: () => Promise<ImportView>) => {
      refused.current = !(await act(request));
      return !refused.current;
    },
    [act],
  );

  const waiting = busy(view) && away === null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another attempt asks anew
  useEffect(() => {
    if (!waiting) return;
    const stop = new AbortController();
    let timer = 0;
    const look = async () => {
      const asked = latest.current;
      try {
        const next = await getImport(id, stop.signal);
        if (stop.signal.aborted) return;
        if (asked === latest.current) setView(next);
      } catch (error) {
        if (stop.signal.aborted) return;
        if (error instanceof ProblemError && error.status === 404) setAway('gone');
        else if (error instanceof UnreachableError) setAway('unreachable');
        else setProblem(error instanceof Error ? error.message : String(error));
      }
      timer = window.setTimeout(look, POLL_MS);
    };
    void look();
    return () => {
      stop.abort();
      window.clearTimeout(timer);
    };
  }, [id, waiting, attempt]);

  const first = view?.state === 'ready' && looking ? view : null;
  useEffect(() => {
    if (!first?.mapping || looked.current) return;
    looked.current = true;
    const found = recall(rememberedLists(), first.mapping, first.columns);
    setRecalled(found);
    const used = found?.is === 'same list' ? found.mapping : null;
    void (async () => {
      if (used) await sendMapping(() => changeMapping(id, used));
      unmarkFresh();
      setLooking(false);
    })();
  }, [first, id, sendMapping]);

  const setMapping = useCallback(
    (mapping: Mapping) => {
      // Shown at once; the rows follow when the server has read them anew.
      setView((before) => before && { ...before, mapping });
      void sendMapping(() => changeMapping(id, mapping));
    },
    [id, sendMapping],
  );
  return {
    view,
    looking,
    away,
    problem,
    issues,
    recalled,
    forgetRecalled: () => setRecalled(null),
    act,
    setMapping,
    guess: (kind) => sendMapping(() => guessAnew(id, kind)),
    run: async (dryRun) => {
      await queue.current;
      if (refused.current) return false;
      if (view?.mapping && !dryRun) rememberList(view.name, view.columns, view.mapping);
      return act(() => runImport(id, dryRun));
    },
    retry: () => {
      setAway(null);
      setProblem(null);
      setAttempt((before) => before + 1);
    },
  };
}
