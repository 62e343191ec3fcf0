/** What a pump's pieces ask for when the network answers its flow along a straight line. */
import * as constants from './constants.ts';
import type { Core } from './core.ts';
import * as tables from './core.ts';

// The engine folds a constant of this file into the code; one of another file it reads each time.
const { AT_CAPABILITY, HOLDING, NO_FLOW, PASSING, PROTECTING } = tables;
const { WALL_SLOPE } = constants;

/** Flows this near [gpm], or pressures this near [psi], are the same to a pump that must choose between pieces of its law. */
const SAME_GPM = 1e-9;
const SAME_PSI = 1e-6;

/** Answer of `pumpOnLoad`, rewritten by each call. */
export const onLoad = { piece: NO_FLOW, flowGpm: 0 };

/**
 * Where a pump stands when every gpm more lowers its intake by `slopeIn` and raises its discharge by `slopeOut`.
 * A pump gives the least of what its setting, its capability and its intake's floor ask for, but
 * never less than it passes and never less than nothing. Where the load line meets each piece of
 * the law is the flow that piece asks for. Answers in `onLoad`; pieces that ask for the same leave
 * the pump on the piece it stands on.
 *
 * @param q flow at which the pressures are as given [gpm]
 * @param slopeIn,slopeOut [psi/gpm] > 0
 */
export function pumpOnLoad(
  core: Core,
  k: number,
  q: number,
  intakePsi: number,
  dischargePsi: number,
  slopeIn: number,
  slopeOut: number,
): void {
  const standing = core.pumpState[k]!;
  const slope = slopeIn + slopeOut;
  const passing = passingFlowGpm(core.passK[k]!, q, intakePsi - dischargePsi, slope);
  let piece = PASSING;
  let flow = passing;
  let standingFlow = standing === PASSING ? passing : 0;
  if (core.idle[k] === 0) {
    const holding = q + (core.setPsi[k]! - dischargePsi) / slopeOut;
    const able = ableFlowGpm(core, k, q, dischargePsi - intakePsi, slope);
    const spared = q + (intakePsi - core.floorPsi[k]!) / slopeIn;
    const pumped = Math.min(holding, able, spared);
    if (pumped > passing) {
      flow = pumped;
      piece = pumped === holding ? HOLDING : pumped === able ? AT_CAPABILITY : PROTECTING;
    }
    if (standing === HOLDING) standingFlow = holding;
    else if (standing === AT_CAPABILITY) standingFlow = able;
    else if (standing === PROTECTING) standingFlow = spared;
  }
  if (flow <= 0) {
    piece = NO_FLOW;
    flow = 0;
  }
  const between = Math.abs(standingFlow - flow);
  onLoad.piece = between < SAME_GPM || between * slope < SAME_PSI ? standing : piece;
  onLoad.flowGpm = flow;
}

/** Flow [gpm] at which a pump that only passes water meets the load line; negative: none. */
function passingFlowGpm(passK: number, q: number, fallPsi: number, slope: number): number {
  const psi = fallPsi + slope * q;
  if (psi <= 0) return psi / slope;
  // passK·Q² + slope·Q = psi, in the form that keeps its digits as passK vanishes.
  return (2 * psi) / (slope + Math.sqrt(slope * slope + 4 * passK * psi));
}

/** Flow [gpm] at which a pump's capability meets the load line. */
function ableFlowGpm(core: Core, k: number, q: number, risePsi: number, slope: number): number {
  const { curveFlow, curveNet } = core;
  const speed = core.speed[k]!;
  const square = speed * speed;
  const needed = risePsi - slope * q;
  let at = core.curveStart[k]!;
  const end = at + core.curveCount[k]! - 1;
  // The last point whose net pressure is still above the line.
  while (at < end && square * curveNet[at + 1]! - slope * speed * curveFlow[at + 1]! >= needed) {
    at++;
  }
  const flow = speed * curveFlow[at]!;
  let steep = WALL_SLOPE;
  if (at < end) {
    const across = curveFlow[at + 1]! - curveFlow[at]!;
    steep = (speed * (curveNet[at]! - curveNet[at + 1]!)) / across;
  }
  return flow + (square * curveNet[at]! - needed - slope * flow) / (slope + steep);
}
