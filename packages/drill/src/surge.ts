/** What the water's own weight does when a valve is shut on it, by the published rule for slow closing. */
import { hoseCatalogue, splitPortRef } from '@plugside/fireground';
import { hammerRise, slowClosureRisePsi, velocityFtS } from '@plugside/hydraulics';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import { type DrillState, type HoseState, TICKS_PER_S } from './state.ts';
import { occasion } from './tally-occasions.ts';
import type { ShuttingValve } from './tally-shape.ts';

/** Least rise that is worth a caution [psi]; ours. */
const LEAST_RISE_PSI = 50;
/** Flow under which nothing moves [gpm]. */
const MOVES_GPM = 1;

export interface Surge {
  /** The hose that feels it: the one that brings the water. */
  hose: string;
  /** Flow that is stopped at the valve, in all its lines [gpm], in so many seconds [s]. */
  stoppedGpm: number;
  seconds: number;
  /** Estimated rise, and with what stands in the hose now [psi]. */
  risePsi: number;
  toPsi: number;
  /** The hose's operating limit [psi]. */
  limitPsi: number;
}

/** Moves of a valve that shuts, no farther apart than this, are one [ticks]; ours. */
const ONE_MOVE_TICKS = TICKS_PER_S;

/**
 * The movement that a valve's new target is a part of: from where it first began to shut, if that goes on or
 * has only just stopped. Undefined where it does not shut, or by older rules, which took each move alone.
 */
export function shuttingOf(
  scene: DrillScene,
  state: DrillState,
  at: number,
): ShuttingValve | undefined {
  if (!hasRules(scene, 3)) return undefined;
  const { tick, tally } = state;
  const { id, opening, target, perS } = state.valves[at]!;
  const before = tally.shutting?.find(({ valve }) => valve === id);
  const others = (tally.shutting ?? []).filter(({ valve }) => valve !== id);
  if (opening <= target) {
    if (before) tally.shutting = others;
    return undefined;
  }
  const endTick = tick + ((opening - target) / perS) * TICKS_PER_S;
  const goesOn = before !== undefined && tick <= before.endTick + ONE_MOVE_TICKS;
  const begun = goesOn
    ? before
    : { valve: id, fromTick: tick, fromOpening: opening, fromGpm: flowThrough(scene, state, at) };
  const movement = { ...begun, endTick };
  tally.shutting = [...others, movement];
  if (movement.fromGpm > MOVES_GPM) occasion(scene, state, 'shutting');
  return movement;
}

/** Writes down what has been told of a movement. */
export function keepShutting(state: DrillState, movement: ShuttingValve): void {
  const { tally } = state;
  tally.shutting = [
    ...(tally.shutting ?? []).filter(({ valve }) => valve !== movement.valve),
    movement,
  ];
}

/** What flows in the hose on a valve [gpm ≥ 0]. */
function flowThrough(scene: DrillScene, state: DrillState, at: number): number {
  const { kind, pieceId, id } = scene.valves[at]!;
  const port = kind === 'nozzle bale' ? `${pieceId}.inlet` : id;
  return Math.abs(hoseOn(state, port)?.flowGpm ?? 0);
}

const hoseOn = (state: DrillState, port: string) =>
  state.hoses.find(({ from, to }) => from.port === port || to.port === port);

/**
 * The surge of a valve that begins to shut, in the hose upstream of it that feels it most; undefined where
 * it moves the other way, nothing flows, or it stays under 50 psi. An estimate, for a caution. From
 * "Water-hammer equations", and never more than what water stopped at once would do (Joukowsky) at the
 * scene's `waveFtS`, which bounds the speed of the wave.
 *
 * `ΔP = 0.070 · Δv · L / t`, at most `0.01347 · a · Δv`
 *
 * A valve where water leaves a pump or an appliance is felt in the hose that brings it there, each by its
 * share of the flow. The main behind a hydrant has no length that is known: nothing is said of it.
 * A scene of before there was such a bound has the first rule alone, in the hose on the valve.
 * @param at place of the valve in the scene, its new target and speed set
 * @param whole the movement that this is the last of: the worse of the two is told, all of it or this alone
 */
export function surgeOf(
  scene: DrillScene,
  state: DrillState,
  at: number,
  whole?: ShuttingValve,
): Surge | undefined {
  const alone = surgeOfMove(scene, state, at);
  if (!whole || whole.fromTick === state.tick) return alone;
  const all = surgeOfMove(scene, state, at, whole);
  return alone && all && alone.risePsi > all.risePsi ? alone : (all ?? alone);
}

function surgeOfMove(
  scene: DrillScene,
  state: DrillState,
  at: number,
  whole?: ShuttingValve,
): Surge | undefined {
  const valve = state.valves[at]!;
  const seconds = whole
    ? (whole.endTick - whole.fromTick) / TICKS_PER_S
    : (valve.opening - valve.target) / valve.perS;
  if (!(seconds > 0)) return undefined;
  const { kind, pieceId } = scene.valves[at]!;
  const port = kind === 'nozzle bale' ? `${pieceId}.inlet` : valve.id;
  const onPort = hoseOn(state, port);
  if (!onPort) return undefined;
  const { waveFtS } = scene.settings;
  // What a valve lets through goes with its opening; before, as if each had stood open.
  const from = whole?.fromOpening ?? (hasRules(scene, 2) ? valve.opening : 1);
  const stoppedGpm = (whole?.fromGpm ?? Math.abs(onPort.flowGpm)) * (1 - valve.target / from);
  const isAtItsEnd = onPort.to.port === port || waveFtS === undefined;
  const feeding = isAtItsEnd ? [onPort] : fullInto(state, pieceId);
  const allGpm = feeding.reduce((sum, { flowGpm }) => sum + Math.abs(flowGpm), 0);
  let worst: Surge | undefined;
  for (const hose of feeding) {
    const piece = scene.hoses.find(({ id }) => id === hose.id)!;
    // What is left of the flow may be too little to tell shares by; one hose has all of it.
    const isAlone = whole !== undefined && feeding.length === 1;
    const share = isAlone ? 1 : Math.abs(hose.flowGpm) / Math.max(1, allGpm);
    const lineGpm = (stoppedGpm * share) / piece.count;
    const speed = velocityFtS(lineGpm, hoseCatalogue[piece.hose].diameterIn);
    const risePsi =
      waveFtS === undefined
        ? slowClosureRisePsi(speed, piece.lengthFt, seconds)
        : hammerRise(speed, piece.lengthFt, seconds, waveFtS).risePsi;
    if (!(risePsi > LEAST_RISE_PSI) || (worst && worst.risePsi >= risePsi)) continue;
    const toPsi = Math.max(hose.from.psi, hose.to.psi) + risePsi;
    const { id, limitPsi } = piece;
    worst = { hose: id, stoppedGpm, seconds, risePsi, toPsi, limitPsi };
  }
  return worst;
}

/** Full hoses that bring water to a piece. */
function fullInto(state: DrillState, pieceId: string): HoseState[] {
  return state.hoses.filter(
    ({ to, phase }) =>
      phase === 'full' && to.port !== null && splitPortRef(to.port).pieceId === pieceId,
  );
}
