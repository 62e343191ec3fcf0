/** When a pump's intake is held to the pressure that hose should bring. */
import { splitPortRef } from '@plugside/fireground';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import { deadTankGal } from './solve-flows.ts';
import type { DrillState, PumpState } from './state.ts';
import { leastOpening } from './valve-loss.ts';

/** Flow under which nothing moves [gpm]. */
const MOVES_GPM = 1;

/**
 * Whether hose feeds a pump, and whether its intake stands under the benchmark for it. A pump that lifts
 * the most of its flow from tank or open water is not judged; one without water is, while lines are
 * called for: no flow and a lost prime are the worst of it.
 */
export function intakeJudged(
  scene: DrillScene,
  state: DrillState,
  pump: PumpState,
): { isHoseFed: boolean; isUnder: boolean } {
  const under = pump.intakePsi < scene.benchmarks.intakePsi;
  if (!hasRules(scene, 2)) {
    const isHoseFed = pump.inGear && pump.flowGpm > MOVES_GPM && !mayLift(scene, state, pump);
    return { isHoseFed, isUnder: isHoseFed && under };
  }
  const flows = pump.flowGpm > MOVES_GPM;
  if (!pump.inGear || (!flows && !hasLinesOpen(scene, state, pump.rigId)))
    return { isHoseFed: false, isUnder: false };
  if (pump.condition === 'lost prime') return { isHoseFed: true, isUnder: true };
  const isHoseFed = !liftsMost(scene, state, pump);
  return { isHoseFed, isUnder: isHoseFed && under };
}

/** Whether a pump lifts more than half of its flow from its tank or open water. */
export function liftsMost(scene: DrillScene, state: DrillState, pump: PumpState): boolean {
  const { flowGpm, tankGpm, rigId } = pump;
  if (flowGpm > MOVES_GPM) return tankGpm + draftGpm(scene, state, rigId) > 0.5 * flowGpm;
  return hasTankOpen(state, rigId) || draftGpm(scene, state, rigId) > 0;
}

/** What comes to a pump through hose out of open water [gpm]. */
function draftGpm(scene: DrillScene, state: DrillState, rigId: string): number {
  if (scene.plan.drafts.length === 0) return 0;
  let gpm = 0;
  for (const { from, to, flowGpm } of state.hoses)
    if (leads(scene, from.port, to.port, rigId)) gpm += Math.abs(flowGpm);
  return gpm;
}

function leads(scene: DrillScene, from: string | null, to: string | null, rigId: string): boolean {
  return (
    from !== null &&
    to !== null &&
    splitPortRef(to).pieceId === rigId &&
    scene.plan.drafts.some((one) => one.id === splitPortRef(from).pieceId)
  );
}

function hasTankOpen(state: DrillState, rigId: string): boolean {
  const valve = state.valves.find(({ id }) => id === `${rigId}.tankToPump`);
  const tank = state.tanks.find((one) => one.rigId === rigId);
  return (valve?.opening ?? 0) >= leastOpening && (tank?.gal ?? 0) > deadTankGal;
}

/** Whether a pump's discharges stand open on hose while a nozzle is open. */
function hasLinesOpen(scene: DrillScene, state: DrillState, rigId: string): boolean {
  const isOpen = (id: string) =>
    (state.valves.find((valve) => valve.id === id)?.opening ?? 0) >= leastOpening;
  return (
    scene.plan.nozzles.some(({ id }) => isOpen(`${id}.bale`)) &&
    state.hoses.some(
      ({ from: { port } }) => port?.startsWith(`${rigId}.discharge`) === true && isOpen(port),
    )
  );
}

/** As it was before: a tank that is cracked, or a hose from open water, and nothing was judged. */
function mayLift(scene: DrillScene, state: DrillState, { rigId }: PumpState): boolean {
  return (
    state.valves.some((one) => one.id === `${rigId}.tankToPump` && one.opening > 0) ||
    state.hoses.some(({ from, to }) => leads(scene, from.port, to.port, rigId))
  );
}
