/** Times the boost that is drilled. */
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import { type DrillState, TICKS_PER_S } from './state.ts';

/** The pressure asked for counts once it has been held so long [s]; ours. */
export const BOOST_HELD_S = 5;
/** Within this of what was asked for it is reached [psi]: as a step asks. */
const WITHIN_PSI = 2;
/** From this flow on water has come [gpm]. */
const FLOWS_GPM = 10;

/**
 * One tick of a boost: it is wanted from the order for it on, else from the supply's first water, and made
 * when the engine holds the pressure asked for.
 */
export function countBoost(scene: DrillScene, state: DrillState): void {
  const { tally } = state;
  if (tally.boostTick >= 0) return;
  if (!hasRules(scene, 2)) {
    if (boosted(scene, state)) tally.boostTick = state.tick;
    return;
  }
  if (!scene.boost) return;
  const { rig, pdpPsi } = scene.boost;
  const order = state.said.find(
    ({ preset }) => preset === 'pressure wanted' || preset === 'more needed',
  );
  const hasCome = state.hydrants.some(({ flowGpm }) => flowGpm > FLOWS_GPM);
  if (!tally.boost && (order || hasCome)) tally.boost = { fromTick: order?.tick ?? state.tick };
  if (!tally.boost) return;
  if (order) tally.boost.fromTick = order.tick;
  const pump = state.pumps.find(({ rigId }) => rigId === rig);
  const flows = pump?.inGear === true && pump.flowGpm > FLOWS_GPM;
  const stands = flows && pump.dischargePsi >= askedPsi(state, pdpPsi) - WITHIN_PSI;
  if (!stands) {
    delete tally.boost.heldFromTick;
    return;
  }
  tally.boost.heldFromTick ??= state.tick;
  if (state.tick - tally.boost.heldFromTick >= BOOST_HELD_S * TICKS_PER_S)
    tally.boostTick = Math.max(tally.boost.heldFromTick, tally.boost.fromTick);
}

/** The pressure asked for last, else the plan's [psi]. */
function askedPsi({ radio }: DrillState, pdpPsi: number): number {
  const last = radio.findLast(
    ({ preset, psi }) => preset === 'pressure wanted' && psi !== undefined,
  );
  return last?.psi ?? pdpPsi;
}

/** As it was before: an engine between hydrant and fire that raises moving water by 10 psi or more. */
function boosted(scene: DrillScene, state: DrillState): boolean {
  return state.pumps.some((pump) => {
    const rig = scene.plan.rigs.find((one) => one.id === pump.rigId)!;
    if (rig.role === 'attack' || rig.id === scene.plan.scene) return false;
    return pump.flowGpm > 10 && pump.dischargePsi - pump.intakePsi >= 10;
  });
}
