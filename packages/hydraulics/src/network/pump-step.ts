/** A pump's part of a Newton pass: its flow, the piece of its law it belongs on, and that piece's tangent. */
import { capabilityPsi, capabilitySlope, flowAtNetGpm } from './capability.ts';
import {
  CLOSED_LEAK,
  FLOW_TOLERANCE_GPM,
  FLOW_TOLERANCE_SHARE,
  LAW_TOLERANCE_PSI,
  LEAST_SLOPE,
  LINEAR_BELOW_GPM,
  STATE_TOLERANCE,
} from './constants.ts';
import {
  AT_CAPABILITY,
  type Core,
  FLOW,
  HOLDING,
  NO_FLOW,
  PASSING,
  PROTECTING,
  REALS,
  setPumpState,
} from './core.ts';

/** What `advancePump` found. */
export const STAYED = 0;
export const SWITCHED = 1;
/** Should switch, but must wait for a later pass so that two pumps cannot trade places for ever. */
export const WAITING = 2;

/**
 * Reads a pump's new flow off the last pass and moves it to the piece of its law that the heads ask for.
 * @param pass number of the pass; negative: too early to switch
 */
export function advancePump(core: Core, k: number, pass: number): number {
  if (core.dead[k]) return STAYED;
  const i = core.pumpIn[k]!;
  const o = core.pumpOut[k]!;
  const q = newFlowGpm(core, k, i, o);
  const intakePsi = core.head[i]! - core.elevation[i]!;
  const next = nextState(core, k, q, intakePsi, core.head[o]! - core.elevation[o]!);
  core.pumpFlow[k] = q;
  if (next === core.pumpState[k]) return STAYED;
  if (pass < 0) return WAITING;
  if (pass >= 12 && (pass + k) % 2 !== 0) return WAITING;
  setPumpState(core, k, next);
  core.pumpFlow[k] = entryFlowGpm(core, k, next, intakePsi);
  return SWITCHED;
}

function newFlowGpm(core: Core, k: number, i: number, o: number): number {
  const standing = core.pumpState[k]!;
  if (standing === NO_FLOW) return 0;
  if (standing !== HOLDING && standing !== PROTECTING) {
    return core.pumpConstant[k]! + core.pumpConductance[k]! * (core.head[i]! - core.head[o]!);
  }
  let q = core.demand[o]!;
  for (let s = core.outletStart[k]!; s < core.outletStart[k + 1]!; s++) {
    q += core.outletSense[s]! * core.reals[core.outletPassive[s]! * REALS + FLOW]!;
  }
  return q;
}

/** Discharge pressure [psi] of a pump that only passes water. */
function passedPsi(core: Core, k: number, q: number, intakePsi: number): number {
  return intakePsi - (core.passK[k]! * (q < 0 ? -q : q) + LEAST_SLOPE) * q;
}

/** Which piece of its law a pump belongs on, given what the present piece led to. */
function nextState(core: Core, k: number, q: number, intakePsi: number, dischargePsi: number): number {
  const standing = core.pumpState[k]!;
  const set = core.setPsi[k]!;
  const floor = core.floorPsi[k]!;
  const idle = core.idle[k] === 1;
  const tolerance = STATE_TOLERANCE;
  if (standing === NO_FLOW) {
    let ready = intakePsi;
    if (!idle && intakePsi >= floor) ready = Math.max(intakePsi, Math.min(set, intakePsi + netPsi(core, k, 0)));
    if (dischargePsi >= ready - tolerance) return NO_FLOW;
    if (idle || intakePsi >= set || intakePsi < floor) return PASSING;
    return ready >= set ? HOLDING : AT_CAPABILITY;
  }
  if (q < -1e-6) return NO_FLOW;
  const passed = passedPsi(core, k, q, intakePsi);
  if (standing === PASSING) {
    if (idle || intakePsi <= floor + tolerance || dischargePsi >= set - tolerance) return PASSING;
    const net = netPsi(core, k, q);
    if (intakePsi + net <= dischargePsi + tolerance) return PASSING;
    return set - intakePsi <= net ? HOLDING : AT_CAPABILITY;
  }
  if (standing === HOLDING) {
    if (passed > set + tolerance) return PASSING;
    if (set - intakePsi > netPsi(core, k, q) + tolerance) return AT_CAPABILITY;
    return intakePsi < floor - tolerance ? PROTECTING : HOLDING;
  }
  if (dischargePsi > set + tolerance) return HOLDING;
  if (dischargePsi < passed - tolerance) return PASSING;
  if (standing === AT_CAPABILITY) return intakePsi < floor - tolerance ? PROTECTING : AT_CAPABILITY;
  return dischargePsi - intakePsi > netPsi(core, k, q) + tolerance ? AT_CAPABILITY : PROTECTING;
}

function netPsi(core: Core, k: number, q: number): number {
  return capabilityPsi(core.curveFlow, core.curveNet, core.curveStart[k]!, core.curveCount[k]!, core.speed[k]!, q);
}

/** A flow [gpm] to start from on a new piece. */
function entryFlowGpm(core: Core, k: number, next: number, intakePsi: number): number {
  const q = core.pumpFlow[k]!;
  if (next === NO_FLOW) return 0;
  if (next === PASSING) return q < 1 ? 300 : q;
  if (next !== AT_CAPABILITY) return q;
  const start = core.curveStart[k]!;
  const count = core.curveCount[k]!;
  const speed = core.speed[k]!;
  const last = core.curveFlow[start + count - 1]! * speed;
  if (core.setPsi[k] === Number.POSITIVE_INFINITY) return Math.min(Math.max(q, 1), last * 0.999);
  const most = flowAtNetGpm(core.curveFlow, core.curveNet, start, count, speed, core.setPsi[k]! - intakePsi);
  return Math.min(Math.max(most, 1), last * 0.999);
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
  if (standing === HOLDING) {
    values[core.slotOO[k]!] = 1;
    const holdPsi = core.setPsi[k]! + elevation[o]!;
    right[o] = holdPsi;
    const out = head[o]! - holdPsi;
    return out < LAW_TOLERANCE_PSI && out > -LAW_TOLERANCE_PSI;
  }
  if (standing === PROTECTING) {
    values[core.slotII[k]!] = 1;
    const holdPsi = core.floorPsi[k]! + elevation[i]!;
    right[i] = holdPsi;
    const out = head[i]! - holdPsi;
    return out < LAW_TOLERANCE_PSI && out > -LAW_TOLERANCE_PSI;
  }
  const rise = elevation[o]! - elevation[i]!;
  const q = core.pumpFlow[k]!;
  let slope: number;
  let drop: number;
  if (standing === AT_CAPABILITY) {
    const start = core.curveStart[k]!;
    const count = core.curveCount[k]!;
    drop = -rise - netPsi(core, k, q);
    slope = -capabilitySlope(core.curveFlow, core.curveNet, start, count, core.speed[k]!, q);
  } else if (standing === PASSING) {
    const size = q < 0 ? -q : q;
    const passK = core.passK[k]!;
    const above = size > LINEAR_BELOW_GPM ? size : LINEAR_BELOW_GPM;
    slope = passK * (size > LINEAR_BELOW_GPM ? 2 * size : LINEAR_BELOW_GPM) + LEAST_SLOPE;
    drop = (passK * above + LEAST_SLOPE) * q - rise;
  } else {
    slope = 1 / CLOSED_LEAK;
    drop = -rise;
  }
  const g = 1 / slope;
  const c = q - g * drop;
  core.pumpConductance[k] = g;
  core.pumpConstant[k] = c;
  const ii = core.slotII[k]!;
  const oo = core.slotOO[k]!;
  const io = core.slotIO[k]!;
  const oi = core.slotOI[k]!;
  values[ii] = values[ii]! + g;
  values[oo] = values[oo]! + g;
  values[io] = values[io]! - g;
  values[oi] = values[oi]! - g;
  right[i] = right[i]! - c;
  right[o] = right[o]! + c;
  if (standing === NO_FLOW) return true;
  const out = Math.abs(head[i]! - head[o]! - drop);
  // On the wall pressure may be far off while flow is right to the last digit.
  return (
    (out <= LAW_TOLERANCE_PSI || slope > 1e3) &&
    out * g <= FLOW_TOLERANCE_SHARE * Math.abs(q) + FLOW_TOLERANCE_GPM
  );
}
