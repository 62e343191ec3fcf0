import type { Core } from './core.ts';
import { eliminate } from './elimination.ts';
import { evaluate, SETTLED_GPM } from './resisted-network.ts';

/**
 * Lets the network run to rest at one resistance, every node given a little storage, in steps of
 * time that grow as they succeed. Each element passes more as its inlet's head rises and less as its
 * outlet's does, and water is conserved: two histories of such a network can only draw together (the
 * motion is a contraction in the sum of absolute differences), so that it comes to rest from any
 * start. Each step is worked out in full, and shortened where that fails.
 * @returns whether the balances hold
 */
export function march(core: Core, resistance: number, way: number): boolean {
  const { unknowns, head } = core;
  const start = new Float64Array(unknowns);
  let storage = 1;
  for (let step = 0; step < 300; step++) {
    if (evaluate(core, resistance, way) <= SETTLED_GPM) return true;
    start.set(head.subarray(0, unknowns));
    if (takeStep(core, resistance, way, storage, start)) {
      storage /= 4;
    } else {
      head.set(start);
      storage *= 16;
      if (storage > 1e6 / resistance) return false;
    }
  }
  return false;
}

/** One implicit step: Newton until what flows in is what is stored. */
function takeStep(
  core: Core,
  resistance: number,
  way: number,
  storage: number,
  start: Float64Array,
): boolean {
  const { unknowns, head, before, step, values, right, dry } = core;
  /** Sets `right` to what is still out of balance, storage counted. */
  const judge = () => {
    evaluate(core, resistance, way);
    let sum = 0;
    for (let i = 0; i < unknowns; i++) {
      if (dry[i]) continue;
      right[i] = right[i]! - storage * (head[i]! - start[i]!);
      values[i] = values[i]! + storage;
      sum += Math.abs(right[i]!);
    }
    return sum;
  };
  let out = judge();
  const enough = Math.max(0.5 * SETTLED_GPM, 0.02 * out);
  for (let pass = 0; pass < 25 && out > enough; pass++) {
    core.iterations++;
    if (!eliminate(core.elimination, values, right, step)) return false;
    before.set(head.subarray(0, unknowns));
    let gained = false;
    for (let share = 1; share > 1e-3 && !gained; share /= 3) {
      for (let i = 0; i < unknowns; i++) head[i] = before[i]! + share * step[i]!;
      const now = judge();
      gained = now < out * (1 - 1e-3 * share);
      if (gained) out = now;
    }
    if (!gained) return false;
  }
  return out <= enough;
}
