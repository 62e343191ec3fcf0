/** Counts, tick by tick, what a drill is judged on. */
import { nozzleRatedGpm, splitPortRef } from '@plugside/fireground';
import type { DrillEvent } from './event.ts';
import { holds } from './holds.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import type { Tally, TallyKind, TallyLine } from './tally-shape.ts';
import { hoseName, pieceName } from './words/piece-words.ts';

const mostMoments = 100;
/** Pressure at a nozzle is kept at every so many ticks. */
const EVERY_TICKS = 4;
/** What stops for no longer than this is one moment, told once [ticks]. */
const GOES_ON_TICKS = 20;

export const tallyKinds: readonly TallyKind[] = [
  'nozzle interrupted',
  'intake under',
  'main under',
  'hose over',
  'nozzle swing',
];

/** A tally of nothing yet. */
export function emptyTally(scene: DrillScene): Tally {
  const line = (): TallyLine => ({ ticks: 0, moments: [] });
  return {
    lines: {
      'nozzle interrupted': line(),
      'intake under': line(),
      'main under': line(),
      'hose over': line(),
      'nozzle swing': line(),
    },
    nozzles: scene.plan.nozzles.map(({ id }) => ({ id, supplied: false, recentPsi: [] })),
    boostTick: -1,
    stepTicks: [],
    wrongConnections: [],
  };
}

/** Counts one tick. @returns what begins to be wrong in it, and water that reaches or leaves a nozzle */
export function countTick({ scene, state }: Drill): DrillEvent[] {
  const events: DrillEvent[] = [];
  const { benchmarks } = scene;
  countNozzles(scene, state, events);
  const draws = (rigId: string) =>
    state.valves.some((one) => one.id === `${rigId}.tankToPump` && one.opening > 0) ||
    state.hoses.some(
      (hose) =>
        hose.to.port !== null &&
        splitPortRef(hose.to.port).pieceId === rigId &&
        hose.from.port !== null &&
        scene.plan.drafts.some((one) => one.id === splitPortRef(hose.from.port!).pieceId),
    );
  for (const pump of state.pumps) {
    const under =
      pump.inGear &&
      pump.flowGpm > 1 &&
      pump.intakePsi < benchmarks.intakePsi &&
      !draws(pump.rigId);
    if (count(state, 'intake under', pump.rigId, under, pump.intakePsi, Math.min))
      events.push({
        kind: 'intake under limit',
        level: 'caution',
        piece: pump.rigId,
        text: `${pieceName(scene, pump.rigId)}'s intake falls under ${benchmarks.intakePsi} psi.`,
      });
  }
  for (const hydrant of state.hydrants) {
    const under = hydrant.flowGpm > 1 && hydrant.mainPsi < benchmarks.mainPsi;
    if (count(state, 'main under', hydrant.id, under, hydrant.mainPsi, Math.min))
      events.push({
        kind: 'main under limit',
        level: 'caution',
        piece: hydrant.id,
        text: `The main at ${pieceName(scene, hydrant.id)} falls under ${benchmarks.mainPsi} psi: it can take in foul water or collapse. Ease back.`,
      });
  }
  state.hoses.forEach((hose, at) => {
    const piece = scene.hoses[at]!;
    const psi = Math.max(hose.from.psi, hose.to.psi);
    const over = hose.phase !== 'burst' && psi > piece.limitPsi;
    if (count(state, 'hose over', hose.id, over, psi, Math.max))
      events.push({
        kind: 'hose over its limit',
        level: 'caution',
        piece: hose.id,
        text: `${hoseName(piece)} stands at ${Math.round(psi)} psi, over its limit of ${piece.limitPsi}.`,
      });
  });
  if (state.tally.boostTick < 0 && boosted(scene, state)) state.tally.boostTick = state.tick;
  for (const step of scene.steps) {
    if (state.tally.stepTicks.some((one) => one.step === step.id)) continue;
    if (holds(step.done, scene, state))
      state.tally.stepTicks.push({ step: step.id, tick: state.tick });
  }
  return events;
}

/** An engine between hydrant and fire that raises the pressure of moving water by 10 psi or more. */
function boosted(scene: DrillScene, state: DrillState): boolean {
  return state.pumps.some((pump) => {
    const rig = scene.plan.rigs.find((one) => one.id === pump.rigId)!;
    if (rig.role === 'attack' || rig.id === scene.plan.scene) return false;
    return pump.flowGpm > 10 && pump.dischargePsi - pump.intakePsi >= 10;
  });
}

function countNozzles(scene: DrillScene, state: DrillState, events: DrillEvent[]): void {
  const { benchmarks } = scene;
  const kept = Math.max(2, Math.round((benchmarks.swingWindowS * 20) / EVERY_TICKS));
  state.nozzles.forEach((nozzle, at) => {
    const piece = scene.plan.nozzles[at]!;
    const seen = state.tally.nozzles[at]!;
    const bale = state.valves.find((one) => one.id === `${nozzle.id}.bale`)!;
    const open = bale.opening > 0.9 && bale.target > 0.9;
    const flows = nozzle.flowGpm >= benchmarks.nozzleSuppliedShare * nozzleRatedGpm(piece);
    if (!open) {
      seen.supplied = false;
      seen.recentPsi = [];
    } else if (flows && !seen.supplied) {
      seen.supplied = true;
      events.push({
        kind: 'water at nozzle',
        level: 'fact',
        piece: nozzle.id,
        text: `${pieceName(scene, nozzle.id)} has water: ${Math.round(nozzle.flowGpm)} gpm.`,
      });
    }
    const lost = open && seen.supplied && !flows;
    if (count(state, 'nozzle interrupted', nozzle.id, lost, nozzle.flowGpm, Math.min))
      events.push({
        kind: 'water lost at nozzle',
        level: 'caution',
        piece: nozzle.id,
        text: `${pieceName(scene, nozzle.id)} loses its water: the crew is without a stream.`,
      });
    if (!open || !seen.supplied) {
      count(state, 'nozzle swing', nozzle.id, false, 0, Math.max);
      return;
    }
    if (state.tick % EVERY_TICKS !== 0) return;
    seen.recentPsi.push(nozzle.pressurePsi);
    if (seen.recentPsi.length > kept) seen.recentPsi.shift();
    const swing = Math.max(...seen.recentPsi) - Math.min(...seen.recentPsi);
    const wide = swing > benchmarks.nozzleSwingPsi;
    count(state, 'nozzle swing', nozzle.id, wide, swing, Math.max, EVERY_TICKS);
  });
}

/** Books one tick of something. @returns whether it has just begun */
function count(
  state: DrillState,
  kind: TallyKind,
  piece: string,
  wrong: boolean,
  value: number,
  worse: (a: number, b: number) => number,
  ticks = 1,
): boolean {
  const line = state.tally.lines[kind];
  const last = line.moments.findLast((one) => one.piece === piece);
  const open = last && last.toTick === undefined ? last : undefined;
  if (!wrong) {
    if (open) open.toTick = state.tick;
    return false;
  }
  line.ticks += ticks;
  const goesOn = open ?? (last && state.tick - last.toTick! <= GOES_ON_TICKS ? last : undefined);
  if (goesOn) {
    delete goesOn.toTick;
    goesOn.worst = worse(goesOn.worst, value);
    return false;
  }
  if (line.moments.length < mostMoments)
    line.moments.push({ piece, fromTick: state.tick, worst: value });
  return true;
}
