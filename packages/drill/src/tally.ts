/** Counts, tick by tick, what a drill is judged on. */
import { nozzleRatedGpm } from '@plugside/fireground';
import type { DrillNetwork } from './drill-network.ts';
import type { DrillEvent } from './event.ts';
import { holds } from './holds.ts';
import { intakeJudged } from './intake-judged.ts';
import { THROWS_PSI } from './live-ports.ts';
import { countOpenings } from './opened-fast.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState, NozzleState } from './state.ts';
import { countBoost } from './tally-boost.ts';
import { occasion } from './tally-occasions.ts';
import type { Tally, TallyKind, TallyLine } from './tally-shape.ts';
import { leastOpening } from './valve-loss.ts';
import { hoseName, pieceName } from './words/piece-words.ts';

const mostMoments = 100;
/** Pressure at a nozzle is kept at every so many ticks. */
const EVERY_TICKS = 4;
/** What stops for no longer than this is one moment, told once [ticks]. */
const GOES_ON_TICKS = 20;
/** From this opening on a bale is open, whether or not its nozzle has had water; ours. */
const OPEN_FROM = 0.5;

export const tallyKinds: readonly TallyKind[] = [
  'nozzle interrupted',
  'intake under',
  'main under',
  'hose over',
  'nozzle swing',
];

/** A tally of nothing yet. */
export function emptyTally(scene: DrillScene): Tally {
  const today = hasRules(scene, 2);
  const line = (): TallyLine =>
    today ? { ticks: 0, moments: [], anyTicks: 0, byPiece: {} } : { ticks: 0, moments: [] };
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
    ...(today && { occasions: [] }),
  };
}

/** Counts one tick. @returns what begins to be wrong in it, and water that reaches or leaves a nozzle */
export function countTick(drill: Drill): DrillEvent[] {
  const { scene, state, net } = drill;
  const events: DrillEvent[] = [];
  const { benchmarks } = scene;
  /** Ticks in which any piece stood wrong, by kind. */
  const any: AnyTicks = {};
  countNozzles(scene, state, events, any);
  for (const pump of state.pumps) {
    const { isHoseFed, isUnder } = intakeJudged(scene, state, pump);
    if (isHoseFed) occasion(scene, state, 'intake under');
    if (count(state, 'intake under', pump.rigId, isUnder, pump.intakePsi, Math.min, any))
      events.push({
        kind: 'intake under limit',
        level: 'caution',
        piece: pump.rigId,
        text: `${pieceName(scene, pump.rigId)}'s intake falls under ${benchmarks.intakePsi} psi.`,
      });
  }
  for (const hydrant of state.hydrants) {
    if (hydrant.flowGpm > 1) occasion(scene, state, 'main under');
    const under =
      (hydrant.flowGpm > 1 || flowsBeside(net, state, hydrant.id)) &&
      hydrant.mainPsi < benchmarks.mainPsi;
    if (count(state, 'main under', hydrant.id, under, hydrant.mainPsi, Math.min, any))
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
    if (psi > THROWS_PSI) occasion(scene, state, 'hose over');
    if (hose.flowGpm !== 0) occasion(scene, state, 'flow');
    const over = hose.phase !== 'burst' && psi > piece.limitPsi;
    if (count(state, 'hose over', hose.id, over, psi, Math.max, any))
      events.push({
        kind: 'hose over its limit',
        level: 'caution',
        piece: hose.id,
        text: `${hoseName(piece)} stands at ${Math.round(psi)} psi, over its limit of ${piece.limitPsi}.`,
      });
  });
  for (const kind of tallyKinds) {
    const line = state.tally.lines[kind];
    if (line.anyTicks !== undefined) line.anyTicks += any[kind] ?? 0;
  }
  events.push(...countOpenings(drill));
  countBoost(scene, state);
  for (const one of state.tally.called ?? []) {
    const nozzle = scene.plan.nozzles.find(({ id }) => id === one.nozzle);
    const now = state.nozzles.find(({ id }) => id === one.nozzle);
    if (one.flowedTick !== undefined || !nozzle || !now) continue;
    if (now.flowGpm >= benchmarks.nozzleSuppliedShare * nozzleRatedGpm(nozzle))
      one.flowedTick = state.tick;
  }
  for (const step of scene.steps) {
    if (state.tally.stepTicks.some((one) => one.step === step.id)) continue;
    if (holds(step.done, scene, state))
      state.tally.stepTicks.push({ step: step.id, tick: state.tick });
  }
  return events;
}

/** Whether another hydrant of its main flows: its own place falls with that. */
function flowsBeside({ sharers }: DrillNetwork, { hydrants }: DrillState, id: string): boolean {
  if (sharers.length === 0) return false;
  const beside = sharers.find((ids) => ids.includes(id)) ?? [];
  return hydrants.some((one) => one.flowGpm > 1 && beside.includes(one.id));
}

type AnyTicks = { [kind in TallyKind]?: number };

/**
 * Whether a nozzle counts as open, and the share of its rating that its crew has it open for. From half
 * open, or open at all once it has had water, so that nobody throttles it out of the count; what is asked
 * of it shrinks with the bale. One that its crew shuts is shut at once.
 */
function baleOf(
  scene: DrillScene,
  state: DrillState,
  { id }: NozzleState,
  supplied: boolean,
): { open: boolean; share: number; moves: boolean } {
  const bale = state.valves.find((one) => one.id === `${id}.bale`)!;
  if (!hasRules(scene, 2))
    return { open: bale.opening > 0.9 && bale.target > 0.9, share: 1, moves: false };
  const isOpen = bale.opening >= OPEN_FROM || (supplied && bale.opening >= leastOpening);
  const moves = bale.opening !== bale.target;
  return { open: isOpen && bale.target >= leastOpening, share: bale.opening, moves };
}

function countNozzles(
  scene: DrillScene,
  state: DrillState,
  events: DrillEvent[],
  any: AnyTicks,
): void {
  const { benchmarks } = scene;
  const kept = Math.max(2, Math.round((benchmarks.swingWindowS * 20) / EVERY_TICKS));
  state.nozzles.forEach((nozzle, at) => {
    const piece = scene.plan.nozzles[at]!;
    const seen = state.tally.nozzles[at]!;
    const { open, share, moves } = baleOf(scene, state, nozzle, seen.supplied);
    const flows = nozzle.flowGpm >= benchmarks.nozzleSuppliedShare * nozzleRatedGpm(piece) * share;
    if (!open) {
      seen.supplied = false;
      seen.recentPsi = [];
    } else if (flows && !seen.supplied) {
      seen.supplied = true;
      occasion(scene, state, 'nozzle interrupted');
      occasion(scene, state, 'nozzle swing');
      events.push({
        kind: 'water at nozzle',
        level: 'fact',
        piece: nozzle.id,
        text: `${pieceName(scene, nozzle.id)} has water: ${Math.round(nozzle.flowGpm)} gpm.`,
      });
    }
    const lost = open && seen.supplied && !flows;
    if (count(state, 'nozzle interrupted', nozzle.id, lost, nozzle.flowGpm, Math.min, any))
      events.push({
        kind: 'water lost at nozzle',
        level: 'caution',
        piece: nozzle.id,
        text: `${pieceName(scene, nozzle.id)} loses its water: the crew is without a stream.`,
      });
    // A bale on its way swings the pressure itself.
    if (moves) seen.recentPsi = [];
    if (!open || !seen.supplied || moves) {
      count(state, 'nozzle swing', nozzle.id, false, 0, Math.max, any);
      return;
    }
    if (state.tick % EVERY_TICKS !== 0) return;
    seen.recentPsi.push(nozzle.pressurePsi);
    if (seen.recentPsi.length > kept) seen.recentPsi.shift();
    const swing = Math.max(...seen.recentPsi) - Math.min(...seen.recentPsi);
    const wide = swing > benchmarks.nozzleSwingPsi;
    count(state, 'nozzle swing', nozzle.id, wide, swing, Math.max, any, EVERY_TICKS);
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
  any: AnyTicks,
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
  any[kind] = ticks;
  if (line.byPiece) line.byPiece[piece] = (line.byPiece[piece] ?? 0) + ticks;
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
