/**
 * Newton's method on flows and heads together. Each pass replaces every element by its tangent at
 * the present flow, solves the node balances for the heads, and reads the new flows off the tangents.
 * Checks, governors and nozzles switch between pieces as the new heads and flows tell; where the
 * pieces stop changing and every element holds to its law, all conditions are met and the answer is
 * the only one (see the theory page, "The network method").
 */
import {
  CLOSED_LEAK,
  FLOW_TOLERANCE_GPM,
  FLOW_TOLERANCE_SHARE,
  GROUND_LEAK,
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
  CONSTANT,
  type Core,
  FLOW,
  FROM,
  HOLDING,
  INTEGERS,
  NO_FLOW,
  OFFSET,
  OPEN,
  PASSING,
  REALS,
  ROW_FROM,
  ROW_TO,
  SHUT,
  SLOT_FF,
  SLOT_FT,
  SLOT_TF,
  SLOT_TT,
  STATE,
  setPumpState,
  TO,
} from './core.ts';
import { bandDropPsi, bandSlope, roughFlowGpm } from './drop.ts';
import { eliminate } from './elimination.ts';
import { advancePump, STAYED, SWITCHED, writePump } from './pump-step.ts';

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
    core.pumpFlow[k] = 0.5 * core.curveFlow[core.curveStart[k]! + core.curveCount[k]! - 1]! * core.speed[k]!;
    setPumpState(
      core,
      k,
      core.dead[k]
        ? NO_FLOW
        : core.idle[k]
          ? PASSING
          : core.setPsi[k] === Number.POSITIVE_INFINITY
            ? AT_CAPABILITY
            : HOLDING,
    );
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
  const { unknowns, head, right, pumps } = core;
  let mode = cold ? FIRST : RESUME;
  for (let pass = 0; pass < limit; pass++) {
    startRows(core, storage);
    let settled = passPassives(core, mode, pass) && mode !== FIRST;
    if (mode >= SECOND && pumps > 0) {
      let switched = false;
      for (let k = 0; k < pumps; k++) {
        const found = advancePump(core, k, mode === SECOND ? -1 : pass);
        if (found === STAYED) continue;
        settled = false;
        if (found === SWITCHED) switched = true;
      }
      if (switched) {
        // Balances have moved to other rows: write the passives' tangents again.
        startRows(core, storage);
        passPassives(core, RESUME, pass);
      }
    }
    for (let k = 0; k < pumps; k++) if (!writePump(core, k)) settled = false;
    // A resumed start may hold to its laws while a demand or a setting has moved: solve before judging.
    if (settled && mode >= SECOND) return true;
    core.iterations++;
    if (unknowns > 0 && !eliminate(core.elimination, core.values, right)) return false;
    for (let i = 0; i < unknowns; i++) head[i] = right[i]!;
    mode = mode === FIRST ? SECOND : ADVANCE;
  }
  return false;
}

/** Writes the tangents at the present flows, states staying as they are; for derivatives. */
export function writeTangents(core: Core): void {
  startRows(core, 0);
  passPassives(core, RESUME, 0);
  for (let k = 0; k < core.pumps; k++) writePump(core, k);
}

function startRows(core: Core, storage: number): void {
  const { unknowns, values, right, demand, elevation, before, row } = core;
  const { diagonal } = core.elimination;
  for (let s = 0; s < values.length; s++) values[s] = 0;
  for (let i = 0; i <= unknowns; i++) right[i] = 0;
  const base = GROUND_LEAK + storage;
  for (let i = 0; i < unknowns; i++) {
    const at = row[i]!;
    // A node balanced in a pump's other row is held by that pump: it stores nothing.
    if (at === i) {
      values[diagonal[i]!] = base;
      right[i] = right[i]! + storage * before[i]! + GROUND_LEAK * elevation[i]! - demand[i]!;
    } else {
      right[at] = right[at]! - demand[i]!;
    }
  }
}

/**
 * One walk through the passive elements: new flow, new state, departure from the law, tangent into
 * the matrix.
 * @returns whether all hold to their laws and none changed state
 */
function passPassives(core: Core, mode: number, pass: number): boolean {
  const { passives, reals, integers, unknowns, head, values, right } = core;
  let settled = true;
  for (let e = 0; e < passives; e++) {
    const n = e * INTEGERS;
    let standing = integers[n + STATE]!;
    if (standing === SHUT) continue;
    const r = e * REALS;
    const i = integers[n + FROM]!;
    const j = integers[n + TO]!;
    const offset = reals[r + OFFSET]!;
    const excess = head[i]! - head[j]! - offset;
    const check = integers[n + CHECK]!;
    let q = reals[r + FLOW]!;
    if (standing === CLOSED) {
      if (check !== 2 && excess > STATE_TOLERANCE && mode !== FIRST && (pass < 12 || (pass + e) % 3 !== 0)) {
        standing = OPEN;
        integers[n + STATE] = OPEN;
        q = openingFlowGpm(core, e, excess);
        reals[r + FLOW] = q;
        settled = false;
      }
    } else if (mode >= SECOND) {
      const guess = q;
      q = reals[r + CONSTANT]! + reals[r + CONDUCTANCE]! * (excess + offset);
      // Straight lines through a guess g answered with q: were the link alone, √(g·q) would be exact.
      if (mode === SECOND && q > 0 && guess > 0) q = Math.sqrt(guess * Math.min(q, 4 * guess));
      if (check === 1 && q < 0) {
        if (q < -1e-6) settled = false;
        standing = CLOSED;
        integers[n + STATE] = CLOSED;
        q = 0;
      }
      reals[r + FLOW] = q;
    }
    let g = CLOSED_LEAK;
    let c = -CLOSED_LEAK * offset;
    if (standing === OPEN) {
      const size = q < 0 ? -q : q;
      const a = reals[r + A]!;
      let factor = LEAST_SLOPE;
      let slope = LEAST_SLOPE;
      if (size > LINEAR_BELOW_GPM) {
        factor += a * size;
        slope += 2 * a * size;
      } else {
        factor += a * LINEAR_BELOW_GPM;
        slope += a * LINEAR_BELOW_GPM;
      }
      const b = reals[r + B]!;
      if (b !== 0) {
        if (size > LINEAR_BELOW_GPM) {
          const t = b * Math.exp(POWER * Math.log(size));
          factor += t;
          slope += MAIN_EXPONENT * t;
        } else {
          factor += b * BELOW_POWER;
          slope += b * BELOW_POWER;
        }
      }
      let drop = factor * q;
      const band = integers[n + BAND]!;
      if (band >= 0) {
        drop += bandDropPsi(core.ratedPsi[band]!, core.leastGpm[band]!, core.greatestGpm[band]!, q);
        slope += bandSlope(core.ratedPsi[band]!, core.leastGpm[band]!, core.greatestGpm[band]!, q);
      }
      if (mode === FIRST) {
        g = drop > 0 ? q / drop : 1 / slope;
        c = -g * offset;
      } else {
        g = 1 / slope;
        c = q - g * (drop + offset);
        const out = excess > drop ? excess - drop : drop - excess;
        if (!(out <= LAW_TOLERANCE_PSI && out * g <= FLOW_TOLERANCE_SHARE * size + FLOW_TOLERANCE_GPM)) {
          settled = false;
        }
      }
    }
    reals[r + CONDUCTANCE] = g;
    reals[r + CONSTANT] = c;
    const ff = integers[n + SLOT_FF]!;
    values[ff] = values[ff]! + g;
    const rowFrom = integers[n + ROW_FROM]!;
    if (j < unknowns) {
      const tt = integers[n + SLOT_TT]!;
      values[tt] = values[tt]! + g;
      const ft = integers[n + SLOT_FT]!;
      values[ft] = values[ft]! - g;
      const tf = integers[n + SLOT_TF]!;
      values[tf] = values[tf]! - g;
      const rowTo = integers[n + ROW_TO]!;
      right[rowFrom] = right[rowFrom]! - c;
      right[rowTo] = right[rowTo]! + c + (i < unknowns ? 0 : g * head[i]!);
    } else {
      right[rowFrom] = right[rowFrom]! - c + g * head[j]!;
    }
  }
  return settled;
}

function openingFlowGpm(core: Core, e: number, excessPsi: number): number {
  const band = core.integers[e * INTEGERS + BAND]!;
  if (band >= 0) return core.leastGpm[band]!;
  const r = e * REALS;
  return Math.min(roughFlowGpm(core.reals[r + A]! + 1e-12, core.reals[r + B]!, excessPsi), 3000);
}
