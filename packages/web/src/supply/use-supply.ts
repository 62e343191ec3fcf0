import type { Choice, Criterion, Mishap, Situation, SupplyWay } from '@plugside/fireground';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { type SupplyService, startSupply } from './supply-service.ts';

export interface Worked<T> {
  /** The last that was worked out; it stays while the next is. */
  value: T | null;
  working: boolean;
  problem: string | null;
  /** Stopped by hand: the value is of what was asked before. */
  stopped: boolean;
}

export interface Stoppable<T> extends Worked<T> {
  stop(): void;
  /** Works out what was stopped. */
  again(): void;
}

const AT_REST = { value: null, working: false, problem: null, stopped: false } as const;

/** A thread of its own for as long as the place is open. */
export function useSupplyService(): SupplyService | null {
  const [service, setService] = useState<SupplyService | null>(null);
  useEffect(() => {
    const started = startSupply();
    setService(started);
    return () => started.end();
  }, []);
  return service;
}

/** Of many asked for meanwhile only the last is worked out and shown. */
function useWorked<T>(ask: ((signal: AbortSignal) => Promise<T>) | null): Stoppable<T> {
  const [worked, setWorked] = useState<Worked<T>>(AT_REST);
  const wanted = useRef(ask);
  const busy = useRef<AbortController | null>(null);
  const work = useCallback(async () => {
    setWorked((before) => ({ ...before, working: true, stopped: false }));
    if (busy.current) return;
    let done: typeof ask | null = null;
    while (wanted.current && wanted.current !== done) {
      done = wanted.current;
      busy.current = new AbortController();
      try {
        const value = await done(busy.current.signal);
        if (wanted.current === done) setWorked({ ...AT_REST, value });
      } catch (error) {
        const problem = error instanceof Error ? error.message : String(error);
        if (wanted.current === done) setWorked({ ...AT_REST, problem });
      }
    }
    busy.current = null;
  }, []);
  useEffect(() => {
    wanted.current = ask;
    if (ask) void work();
    else setWorked(AT_REST);
  }, [ask, work]);
  const stop = useCallback(() => {
    wanted.current = null;
    busy.current?.abort();
    setWorked((before) => ({ ...before, working: false, stopped: true }));
  }, []);
  const again = useCallback(() => {
    wanted.current = ask;
    if (ask) void work();
  }, [ask, work]);
  return { ...worked, stop, again };
}

/** The ways to supply a situation, ranked. */
export function useChoice(
  service: SupplyService | null,
  situation: Situation,
  ranking: Criterion[],
): Stoppable<Choice> {
  const { system } = useUnits();
  const ask = useMemo(
    () =>
      service &&
      ((signal: AbortSignal) =>
        service.ask({ ask: 'choice', situation, ranking, units: system } as const, signal)),
    [service, situation, ranking, system],
  );
  return useWorked(ask);
}

/** What becomes of a way when something goes wrong. */
export function useMishaps(
  service: SupplyService | null,
  { plan, shuttle }: SupplyWay,
  demandGpm: number,
): Worked<Mishap[]> {
  const { system } = useUnits();
  const ask = useMemo(
    () =>
      service &&
      (() => {
        const of = { plan, ...(shuttle && { shuttle }) };
        return service.ask({ ask: 'mishaps', of, demandGpm, units: system } as const);
      }),
    [service, plan, shuttle, demandGpm, system],
  );
  return useWorked(ask);
}

/** What takes no longer is not worth a word [ms]. */
const WORTH_TELLING_MS = 500;

/** Whether something has been going on for so long that it is to be told. */
export function useIsLong(going: boolean): boolean {
  const [long, setLong] = useState(false);
  useEffect(() => {
    if (!going) {
      setLong(false);
      return;
    }
    const timer = setTimeout(() => setLong(true), WORTH_TELLING_MS);
    return () => clearTimeout(timer);
  }, [going]);
  return going && long;
}
