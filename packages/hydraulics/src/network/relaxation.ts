import { type Core, INTEGERS, STATE } from './core.ts';
import { coldStart, newton } from './newton.ts';

/**
 * The slow, sure way. Every node is given a little storage and the network is let run to rest in
 * growing steps of time. Because each element passes more as its inlet pressure rises and less as
 * its outlet pressure rises, and water is conserved, two histories of such a network can only draw
 * together (the motion is a contraction in the sum of absolute differences), so it comes to the one
 * state of rest from any start. Each step is strongly diagonal and Newton settles it; where it does
 * not, the step is shortened.
 * @returns true when at rest with no storage left
 */
export function relax(core: Core): boolean {
  const { unknowns, head, before } = core;
  const reals = new Float64Array(core.reals.length);
  const states = new Int32Array(core.passives);
  const pumpFlow = new Float64Array(core.pumps);
  const pumpState = new Uint8Array(core.pumps);
  let highest = 0;
  for (let i = unknowns; i < head.length; i++) highest = Math.max(highest, head[i]!);
  coldStart(core);
  for (let i = 0; i < unknowns; i++) head[i] = highest;

  let storage = 100;
  for (let step = 0; step < 400; step++) {
    before.set(head.subarray(0, unknowns));
    reals.set(core.reals);
    for (let e = 0; e < core.passives; e++) states[e] = core.integers[e * INTEGERS + STATE]!;
    pumpFlow.set(core.pumpFlow);
    pumpState.set(core.pumpState);
    if (newton(core, 60, false, storage)) {
      if (storage === 0) return true;
      storage = storage < 1e-6 ? 0 : storage / 3;
    } else {
      if (storage > 1e9) return false;
      storage = storage === 0 ? 1e-6 : storage * 10;
      for (let i = 0; i < unknowns; i++) head[i] = before[i]!;
      core.reals.set(reals);
      for (let e = 0; e < core.passives; e++) core.integers[e * INTEGERS + STATE] = states[e]!;
      core.pumpFlow.set(pumpFlow);
      core.pumpState.set(pumpState);
    }
  }
  return false;
}
