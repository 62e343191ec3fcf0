import type { Plan, PortRef } from '@plugside/fireground';
import type { HoseEnd } from './names.ts';

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
    /** Stuck where it stands; in a drill of before, stuck shut. */
    | { kind: 'clapper stuck'; valve: string }
    /** Stuck open from when it next stands open. */
    | { kind: 'clapper stuck open'; valve: string }
    /** Someone has put a hose that is not charged on another port. */
    | { kind: 'wrong port'; hose: string; end: HoseEnd; port: PortRef }
    /** An extra line is called for. */
    | { kind: 'line called'; nozzle: string }
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

/** How an assist valve's clapper is stuck, by a fault or in the plan; undefined: it moves. */
export function clapperStuck(
  plan: Plan,
  state: Faulty & { assistValves: readonly { id: string; stuck?: 'open' | 'shut' }[] },
  valveId: string,
): 'open' | 'shut' | undefined {
  const piece = plan.appliances.find((one) => one.id === valveId);
  if (piece?.kind === 'assist-valve' && piece.clapperStuck === 'shut') return 'shut';
  const where = state.assistValves.find(({ id }) => id === valveId)?.stuck;
  const stuck = (kind: FaultKind) =>
    state.faults.some(
      (fault) =>
        fault.kind === kind &&
        'valve' in fault &&
        fault.valve === valveId &&
        inEffect(state, fault),
    );
  if (stuck('clapper stuck')) return where ?? 'shut';
  return where === 'open' && stuck('clapper stuck open') ? 'open' : undefined;
}
