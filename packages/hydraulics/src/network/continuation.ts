/**
 * The slow, sure way. Every element is given a small straight resistance at its ends. With it each
 * element's flow is a function of the heads, rising with its inlet's and falling with its outlet's,
 * and no faster than the resistance allows; so the imbalances of all nodes together fall along
 * Newton's direction, a step that is short enough always gains, and there is one answer, which
 * moves steadily as the resistance is taken away. It is taken away by steps, each starting from
 * the last one's answer, until the quick method settles what is left.
 */

import { capabilitySlope } from './capability.ts';
import { CLOSED_RATE } from './constants.ts';
import {
  AT_CAPABILITY,
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
  PROTECTING,
  REALS,
  SHUT,
  SLOT_FROM,
  SLOT_TO,
  STATE,
  TO,
} from './core.ts';
import { eliminate } from './elimination.ts';
import { newton } from './newton.ts';
import { onLoad, pumpOnLoad } from './pump-law.ts';
import { flowThrough, slopeAt } from './resisted-flow.ts';

/** Resistances [psi/gpm], from one that outweighs every hose to one that no gauge would show. */
const FIRST_RESISTANCE = 1;
const LAST_RESISTANCE = 1e-10;
/** What is left of the resistance from one level to the next, as a rule. */
const QUARTER = 0.25;
const MOST_LEVELS = 30;

/** Imbalance of all nodes together [gpm] that is near enough to go on from. */
const SETTLED_GPM = 1e-3;

/** No head moves farther in one step [psi] (but for much resistance): a pocket with nothing to hold it would fly off. */
const LONGEST_STEP_PSI = 1000;

/** The way may run along corners where the steps come to nothing; other resistances lead another way. */
const WAYS = 6;

/**
 * @param balanced whether the flows in the tables balance at every node
 * @returns true when the network settled with no resistance left
 */
export function continueToAnswer(core: Core, balanced: () => boolean): boolean {
  for (let way = 0; way < WAYS; way++) if (follow(core, way, balanced)) return true;
  return false;
}

function follow(core: Core, way: number, balanced: () => boolean): boolean {
  const { unknowns, head, dry } = core;
  let highest = 0;
  for (let i = unknowns; i < head.length; i++) highest = Math.max(highest, head[i]!);
  for (let i = 0; i < unknowns; i++) if (!dry[i]) head[i] = highest;
  const kept = Float64Array.from(head);
  let settledAt = Number.POSITIVE_INFINITY;
  let resistance = FIRST_RESISTANCE;
  let cut = QUARTER;
  for (let level = 0; level < MOST_LEVELS && resistance >= LAST_RESISTANCE; level++) {
    if (settle(core, resistance, way)) {
      settledAt = resistance;
      kept.set(head);
      cut = Math.max(QUARTER, cut * cut);
      if (resistance < 0.02) {
        if (newton(core, 24, false, 0) && balanced()) return true;
        head.set(kept);
      }
      resistance *= cut;
    } else if (settledAt === Number.POSITIVE_INFINITY) {
      // Much resistance may set the answer far off, out of reach: try with less.
      resistance *= cut;
    } else {
      // Too far at once: back to where it settled, and a smaller cut.
      head.set(kept);
      cut = Math.sqrt(cut);
      resistance = Math.min(resistance / cut, settledAt * cut);
    }
  }
  return false;
}

/**
 * Newton on the heads alone, at one resistance. A step that does not bring the imbalances down is
 * halved; when that does not help (the heads stand on a corner of some law) every node is given
 * storage, more and more, until the step is short and sure enough.
 * @returns whether the balances hold
 */
function settle(core: Core, resistance: number, way: number): boolean {
  const { unknowns, head, step, before, values, dry } = core;
  let out = evaluate(core, resistance, way);
  let storage = 0;
  const wary = way % 2 === 0;
  const mostPsi = LONGEST_STEP_PSI * (1 + 20 * resistance);
  for (let pass = 0; pass < 150 && out > SETTLED_GPM; pass++) {
    core.iterations++;
    for (let i = 0; i < unknowns; i++) if (!dry[i]) values[i] = values[i]! + storage;
    if (!eliminate(core.elimination, values, core.right, step)) return false;
    before.set(head.subarray(0, unknowns));
    let gained = false;
    let longest = mostPsi;
    for (let i = 0; i < unknowns; i++) longest = Math.max(longest, Math.abs(step[i]!));
    const whole = mostPsi / longest;
    // A direction that would throw heads out so far says nothing: the matrix is all but singular.
    const blind = wary && storage === 0 && whole < 1e-3;
    const least = blind ? whole : storage === 0 ? 1e-6 * whole : 0.05 * whole;
    for (let share = whole; share > least && !gained; share /= 4) {
      for (let i = 0; i < unknowns; i++) head[i] = before[i]! + share * step[i]!;
      const now = evaluate(core, resistance, way);
      // With storage a step in time may leave the sum as it is and still move the heads to where they belong.
      gained = storage === 0 ? now < out * (1 - 1e-3 * share) : now <= out * (1 + 1e-12);
      if (gained) out = now;
    }
    if (gained) {
      storage = storage < 1e-5 / resistance ? 0 : storage / 8;
    } else {
      if (storage > 1e3 / resistance) return false;
      storage = storage === 0 ? (wary ? 1e-5 : 1e-2) / resistance : storage * (wary ? 32 : 8);
      for (let i = 0; i < unknowns; i++) head[i] = before[i]!;
      evaluate(core, resistance, way);
    }
  }
  return out <= SETTLED_GPM;
}

/**
 * Sets every flow and state that the heads ask for, and writes balances and rates.
 * @returns sum of the nodes' imbalances [gpm]
 */
function evaluate(core: Core, resistance: number, way: number): number {
  const { unknowns, values, right, dry, demand, head, reals, integers } = core;
  values.fill(0);
  right.fill(0);
  for (let i = 0; i < unknowns; i++) {
    if (dry[i]) values[i] = 1;
    else right[i] = -demand[i]!;
  }
  for (let n = 0, r = 0; n < integers.length; n += INTEGERS, r += REALS) {
    if (integers[n + STATE] === SHUT) continue;
    const i = integers[n + FROM]!;
    const j = integers[n + TO]!;
    const excess = head[i]! - head[j]! - reals[r + OFFSET]!;
    const check = integers[n + CHECK]!;
    let g = CLOSED_RATE;
    let q = 0;
    const open = check === 0 || (check === 1 && excess > 0);
    integers[n + STATE] = open ? OPEN : CLOSED;
    if (open) {
      const own = resistance * unlike(n + way);
      q = flowThrough(core, r, integers[n + BAND]!, excess, own);
      g = 1 / (slopeAt(core, r, integers[n + BAND]!, q) + own);
    }
    reals[r + FLOW] = q;
    reals[r + CONDUCTANCE] = g;
    right[i] = right[i]! - q;
    right[j] = right[j]! + q;
    const slotFrom = integers[n + SLOT_FROM]!;
    values[slotFrom] = values[slotFrom]! + g;
    const slotTo = integers[n + SLOT_TO]!;
    values[slotTo] = values[slotTo]! + g;
  }
  for (let k = 0; k < core.pumps; k++)
    if (!core.dead[k]) evaluatePump(core, k, resistance * unlike(k + way));
  let sum = 0;
  for (let i = 0; i < unknowns; i++) if (!dry[i]) sum += Math.abs(right[i]!);
  return sum;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** A factor from 0.5 to 1.5, another for each element, so that like ones do not come to their corners together. */
function unlike(at: number): number {
  const golden = at * GOLDEN;
  return 0.5 + golden - Math.floor(golden);
}

function evaluatePump(core: Core, k: number, resistance: number): void {
  const { head, elevation, values, right } = core;
  const i = core.pumpIn[k]!;
  const o = core.pumpOut[k]!;
  core.pumpState[k] = NO_FLOW;
  pumpOnLoad(
    core,
    k,
    0,
    head[i]! - elevation[i]!,
    head[o]! - elevation[o]!,
    resistance,
    resistance,
  );
  const q = onLoad.flowGpm;
  let slope = 1 / CLOSED_RATE;
  if (onLoad.piece === HOLDING || onLoad.piece === PROTECTING) slope = resistance;
  else if (onLoad.piece === PASSING) slope = 2 * resistance + 2 * core.passK[k]! * q;
  else if (onLoad.piece === AT_CAPABILITY) {
    const { curveFlow, curveNet, curveStart, curveCount, speed } = core;
    slope =
      2 * resistance -
      capabilitySlope(curveFlow, curveNet, curveStart[k]!, curveCount[k]!, speed[k]!, q);
  }
  core.pumpState[k] = onLoad.piece;
  core.pumpFlow[k] = q;
  const rateIn = onLoad.piece === HOLDING ? CLOSED_RATE : 1 / slope;
  const rateOut = onLoad.piece === PROTECTING ? CLOSED_RATE : 1 / slope;
  const slotIn = core.slotIn[k]!;
  values[slotIn] = values[slotIn]! + rateIn;
  const slotOut = core.slotOut[k]!;
  values[slotOut] = values[slotOut]! + rateOut;
  right[i] = right[i]! - q;
  right[o] = right[o]! + q;
}
