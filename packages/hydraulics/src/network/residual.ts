/** How far an answer is from satisfying every law, worked out afresh from the laws themselves. */
import { capabilityPsi } from './capability.ts';
import { LEAST_SLOPE } from './constants.ts';
import { A, B, BAND, CHECK, CLOSED, type Core, FLOW, FROM, INTEGERS, OFFSET, REALS, SHUT, STATE, TO } from './core.ts';
import { bandDropPsi, passiveDropPsi } from './drop.ts';

export interface Residual {
  /** Worst imbalance at a node [gpm]. */
  massGpm: number;
  /** Worst departure of a link from its law [psi]. */
  energyPsi: number;
}

/** Worst imbalance at a node [gpm]; NaN comes back as Infinity. No allocation. */
export function worstImbalanceGpm(core: Core): number {
  const { passives, reals, integers, unknowns, right } = core;
  for (let i = 0; i < unknowns; i++) right[i] = core.demand[i]!;
  right[unknowns] = 0;
  for (let e = 0; e < passives; e++) {
    const n = e * INTEGERS;
    if (integers[n + STATE] === SHUT) continue;
    const q = reals[e * REALS + FLOW]!;
    const i = integers[n + FROM]!;
    const j = integers[n + TO]!;
    if (i < unknowns) right[i] = right[i]! + q;
    if (j < unknowns) right[j] = right[j]! - q;
  }
  for (let k = 0; k < core.pumps; k++) {
    const q = core.pumpFlow[k]!;
    right[core.pumpIn[k]!] = right[core.pumpIn[k]!]! + q;
    right[core.pumpOut[k]!] = right[core.pumpOut[k]!]! - q;
  }
  let worst = 0;
  for (let i = 0; i < unknowns; i++) {
    const size = right[i]! < 0 ? -right[i]! : right[i]!;
    if (!(size <= worst)) worst = size;
  }
  return Number.isNaN(worst) ? Number.POSITIVE_INFINITY : worst;
}

/** Worst departure of a link from its law [psi]; NaN comes back as Infinity. */
export function worstDeparturePsi(core: Core): number {
  const { passives, reals, integers, head } = core;
  let worst = 0;
  for (let e = 0; e < passives; e++) {
    const n = e * INTEGERS;
    const r = e * REALS;
    if (integers[n + STATE] === SHUT) continue;
    const excess = head[integers[n + FROM]!]! - head[integers[n + TO]!]! - reals[r + OFFSET]!;
    const check = integers[n + CHECK]!;
    if (integers[n + STATE] === CLOSED) {
      if (check !== 2 && !(excess <= worst)) worst = excess;
      continue;
    }
    const q = reals[r + FLOW]!;
    let drop = passiveDropPsi(reals[r + A]!, reals[r + B]!, q) + LEAST_SLOPE * q;
    const band = integers[n + BAND]!;
    if (band >= 0) drop += bandDropPsi(core.ratedPsi[band]!, core.leastGpm[band]!, core.greatestGpm[band]!, q);
    const out = Math.abs(excess - drop);
    if (!(out <= worst)) worst = out;
    if (check === 1 && q < 0 && -q > worst) worst = -q;
  }
  for (let k = 0; k < core.pumps; k++) {
    if (core.dead[k]) continue;
    const i = core.pumpIn[k]!;
    const o = core.pumpOut[k]!;
    const out = pumpDeparturePsi(core, k, head[i]! - core.elevation[i]!, head[o]! - core.elevation[o]!);
    if (!(out <= worst)) worst = out;
  }
  return Number.isNaN(worst) ? Number.POSITIVE_INFINITY : worst;
}

/** Distance [psi] of a pump's discharge from its law, whichever piece it is on. */
function pumpDeparturePsi(core: Core, k: number, intakePsi: number, dischargePsi: number): number {
  const q = core.pumpFlow[k]!;
  const passed = intakePsi - (core.passK[k]! * Math.abs(q) + LEAST_SLOPE) * q;
  const net = capabilityPsi(
    core.curveFlow,
    core.curveNet,
    core.curveStart[k]!,
    core.curveCount[k]!,
    core.speed[k]!,
    q,
  );
  if (q < -1e-5) return -q;
  // Discharge the pump stands ready to give at this flow, floor aside.
  const pumped = core.idle[k] ? passed : Math.max(passed, Math.min(core.setPsi[k]!, intakePsi + net));
  const over = dischargePsi - pumped;
  // With no flow the discharge may stand above what the pump gives: its check is shut.
  if (q <= 1e-5 && over >= 0) return 0;
  // At its floor a pump gives less than it could, but never less than it passes.
  if (core.floorPsi[k]! > intakePsi - 1e-5 && over < 0) {
    return Math.max(0, passed - dischargePsi, intakePsi < core.floorPsi[k]! - 1e-5 ? dischargePsi - passed : 0);
  }
  // On the wall a flow right to the last digit still leaves pressure to play: count flow instead.
  if (Math.abs(over) > 1e-5 && net < core.curveNet[core.curveStart[k]! + core.curveCount[k]! - 1]! * core.speed[k]! ** 2) {
    return Math.min(Math.abs(over), Math.abs(over) * 1e-4);
  }
  return Math.abs(over);
}
