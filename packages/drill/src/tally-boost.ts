/** Times the boost that is drilled. */
import { lastAsked } from './asked-pressure.ts';
import type { DrillEvent } from './event.ts';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import { type DrillState, type PumpState, TICKS_PER_S } from './state.ts';
import { pieceName } from './words/piece-words.ts';

/** The pressure asked for counts once it has been held so long [s]; ours. */
export const BOOST_HELD_S = 5;
/** Within this of what was asked for it is reached [psi]: as a step asks. */
const WITHIN_PSI = 2;
/** More than this over it is told, and is not what was asked for [psi]; ours. */
const OVER_PSI = 10;
/** From this on a pump itself raises what comes to it [psi]; ours. */
const RAISES_PSI = 5;
/** From this flow on water has come [gpm]. */
const FLOWS_GPM = 10;

/**
 * One tick of a boost: it is wanted from the order for it on, else from the supply's first water, and made
 * when the engine holds the pressure asked for.
 */
export function countBoost(scene: DrillScene, state: DrillState): DrillEvent[] {
  const { tally } = state;
  const events = overAsked(scene, state);
  if (tally.boostTick >= 0) return events;
  if (!hasRules(scene, 2)) {
    if (boosted(scene, state)) tally.boostTick = state.tick;
    return events;
  }
  if (scene.boost) timeBoost(scene, state, scene.boost);
  return events;
}

function timeBoost(
  scene: DrillScene,
  state: DrillState,
  boost: NonNullable<DrillScene['boost']>,
): void {
  const { tally } = state;
  const { rig, pdpPsi } = boost;
  const order = state.said.find(
    ({ preset }) => preset === 'pressure wanted' || preset === 'more needed',
  );
  const hasCome = state.hydrants.some(({ flowGpm }) => flowGpm > FLOWS_GPM);
  if (!tally.boost && (order || hasCome)) tally.boost = { fromTick: order?.tick ?? state.tick };
  if (!tally.boost) return;
  if (order) tally.boost.fromTick = order.tick;
  const pump = state.pumps.find(({ rigId }) => rigId === rig);
  const flows = pump?.inGear === true && pump.flowGpm > FLOWS_GPM;
  const over = hasRules(scene, 3) && isOver(pump, lastAsked(scene, state, rig)?.psi);
  const stands = flows && pump.dischargePsi >= askedPsi(state, pdpPsi) - WITHIN_PSI && !over;
  if (!stands) {
    delete tally.boost.heldFromTick;
    return;
  }
  tally.boost.heldFromTick ??= state.tick;
  if (state.tick - tally.boost.heldFromTick >= BOOST_HELD_S * TICKS_PER_S)
    tally.boostTick = Math.max(tally.boost.heldFromTick, tally.boost.fromTick);
}

/** Whether a pump gives more than was asked for, by its own doing. */
function isOver(pump: PumpState | undefined, asked: number | undefined): boolean {
  if (!pump || asked === undefined || !pump.inGear || pump.flowGpm <= FLOWS_GPM) return false;
  return pump.dischargePsi > asked + OVER_PSI && pump.dischargePsi > pump.intakePsi + RAISES_PSI;
}

/** Tells once for each order that more is given than was asked for. */
function overAsked(scene: DrillScene, state: DrillState): DrillEvent[] {
  const { boost } = scene;
  const asked = boost && hasRules(scene, 3) ? lastAsked(scene, state, boost.rig) : undefined;
  const pump = state.pumps.find(({ rigId }) => rigId === boost?.rig);
  if (!boost || !asked || !pump || !isOver(pump, asked.psi)) return [];
  state.tally.boost ??= { fromTick: asked.tick };
  if (state.tally.boost.overToldTick === asked.tick) return [];
  state.tally.boost.overToldTick = asked.tick;
  return [
    {
      kind: 'more than asked',
      level: 'caution',
      piece: boost.rig,
      text: `${pieceName(scene, boost.rig)} gives ${Math.round(pump.dischargePsi)} psi; ${asked.psi} psi was asked for. What is over stands on the next intake.`,
    },
  ];
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
