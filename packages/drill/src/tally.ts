/** Counts, tick by tick, what a drill is judged on. */
import { nozzleRatedGpm } from '@plugside/fireground';
import type { DrillNetwork } from './drill-network.ts';
import type { DrillEvent } from './event.ts';
import { countFlushing } from './flushed.ts';
import { holds } from './holds.ts';
import { intakeJudged } from './intake-judged.ts';
import { THROWS_PSI } from './live-ports.ts';
import { countOpenings } from './opened-fast.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene, SceneHose } from './scene.ts';
import { type DrillState, type NozzleState, TICKS_PER_S } from './state.ts';
import { countBoost } from './tally-boost.ts';
import { occasion } from './tally-occasions.ts';
import type { Tally, TallyKind, TallyLine, TallyNozzle } from './tally-shape.ts';
import { leastOpening } from './valve-loss.ts';
import { hoseName, pieceName } from './words/piece-words.ts';

const mostMoments = 100;
/** Pressure at a nozzle is kept at every so many ticks. */
const EVERY_TICKS = 4;
/** What stops for no longer than this is one moment, told once [ticks]. */
const GOES_ON_TICKS = 20;
/** An intake counts as under once it has stood so for so long: one that opens onto a tank's water rises through it [ticks]; ours. */
const UNDER_FROM_TICKS = TICKS_PER_S;
/** A caution that comes again within this is not told again [ticks]; ours. */
const QUIET_TICKS = 60 * TICKS_PER_S;
/** A hose over its limit is told again at every so much more [psi]; ours. */
const TOLD_EVERY_PSI = 25;
/** A stream that stays weak is told after so long [ticks]; under so much of its rating there is none. Ours. */
const WEAK_TICKS = TICKS_PER_S;
const NO_STREAM_SHARE = 0.1;
/** After an interruption the pressure that comes back is no swing for so long [ticks]; ours. */
const SETTLES_TICKS = 5 * TICKS_PER_S;
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
    if (isHoseFed) waterOccasion(scene, state, 'intake under');
    const under = lastingUnder(scene, state, pump.rigId, isUnder);
    const began = count(
      state,
      'intake under',
      pump.rigId,
      under > 0,
      pump.intakePsi,
      Math.min,
      any,
      {
        ticks: under,
        from: state.tick - under + 1,
      },
    );
    if (began && !isQuiet(scene, state, 'intake under', pump.rigId))
      events.push({
        kind: 'intake under limit',
        level: 'caution',
        piece: pump.rigId,
        text: `${pieceName(scene, pump.rigId)}'s intake falls under ${benchmarks.intakePsi} psi.`,
      });
  }
  for (const hydrant of state.hydrants) {
    if (hydrant.flowGpm > 1) waterOccasion(scene, state, 'main under');
    const under =
      (hydrant.flowGpm > 1 || flowsBeside(net, state, hydrant.id)) &&
      hydrant.mainPsi < benchmarks.mainPsi;
    const began = count(state, 'main under', hydrant.id, under, hydrant.mainPsi, Math.min, any);
    if (began && !isQuiet(scene, state, 'main under', hydrant.id))
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
    if (psi > THROWS_PSI) waterOccasion(scene, state, 'hose over');
    if (hose.flowGpm !== 0) occasion(scene, state, 'flow');
    const over = hose.phase !== 'burst' && psi > piece.limitPsi;
    const began = count(state, 'hose over', hose.id, over, psi, Math.max, any);
    const text = over ? overText(scene, state, piece, psi, began) : undefined;
    if (text !== undefined)
      events.push({ kind: 'hose over its limit', level: 'caution', piece: hose.id, text });
  });
  for (const kind of tallyKinds) {
    const line = state.tally.lines[kind];
    if (line.anyTicks !== undefined) line.anyTicks += any[kind] ?? 0;
  }
  events.push(...countOpenings(drill));
  countFlushing(scene, state);
  events.push(...countBoost(scene, state));
  for (const one of state.tally.called ?? []) {
    const nozzle = scene.plan.nozzles.find(({ id }) => id === one.nozzle);
    const now = state.nozzles.find(({ id }) => id === one.nozzle);
    const isOver = one.flowedTick !== undefined || one.takenBackTick !== undefined;
    if (isOver || !nozzle || !now) continue;
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

/** Keeps an occasion to judge water by: once anybody has worked a valve or a pump, what stands is their doing. */
function waterOccasion(scene: DrillScene, state: DrillState, what: TallyKind): void {
  if (hasRules(scene, 3) && !state.tally.occasions?.includes('worked')) return;
  occasion(scene, state, what);
}

/** Ticks that count as under in this one: none until it has lasted a second, and then that second too. */
function lastingUnder(scene: DrillScene, state: DrillState, rig: string, isUnder: boolean): number {
  if (!hasRules(scene, 3)) return isUnder ? 1 : 0;
  const under = state.tally.underTicks ?? {};
  const lasted = isUnder ? (under[rig] ?? 0) + 1 : 0;
  if (lasted > 0 || under[rig] !== undefined)
    state.tally.underTicks = { ...under, [rig]: Math.min(lasted, UNDER_FROM_TICKS + 1) };
  if (lasted < UNDER_FROM_TICKS) return 0;
  return lasted === UNDER_FROM_TICKS ? UNDER_FROM_TICKS : 1;
}

/** Whether what has just begun was told a short while ago, and is not told again. */
function isQuiet(scene: DrillScene, state: DrillState, kind: TallyKind, piece: string): boolean {
  if (!hasRules(scene, 3)) return false;
  const [before] = state.tally.lines[kind].moments
    .filter((one) => one.piece === piece && one.toTick !== undefined)
    .slice(-1);
  return before !== undefined && state.tick - before.toTick! <= QUIET_TICKS;
}

/** What is told of a hose over its limit: that it passes it, and how far over it comes. */
function overText(
  scene: DrillScene,
  state: DrillState,
  hose: SceneHose,
  psi: number,
  began: boolean,
): string | undefined {
  const { limitPsi } = hose;
  if (!hasRules(scene, 3))
    return began
      ? `${hoseName(hose)} stands at ${Math.round(psi)} psi, over its limit of ${limitPsi} psi.`
      : undefined;
  const moment = state.tally.lines['hose over'].moments.findLast(({ piece }) => piece === hose.id);
  if (!moment) return undefined;
  const steps = Math.floor((psi - limitPsi) / TOLD_EVERY_PSI);
  const isFirst = began && !isQuiet(scene, state, 'hose over', hose.id);
  if (!isFirst && steps <= (moment.toldSteps ?? 0)) return undefined;
  moment.toldSteps = Math.max(steps, moment.toldSteps ?? 0);
  if (steps < 1) return `${hoseName(hose)} passes its limit of ${limitPsi} psi.`;
  return `${hoseName(hose)} stands at ${Math.round(psi)} psi, ${Math.round(psi - limitPsi)} psi over its limit.`;
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
      events.push({
        kind: 'water at nozzle',
        level: 'fact',
        piece: nozzle.id,
        text: `${pieceName(scene, nozzle.id)} has water: ${Math.round(nozzle.flowGpm)} gpm.`,
      });
    }
    if (open && seen.supplied) {
      waterOccasion(scene, state, 'nozzle interrupted');
      waterOccasion(scene, state, 'nozzle swing');
    }
    const lost = open && seen.supplied && !flows;
    const began = count(
      state,
      'nozzle interrupted',
      nozzle.id,
      lost,
      nozzle.flowGpm,
      Math.min,
      any,
    );
    const text = lostText(scene, seen, nozzle, nozzleRatedGpm(piece) * share, lost, began);
    if (text !== undefined)
      events.push({ kind: 'water lost at nozzle', level: 'caution', piece: nozzle.id, text });
    if (hasRules(scene, 3)) {
      const steady = open && seen.supplied && !moves;
      countSwing(scene, state, seen, nozzle, steady ? { lost } : undefined, any);
      return;
    }
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
    count(state, 'nozzle swing', nozzle.id, wide, swing, Math.max, any, { ticks: EVERY_TICKS });
  });
}

/** What is told of a nozzle that falls short: a weak stream once it stays so, or none. */
function lostText(
  scene: DrillScene,
  seen: TallyNozzle,
  { id, flowGpm }: NozzleState,
  ratedGpm: number,
  lost: boolean,
  began: boolean,
): string | undefined {
  const name = pieceName(scene, id);
  const none = `${name} loses its water: the crew is without a stream.`;
  if (!hasRules(scene, 3)) return began ? none : undefined;
  if (!lost) {
    delete seen.lost;
    return undefined;
  }
  seen.lost ??= { ticks: 0 };
  seen.lost.ticks++;
  if (flowGpm < NO_STREAM_SHARE * ratedGpm) {
    if (seen.lost.told === 'none') return undefined;
    seen.lost.told = 'none';
    return none;
  }
  if (seen.lost.told !== undefined || seen.lost.ticks < WEAK_TICKS) return undefined;
  seen.lost.told = 'weak';
  return `${name}'s stream is weak: ${Math.round(flowGpm)} gpm of ${Math.round(ratedGpm)} gpm.`;
}

/**
 * Swing of pressure at a nozzle that stands open and had its water. What falls to an interruption, stands in
 * one, or comes back after it is that interruption, and counts there alone: a swing is booked once its window
 * has passed without one.
 * @param steady left out: its crew works the bale, or it has had no water
 */
function countSwing(
  scene: DrillScene,
  state: DrillState,
  seen: TallyNozzle,
  { id, pressurePsi }: NozzleState,
  steady: { lost: boolean } | undefined,
  any: AnyTicks,
): void {
  const { nozzleSwingPsi, swingWindowS } = scene.benchmarks;
  const kept = Math.max(2, Math.round((swingWindowS * TICKS_PER_S) / EVERY_TICKS));
  const book = (swing: number, ago: number) =>
    count(state, 'nozzle swing', id, swing > nozzleSwingPsi, swing, Math.max, any, {
      ticks: EVERY_TICKS,
      at: state.tick - ago * EVERY_TICKS,
    });
  const waiting = seen.swings ?? [];
  if (!steady || steady.lost) {
    if (!steady)
      waiting.forEach((swing, at) => {
        book(swing, waiting.length - at);
      });
    if (steady?.lost) seen.settleTicks = SETTLES_TICKS;
    seen.recentPsi = [];
    seen.swings = [];
    if (!steady) delete seen.settleTicks;
    count(state, 'nozzle swing', id, false, 0, Math.max, any);
    return;
  }
  if (seen.settleTicks !== undefined && seen.settleTicks > 0) {
    seen.settleTicks--;
    return;
  }
  if (state.tick % EVERY_TICKS !== 0) return;
  seen.recentPsi.push(pressurePsi);
  if (seen.recentPsi.length > kept) seen.recentPsi.shift();
  waiting.push(Math.max(...seen.recentPsi) - Math.min(...seen.recentPsi));
  seen.swings = waiting;
  if (waiting.length > kept) book(waiting.shift()!, kept);
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
  /** `ticks` that this one stands for, the last of them `at`, the first of them `from`. */
  { ticks = 1, at = state.tick, from = at }: { ticks?: number; at?: number; from?: number } = {},
): boolean {
  const line = state.tally.lines[kind];
  const last = line.moments.findLast((one) => one.piece === piece);
  const open = last && last.toTick === undefined ? last : undefined;
  if (!wrong) {
    if (open) open.toTick = at;
    return false;
  }
  line.ticks += ticks;
  any[kind] = ticks;
  if (line.byPiece) line.byPiece[piece] = (line.byPiece[piece] ?? 0) + ticks;
  const goesOn = open ?? (last && at - last.toTick! <= GOES_ON_TICKS ? last : undefined);
  if (goesOn) {
    delete goesOn.toTick;
    goesOn.worst = worse(goesOn.worst, value);
    return false;
  }
  if (line.moments.length < mostMoments) line.moments.push({ piece, fromTick: from, worst: value });
  return true;
}
