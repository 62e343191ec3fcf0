/**
 * Newton's method on flows and heads together. Each pass replaces every element by its tangent at
 * the present flow, solves the node balances for the heads, and reads the new flows off the tangents.
 * Checks, governors and nozzles switch between pieces as the new heads and flows tell; where the
 * pieces stop changing and the flows stop moving, all conditions hold and the answer is the only one
 * (see the theory page, "The network method").
 */
import { capabilityPsi, capabilitySlope, flowAtNetGpm } from './capability.ts';
import {
  BAND_SLOPE,
  CLOSED_LEAK,
  FLOW_TOLERANCE,
  GROUND_LEAK,
  LEAST_SLOPE,
  LINEAR_BELOW_GPM,
  MAIN_EXPONENT,
  STATE_TOLERANCE,
} from './constants.ts';
import {
  AT_CAPABILITY,
  CLOSED,
  type Core,
  HOLDING,
  NO_FLOW,
  OPEN,
  PASSING,
  PROTECTING,
  SHUT,
} from './core.ts';
import { roughFlowGpm } from './drop.ts';
import { eliminate } from './elimination.ts';

const POWER = MAIN_EXPONENT - 1;
const BELOW_POWER = LINEAR_BELOW_GPM ** POWER;

/** Sets flows and states for a solve that knows nothing yet. */
export function coldStart(core: Core): void {
  const { passives, a, b, to, unknowns, state, flow, checked, automatic } = core;
  for (let e = 0; e < passives; e++) {
    if (state[e] === SHUT) continue;
    state[e] = checked[e] === 2 ? CLOSED : OPEN;
    const band = automatic[e]!;
    if (band >= 0) flow[e] = core.greatestGpm[band]!;
    else if (state[e] === CLOSED) flow[e] = 0;
    else flow[e] = to[e]! >= unknowns ? Math.min(roughFlowGpm(a[e]!, b[e]!, 60), 2000) : 500;
  }
  for (let k = 0; k < core.pumps; k++) {
    core.pumpFlow[k] = 0.5 * core.curveFlow[core.curveStart[k]! + core.curveCount[k]! - 1]!;
    core.pumpState[k] = core.dead[k]
      ? NO_FLOW
      : core.idle[k]
        ? PASSING
        : core.setPsi[k] === Number.POSITIVE_INFINITY
          ? AT_CAPABILITY
          : HOLDING;
  }
}

/**
 * Writes the tangent system into `values` and `right`.
 * @param secant first pass of a cold start: straight lines through zero instead of tangents
 * @param storage [gpm/psi] of every node, anchored at the heads in `before`; 0 for a steady state
 */
export function assemble(core: Core, secant: boolean, storage: number): void {
  const { unknowns, values, right, demand, head, elevation, before, elimination } = core;
  const { diagonal } = elimination;
  for (let s = 0; s < values.length; s++) values[s] = 0;
  const base = GROUND_LEAK + storage;
  for (let i = 0; i < unknowns; i++) {
    values[diagonal[i]!] = base;
    right[i] = storage * before[i]! + GROUND_LEAK * elevation[i]! - demand[i]!;
  }
  const { passives, a, b, offset, flow, state, automatic, from, to } = core;
  const { slotFF, slotTT, slotFT, slotTF, conductance, constant } = core;
  for (let e = 0; e < passives; e++) {
    const standing = state[e]!;
    let g: number;
    let c: number;
    if (standing === OPEN) {
      const q = flow[e]!;
      const size = q < 0 ? -q : q;
      let factor = LEAST_SLOPE;
      let slope = LEAST_SLOPE;
      const ae = a[e]!;
      if (size > LINEAR_BELOW_GPM) {
        factor += ae * size;
        slope += 2 * ae * size;
      } else {
        factor += ae * LINEAR_BELOW_GPM;
        slope += ae * LINEAR_BELOW_GPM;
      }
      const be = b[e]!;
      if (be !== 0) {
        if (size > LINEAR_BELOW_GPM) {
          const t = be * size ** POWER;
          factor += t;
          slope += MAIN_EXPONENT * t;
        } else {
          factor += be * BELOW_POWER;
          slope += be * BELOW_POWER;
        }
      }
      let drop = factor * q;
      const band = automatic[e]!;
      if (band >= 0) {
        drop += bandDropPsi(core, band, q);
        slope += bandSlope(core, band, q);
      }
      if (secant) {
        g = drop > 0 ? q / drop : 1 / slope;
        c = -g * offset[e]!;
      } else {
        g = 1 / slope;
        c = q - g * (drop + offset[e]!);
      }
    } else if (standing === CLOSED) {
      g = CLOSED_LEAK;
      c = -g * offset[e]!;
    } else {
      continue;
    }
    conductance[e] = g;
    constant[e] = c;
    const i = from[e]!;
    const j = to[e]!;
    const ff = slotFF[e]!;
    const tt = slotTT[e]!;
    if (ff >= 0) {
      values[ff] = values[ff]! + g;
      if (tt >= 0) {
        right[i] = right[i]! - c;
        const ft = slotFT[e]!;
        values[ft] = values[ft]! - g;
        const tf = slotTF[e]!;
        values[tf] = values[tf]! - g;
      } else {
        right[i] = right[i]! - c + g * head[j]!;
      }
    }
    if (tt >= 0) {
      values[tt] = values[tt]! + g;
      right[j] = right[j]! + c + (ff >= 0 ? 0 : g * head[i]!);
    }
  }
  for (let k = 0; k < core.pumps; k++) assemblePump(core, k);
}

function assemblePump(core: Core, k: number): void {
  const { values, right, elevation } = core;
  const i = core.pumpIn[k]!;
  const o = core.pumpOut[k]!;
  const standing = core.pumpState[k]!;
  if (standing === HOLDING) {
    const { mergeOut, mergeIn } = core;
    for (let s = core.mergeStart[k]!; s < core.mergeStart[k + 1]!; s++) {
      const out = mergeOut[s]!;
      const into = mergeIn[s]!;
      values[into] = values[into]! + values[out]!;
      values[out] = 0;
    }
    right[i] = right[i]! + right[o]!;
    values[core.slotOO[k]!] = 1;
    right[o] = core.setPsi[k]! + elevation[o]!;
    return;
  }
  if (standing === PROTECTING) {
    const { yieldIn, yieldOut } = core;
    for (let s = core.yieldStart[k]!; s < core.yieldStart[k + 1]!; s++) {
      const into = yieldIn[s]!;
      const out = yieldOut[s]!;
      values[out] = values[out]! + values[into]!;
      values[into] = 0;
    }
    right[o] = right[o]! + right[i]!;
    values[core.slotII[k]!] = 1;
    right[i] = core.floorPsi[k]! + elevation[i]!;
    return;
  }
  const rise = elevation[o]! - elevation[i]!;
  let g: number;
  let c: number;
  if (standing === AT_CAPABILITY) {
    const q = core.pumpFlow[k]!;
    const start = core.curveStart[k]!;
    const count = core.curveCount[k]!;
    const speed = core.speed[k]!;
    const net = capabilityPsi(core.curveFlow, core.curveNet, start, count, speed, q);
    g = -1 / capabilitySlope(core.curveFlow, core.curveNet, start, count, speed, q);
    c = q + g * (net + rise);
  } else if (standing === PASSING) {
    const q = core.pumpFlow[k]!;
    const size = q < 0 ? -q : q;
    const passK = core.passK[k]!;
    const above = size > LINEAR_BELOW_GPM ? size : LINEAR_BELOW_GPM;
    const slope = passK * (size > LINEAR_BELOW_GPM ? 2 * size : LINEAR_BELOW_GPM) + LEAST_SLOPE;
    g = 1 / slope;
    c = q - g * ((passK * above + LEAST_SLOPE) * q - rise);
  } else {
    g = CLOSED_LEAK;
    c = g * rise;
  }
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
}

function bandDropPsi(core: Core, band: number, q: number): number {
  const rated = core.ratedPsi[band]!;
  const least = core.leastGpm[band]!;
  const greatest = core.greatestGpm[band]!;
  if (q <= least) {
    const part = q / least;
    const below = LINEAR_BELOW_GPM / least;
    return rated * part * (part > below ? part : below);
  }
  if (q <= greatest) return rated + BAND_SLOPE * (q - least);
  const part = q / greatest;
  return rated * part * part + BAND_SLOPE * (greatest - least);
}

function bandSlope(core: Core, band: number, q: number): number {
  const rated = core.ratedPsi[band]!;
  const least = core.leastGpm[band]!;
  const greatest = core.greatestGpm[band]!;
  if (q <= least) {
    return q > LINEAR_BELOW_GPM
      ? (2 * rated * q) / (least * least)
      : (rated * LINEAR_BELOW_GPM) / (least * least);
  }
  if (q <= greatest) return BAND_SLOPE;
  return (2 * rated * q) / (greatest * greatest);
}

/**
 * Runs passes until settled.
 * @param limit greatest number of passes
 * @param cold whether the first pass uses secants
 * @param storage see `assemble`
 * @returns true when no flow moved by more than the tolerance and no state changed
 */
export function newton(core: Core, limit: number, cold: boolean, storage: number): boolean {
  const { unknowns, head, right } = core;
  for (let pass = 0; pass < limit; pass++) {
    assemble(core, cold && pass === 0, storage);
    core.iterations++;
    if (unknowns > 0 && !eliminate(core.elimination, core.values, right)) return false;
    for (let i = 0; i < unknowns; i++) head[i] = right[i]!;
    // Late passes move one state at a time, so that two cannot trade places for ever.
    const moved = advancePassives(core, pass);
    const switched = advancePumps(core, pass);
    if (!moved && !switched && !(cold && pass === 0)) return true;
  }
  return false;
}

/** New passive flows and states; returns whether any moved by more than the tolerance. */
function advancePassives(core: Core, pass: number): boolean {
  const { passives, state, flow, from, to, head, offset, conductance, constant, checked } = core;
  let moved = false;
  for (let e = 0; e < passives; e++) {
    const standing = state[e]!;
    if (standing === SHUT) continue;
    const difference = head[from[e]!]! - head[to[e]!]!;
    if (standing === CLOSED) {
      if (checked[e] !== 2 && difference - offset[e]! > STATE_TOLERANCE && mayOpen(pass, e)) {
        state[e] = OPEN;
        flow[e] = openingFlow(core, e, difference - offset[e]!);
        moved = true;
      }
      continue;
    }
    const q = constant[e]! + conductance[e]! * difference;
    if (checked[e] === 1 && q < 0) {
      // A check that has just stopped the flow is shut; a whisker of back-flow is rounding.
      if (q < -1e-6 || difference - offset[e]! < -STATE_TOLERANCE) {
        state[e] = CLOSED;
        flow[e] = 0;
        moved = true;
        continue;
      }
      if (flow[e] !== 0) moved = moved || flow[e]! > 1e-6;
      flow[e] = 0;
      continue;
    }
    const change = q - flow[e]!;
    const size = q < 0 ? -q : q;
    if (change > FLOW_TOLERANCE * size + 1e-6 || change < -FLOW_TOLERANCE * size - 1e-6) moved = true;
    flow[e] = q;
  }
  return moved;
}

function mayOpen(pass: number, e: number): boolean {
  return pass < 12 || (pass + e) % 3 !== 0;
}

function openingFlow(core: Core, e: number, excess: number): number {
  const band = core.automatic[e]!;
  if (band >= 0) return core.leastGpm[band]!;
  return Math.min(roughFlowGpm(core.a[e]! + 1e-12, core.b[e]!, excess), 3000);
}

/** New pump flows and states; returns whether any changed. */
function advancePumps(core: Core, pass: number): boolean {
  const { head, flow } = core;
  let switched = false;
  for (let k = 0; k < core.pumps; k++) {
    if (core.dead[k]) continue;
    const i = core.pumpIn[k]!;
    const o = core.pumpOut[k]!;
    const standing = core.pumpState[k]!;
    let q: number;
    if (standing === HOLDING || standing === PROTECTING) {
      q = core.demand[o]!;
      for (let s = core.outletStart[k]!; s < core.outletStart[k + 1]!; s++) {
        q += core.outletSense[s]! * flow[core.outletElement[s]!]!;
      }
    } else if (standing === NO_FLOW) {
      q = 0;
    } else {
      q = core.pumpConstant[k]! + core.pumpConductance[k]! * (head[i]! - head[o]!);
      const change = q - core.pumpFlow[k]!;
      const size = q < 0 ? -q : q;
      if (change > FLOW_TOLERANCE * size + 1e-6 || change < -FLOW_TOLERANCE * size - 1e-6) {
        switched = true;
      }
    }
    core.pumpFlow[k] = q;
    const next = nextPumpState(core, k, q, head[i]! - core.elevation[i]!, head[o]! - core.elevation[o]!);
    if (next !== standing && (pass < 12 || (pass + k) % 2 === 0)) {
      core.pumpState[k] = next;
      enter(core, k, next, head[i]! - core.elevation[i]!);
      switched = true;
    } else if (next !== standing) {
      switched = true;
    }
  }
  return switched;
}

/** Which piece of its law a pump belongs on, given what the present piece led to. */
function nextPumpState(core: Core, k: number, q: number, intakePsi: number, dischargePsi: number): number {
  const standing = core.pumpState[k]!;
  const set = core.setPsi[k]!;
  const floor = core.floorPsi[k]!;
  const start = core.curveStart[k]!;
  const count = core.curveCount[k]!;
  const speed = core.speed[k]!;
  const tolerance = STATE_TOLERANCE;
  if (standing === NO_FLOW) {
    let ready = intakePsi;
    if (!core.idle[k] && intakePsi >= floor) {
      const top = intakePsi + capabilityPsi(core.curveFlow, core.curveNet, start, count, speed, 0);
      ready = Math.max(intakePsi, Math.min(set, top));
    }
    if (dischargePsi >= ready - tolerance) return NO_FLOW;
    if (core.idle[k] || intakePsi >= set || intakePsi < floor) return PASSING;
    return ready >= set ? HOLDING : AT_CAPABILITY;
  }
  if (q < -1e-6) return NO_FLOW;
  const passK = core.passK[k]!;
  const passedPsi = intakePsi - (passK * Math.abs(q) + LEAST_SLOPE) * q;
  const net = capabilityPsi(core.curveFlow, core.curveNet, start, count, speed, q);
  switch (standing) {
    case HOLDING:
      if (passedPsi > set + tolerance) return PASSING;
      if (set - intakePsi > net + tolerance) return AT_CAPABILITY;
      return intakePsi < floor - tolerance ? PROTECTING : HOLDING;
    case AT_CAPABILITY:
      if (dischargePsi > set + tolerance) return HOLDING;
      if (dischargePsi < passedPsi - tolerance) return PASSING;
      return intakePsi < floor - tolerance ? PROTECTING : AT_CAPABILITY;
    case PROTECTING:
      if (dischargePsi > set + tolerance) return HOLDING;
      if (dischargePsi - intakePsi > net + tolerance) return AT_CAPABILITY;
      return dischargePsi < passedPsi - tolerance ? PASSING : PROTECTING;
    default:
      if (core.idle[k]) return PASSING;
      if (intakePsi <= floor + tolerance) return PASSING;
      if (dischargePsi < set - tolerance && intakePsi + net > dischargePsi + tolerance) {
        return set - intakePsi <= net ? HOLDING : AT_CAPABILITY;
      }
      return PASSING;
  }
}

/** Gives a pump that changes piece a flow to start from. */
function enter(core: Core, k: number, next: number, intakePsi: number): void {
  if (next === NO_FLOW) {
    core.pumpFlow[k] = 0;
  } else if (next === AT_CAPABILITY) {
    const start = core.curveStart[k]!;
    const count = core.curveCount[k]!;
    const set = core.setPsi[k]!;
    const last = core.curveFlow[start + count - 1]! * core.speed[k]!;
    if (set === Number.POSITIVE_INFINITY) {
      core.pumpFlow[k] = Math.min(Math.max(core.pumpFlow[k]!, 1), last);
    } else {
      const most = flowAtNetGpm(
        core.curveFlow,
        core.curveNet,
        start,
        count,
        core.speed[k]!,
        set - intakePsi,
      );
      core.pumpFlow[k] = Math.min(Math.max(most, 1), last * 0.999);
    }
  } else if (next === PASSING && core.pumpFlow[k]! < 1) {
    core.pumpFlow[k] = 300;
  }
}
