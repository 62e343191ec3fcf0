/** The passive elements' part of a Newton pass, and the start for a solve that knows nothing yet. */
import * as constants from './constants.ts';
import type { Core } from './core.ts';
import * as core from './core.ts';
import { bandDropPsi, bandSlope, roughFlowGpm } from './drop.ts';

// The engine folds a constant of this file into the code; one of another file it reads each time.
const {
  CLOSED_RATE,
  DIGITS_PSI,
  DIGITS_SHARE,
  FLOW_TOLERANCE_GPM,
  FLOW_TOLERANCE_SHARE,
  LAW_TOLERANCE_PSI,
  LEAST_SLOPE,
  LINEAR_BELOW_GPM,
  MAIN_EXPONENT,
  STATE_TOLERANCE,
} = constants;
const { A, B, BAND, CHECK, CLOSED, CONDUCTANCE, FLOW, FROM, INTEGERS, OFFSET, OPEN, PREDICTED } =
  core;
const { REALS, SHUT, SLOT_FROM, SLOT_TO, STATE, TO } = core;

const POWER = MAIN_EXPONENT - 1;
const BELOW_POWER = LINEAR_BELOW_GPM ** POWER;

/** How a pass treats what stands in the tables: guesses, an answer, the outcome of guesses, tangents. */
export const GUESSES = 0;
export const ANSWER = 1;
export const OUTCOME = 2;
export const TANGENTS = 3;
const FIRST = 0;
const SECOND = 2;

/** Sets flows and states for a solve that knows nothing yet. */
export function coldPassives({ reals, integers, unknowns, greatestGpm }: Core): void {
  for (let n = 0, r = 0; n < integers.length; n += INTEGERS, r += REALS) {
    if (integers[n + STATE] === SHUT) continue;
    const never = integers[n + CHECK] === 2;
    integers[n + STATE] = never ? CLOSED : OPEN;
    const band = integers[n + BAND]!;
    if (never) reals[r + FLOW] = 0;
    else if (band >= 0) reals[r + FLOW] = greatestGpm[band]!;
    else if (integers[n + TO]! < unknowns) reals[r + FLOW] = 500;
    else reals[r + FLOW] = Math.min(roughFlowGpm(reals[r + A]!, reals[r + B]!, 60), 2000);
  }
}

/**
 * One walk through the passive elements: new flow, new state, departure from the law, tangent into
 * the matrix.
 * @returns whether all hold to their laws and none changed state
 */
export function passPassives(made: Core, mode: number, pass: number): boolean {
  const { reals, integers, head, step, values, right } = made;
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
          q = openingFlowGpm(made, r, integers[n + BAND]!, excess);
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
        const rated = made.ratedPsi[band]!;
        const least = made.leastGpm[band]!;
        const greatest = made.greatestGpm[band]!;
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

function openingFlowGpm(made: Core, r: number, band: number, excessPsi: number): number {
  if (band >= 0) return made.leastGpm[band]!;
  return Math.min(roughFlowGpm(made.reals[r + A]! + 1e-12, made.reals[r + B]!, excessPsi), 3000);
}
