/** What is marked on a drill's timeline. */
import type { DrillAction, DrillEvent, DrillLog, Problem, Role } from '@plugside/drill';

export type Mark = { tick: number; seq: number } & (
  | { kind: 'action' | 'radio' | 'fault'; role: Role; action: DrillAction; byComputer?: true }
  | { kind: 'refused'; role: Role; action: DrillAction; problem: Problem }
  | { kind: 'event'; event: DrillEvent }
);

const faultDeeds: ReadonlySet<DrillAction['do']> = new Set(['arm fault', 'lift fault']);
const spoken: ReadonlySet<DrillAction['do']> = new Set(['radio', 'say']);

/** Every entry of a log as a mark, in order. */
export function marksIn(log: DrillLog): Mark[] {
  return log.map((entry): Mark => {
    const { tick, seq } = entry;
    if (entry.kind === 'event') return { tick, seq, kind: 'event', event: entry.event };
    const { role, action } = entry;
    if (entry.kind === 'refused')
      return { tick, seq, kind: 'refused', role, action, problem: entry.problem };
    const kind = spoken.has(action.do) ? 'radio' : faultDeeds.has(action.do) ? 'fault' : 'action';
    return { tick, seq, kind, role, action, ...(entry.byComputer && { byComputer: true }) };
  });
}
