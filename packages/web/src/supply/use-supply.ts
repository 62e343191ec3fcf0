import type { Choice, Criterion, Mishap, Situation, SupplyWay } from '@plugside/fireground';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { type SupplyService, startSupply } from './supply-service.ts';

export interface Worked<T> {
  /** The last that was worked out; it stays while the next is. */
  value: T | null;
  working: boolean;
  problem: string | null;
}

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
function useWorked<T>(ask: (() => Promise<T>) | null): Worked<T> {
  const [worked, setWorked] = useState<Worked<T>>({ value: null, working: false, problem: null });
  const wanted = useRef(ask);
  const busy = useRef(false);
  useEffect(() => {
    wanted.current = ask;
    if (!ask) {
      setWorked({ value: null, working: false, problem: null });
      return;
    }
    setWorked((before) => ({ ...before, working: true }));
    const work = async () => {
      if (busy.current) return;
      busy.current = true;
      let done: typeof ask | null = null;
      while (wanted.current && wanted.current !== done) {
        done = wanted.current;
        try {
          const value = await done();
          if (wanted.current === done) setWorked({ value, working: false, problem: null });
        } catch (error) {
          const problem = error instanceof Error ? error.message : String(error);
          if (wanted.current === done) setWorked({ value: null, working: false, problem });
        }
      }
      busy.current = false;
    };
    void work();
  }, [ask]);
  return worked;
}

/** The ways to supply a situation, ranked. */
export function useChoice(
  service: SupplyService | null,
  situation: Situation,
  ranking: Criterion[],
): Worked<Choice> {
  const { system } = useUnits();
  const ask = useMemo(
    () =>
      service && (() => service.ask({ ask: 'choice', situation, ranking, units: system } as const)),
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
