import type { Plan } from '@plugside/fireground';

/** What an instructor can make go wrong. */
interface FaultBase {
  /** Unique in a drill: up to 40 letters, digits, dashes. */
  id: string;
  /** Takes effect at this tick; left out: at once. */
  atTick?: number;
}

export type Fault = FaultBase &
  (
    | {
        kind: 'hydrant weak';
        hydrant: string /** Share of its tested flow that is left [0.1 … 1]. */;
        share: number;
      }
    | { kind: 'clapper stuck'; valve: string }
    | { kind: 'hose burst'; hose: string }
    | {
        kind: 'hose kinked';
        hose: string /** Times its friction coefficient [1 … 100]. */;
        factor: number;
      }
    | { kind: 'pump dies'; rig: string }
  );

export type FaultKind = Fault['kind'];

/** Whether a fault's moment has come. */
export function inEffect(state: { tick: number }, fault: { atTick?: number }): boolean {
  return fault.atTick === undefined || fault.atTick <= state.tick;
}

/** What of a state says which faults there are. */
interface Faulty {
  tick: number;
  faults: readonly Fault[];
}

/** Whether a fault has stopped a rig's engine. */
export function engineIsDead(state: Faulty, rigId: string): boolean {
  return state.faults.some(
    (fault) => fault.kind === 'pump dies' && fault.rig === rigId && inEffect(state, fault),
  );
}

/** Whether an assist valve's clapper is stuck shut, by a fault or in the plan. */
export function clapperIsStuck(plan: Plan, state: Faulty, valveId: string): boolean {
  const piece = plan.appliances.find((one) => one.id === valveId);
  if (piece?.kind === 'assist-valve' && piece.clapperStuck === 'shut') return true;
  return state.faults.some(
    (fault) => fault.kind === 'clapper stuck' && fault.valve === valveId && inEffect(state, fault),
  );
}
