/** Air that a pump draws through an intake that stands open on no water. */
import { splitPortRef } from '@plugside/fireground';
import { AIR_TO_WATER, THROUGH_PUMP } from './hose-front.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import { boreK, leastOpening } from './valve-loss.ts';

/** How wide a pump's intakes stand open to air: K for air as for water [gpm/√psi]; 0 where none does. */
export function airWayK(scene: DrillScene, state: DrillState, rigId: string): number {
  let k = 0;
  for (const at of intakesOf(scene, rigId)) {
    const { id, boreIn } = scene.valves[at]!;
    const { opening } = state.valves[at]!;
    if (opening < leastOpening || !letsAirIn(scene, state, id)) continue;
    k += AIR_TO_WATER * THROUGH_PUMP * opening * boreK(boreIn);
  }
  return k;
}

/** By scene, which never changes: the intakes of each engine, by their place among the valves. */
const known = new WeakMap<DrillScene, Map<string, number[]>>();

function intakesOf(scene: DrillScene, rigId: string): readonly number[] {
  let byRig = known.get(scene);
  if (!byRig) {
    byRig = new Map(scene.plan.rigs.map(({ id }) => [id, []]));
    scene.valves.forEach(({ kind, pieceId }, at) => {
      if (kind === 'intake') byRig?.get(pieceId)?.push(at);
    });
    known.set(scene, byRig);
  }
  return byRig.get(rigId) ?? [];
}

/** Whether air stands at an intake: the hose on it is burst, loose, dry or not yet full, or was taken off. */
function letsAirIn(scene: DrillScene, state: DrillState, port: string): boolean {
  const hose = state.hoses.find(({ from, to }) => from.port === port || to.port === port);
  if (!hose) return state.uncapped.includes(port);
  if (hose.phase === 'full') return false;
  // A suction hose that lies in open water is drawn full by the primer.
  const far = hose.from.port === port ? hose.to : hose.from;
  if (far.port === null) return true;
  const { pieceId } = splitPortRef(far.port);
  return !scene.plan.drafts.some(({ id }) => id === pieceId);
}
