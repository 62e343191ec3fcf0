/** The network with a small straight resistance at the ends of every element: flows from heads alone. */
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
import { onLoad, pumpOnLoad } from './pump-law.ts';
import { flowThrough, slopeAt } from './resisted-flow.ts';

/** Imbalance of all nodes together [gpm] that is near enough to go on from. */
export const SETTLED_GPM = 1e-4;

/**
 * Sets every flow and state that the heads ask for, and writes balances and rates.
 * @returns sum of the nodes' imbalances [gpm]
 */
export function evaluate(core: Core, resistance: number, way: number): number {
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
