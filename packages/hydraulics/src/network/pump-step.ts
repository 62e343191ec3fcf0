/** A pump's part of a Newton pass: its flow, the piece of its law it belongs on, and that piece's tangent. */
import { capabilityPsi, capabilitySlope, flowAtNetGpm } from './capability.ts';
import {
  CLOSED_LEAK,
  DIGITS_SHARE,
  FLOW_TOLERANCE_GPM,
  FLOW_TOLERANCE_SHARE,
  LAW_TOLERANCE_PSI,
  LEAST_SLOPE,
  LINEAR_BELOW_GPM,
  STATE_TOLERANCE,
} from './constants.ts';
import { AT_CAPABILITY, type Core, HOLDING, NO_FLOW, PASSING, PROTECTING } from './core.ts';

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
  const i = core.pumpIn[k]!;
  const o = core.pumpOut[k]!;
  const q =
    core.pumpState[k] === NO_FLOW
      ? 0
      : core.pumpPredicted[k]! +
        core.pumpRateIn[k]! * core.step[i]! -
        core.pumpRateOut[k]! * core.step[o]!;
  core.pumpFlow[k] = q;
  const intakePsi = core.head[i]! - core.elevation[i]!;
  const next = nextState(core, k, q, intakePsi, core.head[o]! - core.elevation[o]!);
  if (next === core.pumpState[k]) return STAYED;
  if (pass < 0) return WAITING;
  if (pass >= 12 && (pass + k) % 2 !== 0) return WAITING;
  core.pumpState[k] = next;
  core.pumpFlow[k] = entryFlowGpm(core, k, next, intakePsi);
  return SWITCHED;
}

/** Discharge pressure [psi] of a pump that only passes water. */
function passedPsi(core: Core, k: number, q: number, intakePsi: number): number {
  return intakePsi - (core.passK[k]! * (q < 0 ? -q : q) + LEAST_SLOPE) * q;
}

/** Which piece of its law a pump belongs on, given what the present piece led to. */
function nextState(
  core: Core,
  k: number,
  q: number,
  intakePsi: number,
  dischargePsi: number,
): number {
  const standing = core.pumpState[k]!;
  const set = core.setPsi[k]!;
  const floor = core.floorPsi[k]!;
  const idle = core.idle[k] === 1;
  const tolerance = STATE_TOLERANCE;
  if (standing === NO_FLOW) {
    if (idle || intakePsi < floor) {
      return dischargePsi >= intakePsi - tolerance ? NO_FLOW : PASSING;
    }
    const pumped = intakePsi + netPsi(core, k, 0);
    const ready = Math.max(intakePsi, Math.min(set, pumped));
    if (dischargePsi >= ready - tolerance) return NO_FLOW;
    if (intakePsi >= set) return PASSING;
    return pumped >= set ? HOLDING : AT_CAPABILITY;
  }
  if (q < -1e-6) return NO_FLOW;
  const passed = passedPsi(core, k, q, intakePsi);
  if (standing === PASSING) {
    if (idle || intakePsi <= floor + tolerance) return PASSING;
    const pumped = intakePsi + netPsi(core, k, q);
    if (Math.min(set, pumped) <= passed + tolerance) return PASSING;
    return pumped >= set ? HOLDING : AT_CAPABILITY;
  }
  if (standing === HOLDING) {
    if (passed > set + tolerance) return PASSING;
    if (set - intakePsi > netPsi(core, k, q) + tolerance) return AT_CAPABILITY;
    return intakePsi < floor - tolerance ? PROTECTING : HOLDING;
  }
  if (dischargePsi > set + tolerance) return HOLDING;
  if (dischargePsi < passed - tolerance) return PASSING;
  if (standing === AT_CAPABILITY) {
    return intakePsi < floor - tolerance ? PROTECTING : AT_CAPABILITY;
  }
  return dischargePsi - intakePsi > netPsi(core, k, q) + tolerance ? AT_CAPABILITY : PROTECTING;
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
  const needed = core.setPsi[k]! - intakePsi;
  const most = flowAtNetGpm(core.curveFlow, core.curveNet, start, count, speed, needed);
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
  const q = core.pumpFlow[k]!;
  let slope = LEAST_SLOPE;
  let over: number;
  if (standing === HOLDING) {
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
    } else if (standing === PASSING) {
      const size = q < 0 ? -q : q;
      const passK = core.passK[k]!;
      const above = Math.max(size, LINEAR_BELOW_GPM);
      slope += passK * (size > LINEAR_BELOW_GPM ? 2 * size : LINEAR_BELOW_GPM);
      over -= (passK * above + LEAST_SLOPE) * q;
    } else {
      slope = 1 / CLOSED_LEAK;
    }
  }
  const g = 1 / slope;
  // The leak keeps every column tied to its neighbours; it adds no flow.
  const rateIn = standing === HOLDING ? CLOSED_LEAK : g;
  const rateOut = standing === PROTECTING ? CLOSED_LEAK : g;
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
    out <= DIGITS_SHARE * (Math.abs(head[i]!) + Math.abs(head[o]!))
  );
}
