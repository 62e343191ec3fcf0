/** A pump's part of a Newton pass: its flow, the piece of its law it belongs on, and that piece's tangent. */
import { capabilityPsi, capabilitySlope } from './capability.ts';
import * as constants from './constants.ts';
import type { Core } from './core.ts';
import * as tables from './core.ts';
import { onLoad, pumpOnLoad } from './pump-law.ts';

// The engine folds a constant of this file into the code; one of another file it reads each time.
const { AT_CAPABILITY, HOLDING, NO_FLOW, PASSING, PROTECTING } = tables;
const {
  CLOSED_RATE,
  DIGITS_PSI,
  DIGITS_SHARE,
  FLOW_TOLERANCE_GPM,
  FLOW_TOLERANCE_SHARE,
  LAW_TOLERANCE_PSI,
  LEAST_SLOPE,
  LINEAR_BELOW_GPM,
} = constants;

/**
 * Slopes [psi/gpm] at which the network is taken to answer a pump, at its intake and at its
 * discharge: first like a usual lay, then stiffer and softer by turns, at both ends and at either,
 * so that pumps do not trade places for ever.
 */
const LOADS = Float64Array.of(
  0.1,
  0.1,
  10,
  10,
  0.1,
  0.1,
  1,
  1,
  1,
  0.01,
  100,
  100,
  0.01,
  1,
  1000,
  1000,
);
export const LOAD_COUNT = LOADS.length / 2;

/** Sets a pump going in the middle of its range. */
export function coldPump(core: Core, k: number): void {
  const last = core.curveFlow[core.curveStart[k]! + core.curveCount[k]! - 1]!;
  core.pumpFlow[k] = 0.5 * last * core.speed[k]!;
  let state = HOLDING;
  if (core.dead[k]) state = NO_FLOW;
  else if (core.idle[k]) state = PASSING;
  else if (core.setPsi[k] === Number.POSITIVE_INFINITY) state = AT_CAPABILITY;
  core.pumpState[k] = state;
  if (core.dead[k]) core.pumpFlow[k] = 0;
}

/**
 * Reads a pump's new flow off the last pass and moves it to the piece of its law that fits.
 * @param load which of LOADS the rest of the network is taken to answer a change of flow with
 * @param mayMove whether it may take another piece in this pass
 * @returns whether it stands where it belongs
 */
export function advancePump(core: Core, k: number, load: number, mayMove: boolean): boolean {
  const i = core.pumpIn[k]!;
  const o = core.pumpOut[k]!;
  let q = 0;
  if (core.pumpState[k] !== NO_FLOW) {
    q =
      core.pumpPredicted[k]! +
      core.pumpRateIn[k]! * core.step[i]! -
      core.pumpRateOut[k]! * core.step[o]!;
  }
  return judgePump(core, k, q, load, mayMove);
}

/**
 * Moves a pump to the piece of its law that fits a flow and the present heads.
 * @returns whether it stands where it belongs
 */
export function judgePump(
  core: Core,
  k: number,
  q: number,
  load: number,
  mayMove: boolean,
): boolean {
  const i = core.pumpIn[k]!;
  const o = core.pumpOut[k]!;
  core.pumpFlow[k] = q;
  const intakePsi = core.head[i]! - core.elevation[i]!;
  const dischargePsi = core.head[o]! - core.elevation[o]!;
  pumpOnLoad(core, k, q, intakePsi, dischargePsi, LOADS[2 * load]!, LOADS[2 * load + 1]!);
  if (onLoad.piece === core.pumpState[k]) return true;
  if (!mayMove) return false;
  core.pumpState[k] = onLoad.piece;
  core.pumpFlow[k] = onLoad.flowGpm;
  return false;
}

function netPsi(core: Core, k: number, q: number): number {
  return capabilityPsi(
    core.curveFlow,
    core.curveNet,
    core.curveStart[k]!,
    core.curveCount[k]!,
    core.speed[k]!,
    q,
  );
}

/**
 * Writes a pump's tangent into the matrix.
 * @returns whether it holds to its law
 */
export function writePump(core: Core, k: number): boolean {
  const { values, right, elevation, head } = core;
  const i = core.pumpIn[k]!;
  const o = core.pumpOut[k]!;
  const standing = core.pumpState[k]!;
  const q = core.pumpFlow[k]!;
  let slope = LEAST_SLOPE;
  let over = 0;
  if (standing === NO_FLOW) {
    slope = 1 / CLOSED_RATE;
  } else if (standing === HOLDING) {
    over = core.setPsi[k]! + elevation[o]! - head[o]! - LEAST_SLOPE * q;
  } else if (standing === PROTECTING) {
    over = head[i]! - elevation[i]! - core.floorPsi[k]! - LEAST_SLOPE * q;
  } else {
    over = head[i]! - elevation[i]! - head[o]! + elevation[o]!;
    if (standing === AT_CAPABILITY) {
      const start = core.curveStart[k]!;
      const count = core.curveCount[k]!;
      over += netPsi(core, k, q);
      slope = -capabilitySlope(core.curveFlow, core.curveNet, start, count, core.speed[k]!, q);
    } else {
      const size = q < 0 ? -q : q;
      const passK = core.passK[k]!;
      const above = Math.max(size, LINEAR_BELOW_GPM);
      slope += passK * (size > LINEAR_BELOW_GPM ? 2 * size : LINEAR_BELOW_GPM);
      over -= (passK * above + LEAST_SLOPE) * q;
    }
  }
  const g = 1 / slope;
  const rateIn = standing === HOLDING ? CLOSED_RATE : g;
  const rateOut = standing === PROTECTING ? CLOSED_RATE : g;
  const predicted = q + g * over;
  core.pumpRateIn[k] = rateIn;
  core.pumpRateOut[k] = rateOut;
  core.pumpPredicted[k] = predicted;
  const slotIn = core.slotIn[k]!;
  values[slotIn] = values[slotIn]! + rateIn;
  const slotOut = core.slotOut[k]!;
  values[slotOut] = values[slotOut]! + rateOut;
  right[i] = right[i]! - predicted;
  right[o] = right[o]! + predicted;
  if (standing === NO_FLOW) return true;
  const out = over < 0 ? -over : over;
  // On the wall pressure may be far off while flow is right to the last digit.
  return (
    ((out <= LAW_TOLERANCE_PSI || slope > 1e3) &&
      out * g <= FLOW_TOLERANCE_SHARE * Math.abs(q) + FLOW_TOLERANCE_GPM) ||
    out <= DIGITS_PSI + DIGITS_SHARE * (Math.abs(head[i]!) + Math.abs(head[o]!))
  );
}
