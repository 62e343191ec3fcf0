/** What the water's own weight does when a valve is shut on it, by the published rule for slow closing. */
import { hoseCatalogue, splitPortRef } from '@plugside/fireground';
import { hammerRise, slowClosureRisePsi, velocityFtS } from '@plugside/hydraulics';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState, HoseState } from './state.ts';

/** Least rise that is worth a caution [psi]; ours. */
const LEAST_RISE_PSI = 50;

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
 */
export function surgeOf(scene: DrillScene, state: DrillState, at: number): Surge | undefined {
  const valve = state.valves[at]!;
  const seconds = (valve.opening - valve.target) / valve.perS;
  if (!(seconds > 0)) return undefined;
  const { kind, pieceId } = scene.valves[at]!;
  const port = kind === 'nozzle bale' ? `${pieceId}.inlet` : valve.id;
  const onPort = state.hoses.find(({ from, to }) => from.port === port || to.port === port);
  if (!onPort) return undefined;
  const { waveFtS } = scene.settings;
  // What a valve lets through goes with its opening; before, as if each had stood open.
  const from = hasRules(scene, 2) ? valve.opening : 1;
  const stoppedGpm = Math.abs(onPort.flowGpm) * (1 - valve.target / from);
  const isAtItsEnd = onPort.to.port === port || waveFtS === undefined;
  const feeding = isAtItsEnd ? [onPort] : fullInto(state, pieceId);
  const allGpm = feeding.reduce((sum, { flowGpm }) => sum + Math.abs(flowGpm), 0);
  let worst: Surge | undefined;
  for (const hose of feeding) {
    const piece = scene.hoses.find(({ id }) => id === hose.id)!;
    const lineGpm = (stoppedGpm * Math.abs(hose.flowGpm)) / Math.max(1, allGpm) / piece.count;
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
