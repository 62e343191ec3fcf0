/** A drill worked by hand, for tests. */
import type { DrillAction } from './action.ts';
import type { PlayedRole } from './role.ts';
import type { Drill } from './running-drill.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';

/** Lets some seconds of the drill pass, nobody doing anything. */
export function run(drill: Drill, seconds: number): void {
  for (let n = 0; n < seconds * TICKS_PER_S; n++) step(drill);
}

/** Has somebody do something, in one tick. Throws where it is refused. */
export function act(drill: Drill, role: PlayedRole | 'instructor', action: DrillAction): void {
  const refused = step(drill, [{ role, action }]).find(({ kind }) => kind === 'refused');
  if (refused) throw new Error(`Refused: ${JSON.stringify(refused)}`);
}
