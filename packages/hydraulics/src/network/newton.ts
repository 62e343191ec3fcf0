/**
 * Newton's method on flows and heads together. Each pass replaces every element by its tangent at
 * the present flow, solves the node balances for the change of the heads, and reads the new flows
 * off the tangents. Checks, governors and nozzles switch between pieces as the new heads and flows
 * tell; where the pieces stop changing and every element holds to its law, all conditions are met
 * and the answer is the only one (see the theory page, "The network method").
 */
import {
  CLOSED_RATE,
  DIGITS_PSI,
  DIGITS_SHARE,
  FARTHEST_PSI,
  FLOW_TOLERANCE_GPM,
  FLOW_TOLERANCE_SHARE,
  LAW_TOLERANCE_PSI,
  LEAST_SLOPE,
  LINEAR_BELOW_GPM,
  MAIN_EXPONENT,
  STATE_TOLERANCE,
} from './constants.ts';
import {
  A,
  AT_CAPABILITY,
  B,
  BAND,
  CHECK,
  CLOSED,
  CONDUCTANCE,
  type Core,
  FLOW,
  FROM,
  HOLDING,
  INTEGERS,
  NO_FLOW,
  OFFSET,
  OPEN,
  PASSING,
  PREDICTED,
  REALS,
  SHUT,
  SLOT_FROM,
  SLOT_TO,
  STATE,
  TO,
} from './core.ts';
import { bandDropPsi, bandSlope, roughFlowGpm } from './drop.ts';
import { eliminate } from './elimination.ts';
import { advancePump, judgePump, LOAD_COUNT, writePump } from './pump-step.ts';

const POWER = MAIN_EXPONENT - 1;
const BELOW_POWER = LINEAR_BELOW_GPM ** POWER;

/** How a pass treats what stands in the tables: guesses, an answer, the outcome of guesses, tangents. */
const FIRST = 0;
const RESUME = 1;
const SECOND = 2;
const ADVANCE = 3;

/** Sets flows and states for a solve that knows nothing yet. */
export function coldStart(core: Core): void {
  const { passives, reals, integers, unknowns } = core;
  for (let e = 0; e < passives; e++) {
    const n = e * INTEGERS;
    if (integers[n + STATE] === SHUT) continue;
    const r = e * REALS;
    const never = integers[n + CHECK] === 2;
    integers[n + STATE] = never ? CLOSED : OPEN;
    const band = integers[n + BAND]!;
    if (never) reals[r + FLOW] = 0;
    else if (band >= 0) reals[r + FLOW] = core.greatestGpm[band]!;
    else if (integers[n + TO]! < unknowns) reals[r + FLOW] = 500;
    else reals[r + FLOW] = Math.min(roughFlowGpm(reals[r + A]!, reals[r + B]!, 60), 2000);
  }
  for (let k = 0; k < core.pumps; k++) {
    const last = core.curveFlow[core.curveStart[k]! + core.curveCount[k]! - 1]!;
    core.pumpFlow[k] = core.dead[k] ? 0 : 0.5 * last * core.speed[k]!;
    let state = HOLDING;
    if (core.dead[k]) state = NO_FLOW;
    else if (core.idle[k]) state = PASSING;
    else if (core.setPsi[k] === Number.POSITIVE_INFINITY) state = AT_CAPABILITY;
    core.pumpState[k] = state;
  }
}

/**
 * Runs passes until settled. No allocation.
 * @param limit greatest number of passes
 * @param cold flows are guesses: the first pass uses straight lines through zero instead of tangents
 * @param storage [gpm/psi] of every node, anchored at the heads in `before`; 0 for a steady state
 * @returns true when every element holds to its law and no state changed
 */
export function newton(core: Core, limit: number, cold: boolean, storage: number): boolean {
  const { unknowns, head, right, step, values, pumps, elimination } = core;
  let mode = cold ? FIRST : RESUME;
  for (let pass = 0; pass < limit; pass++) {
    startRows(core, storage);
    let settled = passPassives(core, mode, pass) && mode !== FIRST;
    const load = (pass < 12 ? pass : (pass >> 1) + 1) % LOAD_COUNT;
    // After a while every piece gets two passes, so that its own curve is found before it is judged.
    const mayMove = mode !== SECOND && (pass < 12 || pass % 2 === 0);
    for (let k = 0; k < pumps; k++) {
      if (core.dead[k]) continue;
      if (mode >= SECOND) {
        if (!advancePump(core, k, load, mayMove)) settled = false;
      } else if (mode === RESUME && !judgePump(core, k, core.pumpFlow[k]!, load, true)) {
        settled = false;
      }
      if (!writePump(core, k)) settled = false;
    }
    // A start may hold to its laws but not to its balances; after a pass of tangents it holds to both.
    const balanced = mode === ADVANCE || worstOf(right, unknowns) <= FLOW_TOLERANCE_GPM;
    if (settled && balanced) return true;
    core.iterations++;
    if (!eliminate(elimination, values, right, step)) return false;
    for (let i = 0; i < unknowns; i++) {
      const next = head[i]! + step[i]!;
      head[i] = Math.max(-FARTHEST_PSI, Math.min(FARTHEST_PSI, next));
    }
    mode = mode === FIRST ? SECOND : ADVANCE;
  }
  return false;
}

function worstOf(right: Float64Array, unknowns: number): number {
  let worst = 0;
  for (let i = 0; i < unknowns; i++) worst = Math.max(worst, Math.abs(right[i]!));
  return worst;
}

/** Writes the tangents at the present flows, states staying as they are; for derivatives. */
export function writeTangents(core: Core): void {
  startRows(core, 0);
  passPassives(core, RESUME, 0);
  for (let k = 0; k < core.pumps; k++) if (!core.dead[k]) writePump(core, k);
}

function startRows(core: Core, storage: number): void {
  const { unknowns, values, right, demand, dry, head, before } = core;
  values.fill(0);
  right.fill(0);
  for (let i = 0; i < unknowns; i++) {
    if (dry[i]) {
      values[i] = 1;
    } else {
      values[i] = storage;
      right[i] = -demand[i]!;
      if (storage !== 0) right[i] = right[i]! - storage * (head[i]! - before[i]!);
    }
  }
}

/**
 * One walk through the passive elements: new flow, new state, departure from the law, tangent into
 * the matrix.
 * @returns whether all hold to their laws and none changed state
 */
function passPassives(core: Core, mode: number, pass: number): boolean {
  const { reals, integers, head, step, values, right } = core;
  const end = integers.length;
  let settled = true;
  for (let n = 0, r = 0; n < end; n += INTEGERS, r += REALS) {
    let standing = integers[n + STATE]!;
    if (standing === SHUT) continue;
    const i = integers[n + FROM]!;
    const j = integers[n + TO]!;
    const excess = head[i]! - head[j]! - reals[r + OFFSET]!;
    const check = integers[n + CHECK]!;
    let q = reals[r + FLOW]!;
    if (standing === CLOSED) {
      if (check !== 2 && excess > STATE_TOLERANCE && mode !== FIRST) {
        settled = false;
        // Late in the day not all at once, so that two checks cannot trade places for ever.
        if (pass < 12 || (pass + n) % 3 !== 0) {
          standing = OPEN;
          integers[n + STATE] = OPEN;
          q = openingFlowGpm(core, r, integers[n + BAND]!, excess);
          reals[r + FLOW] = q;
        }
      }
    } else if (mode >= SECOND) {
      const guess = q;
      q = reals[r + PREDICTED]! + reals[r + CONDUCTANCE]! * (step[i]! - step[j]!);
      // Straight lines through a guess g answered with q: were the link alone, √(g·q) would be exact.
      if (mode === SECOND && q > 0 && guess > 0) q = Math.sqrt(guess * Math.min(q, 4 * guess));
      if (check === 1 && q < 0) {
        if (q < -1e-6 || excess > STATE_TOLERANCE) settled = false;
        standing = CLOSED;
        integers[n + STATE] = CLOSED;
        q = 0;
      }
      reals[r + FLOW] = q;
    }
    let g = CLOSED_RATE;
    let predicted = 0;
    if (standing === OPEN) {
      const size = q < 0 ? -q : q;
      const above = size > LINEAR_BELOW_GPM;
      const a = reals[r + A]!;
      let factor = LEAST_SLOPE + a * (above ? size : LINEAR_BELOW_GPM);
      let slope = above ? factor + a * size : factor;
      const b = reals[r + B]!;
      if (b !== 0) {
        const t = b * (above ? Math.exp(POWER * Math.log(size)) : BELOW_POWER);
        factor += t;
        slope += above ? MAIN_EXPONENT * t : t;
      }
      let drop = factor * q;
      const band = integers[n + BAND]!;
      if (band >= 0) {
        const rated = core.ratedPsi[band]!;
        const least = core.leastGpm[band]!;
        const greatest = core.greatestGpm[band]!;
        drop += bandDropPsi(rated, least, greatest, q);
        slope += bandSlope(rated, least, greatest, q);
      }
      if (mode === FIRST) {
        g = drop > 0 ? q / drop : 1 / slope;
        predicted = g * excess;
      } else {
        g = 1 / slope;
        const over = excess - drop;
        predicted = q + g * over;
        const out = over < 0 ? -over : over;
        if (
          !(
            out <= LAW_TOLERANCE_PSI && out * g <= FLOW_TOLERANCE_SHARE * size + FLOW_TOLERANCE_GPM
          ) &&
          !(out <= DIGITS_PSI + DIGITS_SHARE * (Math.abs(head[i]!) + Math.abs(head[j]!)))
        ) {
          settled = false;
        }
      }
    }
    reals[r + CONDUCTANCE] = g;
    reals[r + PREDICTED] = predicted;
    const slotFrom = integers[n + SLOT_FROM]!;
    values[slotFrom] = values[slotFrom]! + g;
    const slotTo = integers[n + SLOT_TO]!;
    values[slotTo] = values[slotTo]! + g;
    right[i] = right[i]! - predicted;
    right[j] = right[j]! + predicted;
  }
  return settled;
}

function openingFlowGpm(core: Core, r: number, band: number, excessPsi: number): number {
  if (band >= 0) return core.leastGpm[band]!;
  return Math.min(roughFlowGpm(core.reals[r + A]! + 1e-12, core.reals[r + B]!, excessPsi), 3000);
}
