/** What can be seen of a piece that sits on another without hose: an assist valve on its hydrant. */
import type { DrillTruth } from '@plugside/drill';

export type SitsLooks = 'empty' | 'full' | 'flows';

/** Flow under which nothing moves [gpm]. */
const MOVES_GPM = 1;

/** Whether water stands or moves between a piece and what it sits on, as in hose. */
export function sitsLooks({ state }: DrillTruth, piece: string, on: string): SitsLooks {
  const hydrant = state.hydrants.find(({ id }) => id === on);
  const nozzle = state.nozzles.find(({ id }) => id === piece);
  const flowGpm = Math.abs(hydrant?.flowGpm ?? nozzle?.flowGpm ?? 0);
  if (flowGpm >= MOVES_GPM) return 'flows';
  const stem = state.valves.find(({ id }) => id === `${on}.stem`);
  return hydrant && (stem?.opening ?? 0) > 0 ? 'full' : 'empty';
}
