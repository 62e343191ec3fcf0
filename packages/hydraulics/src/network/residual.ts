/** How far an answer is from satisfying every law, worked out afresh from the laws themselves. */
import { capabilityPsi } from './capability.ts';
import { BAND_SLOPE, LEAST_SLOPE } from './constants.ts';
import { CLOSED, type Core, SHUT } from './core.ts';
import { passiveDropPsi } from './drop.ts';

export interface Residual {
  /** Worst imbalance at a node [gpm]. */
  massGpm: number;
  /** Worst departure of a link from its law [psi]. */
  energyPsi: number;
}

/** @returns the worst imbalance and departure; NaN counts as infinitely bad */
export function residual(core: Core): Residual {
  const { passives, from, to, head, flow, state, a, b, offset, automatic, unknowns, right } = core;
  let energy = 0;
  const balance = right;
  for (let i = 0; i < unknowns; i++) balance[i] = core.demand[i]!;
  for (let e = 0; e < passives; e++) {
    const standing = state[e]!;
    if (standing === SHUT) continue;
    const i = from[e]!;
    const j = to[e]!;
    const excess = head[i]! - head[j]! - offset[e]!;
    if (standing === CLOSED) {
      if (core.checked[e] !== 2 && excess > energy) energy = excess;
      continue;
    }
    const q = flow[e]!;
    if (i < unknowns) balance[i] = balance[i]! + q;
    if (j < unknowns) balance[j] = balance[j]! - q;
    let drop = passiveDropPsi(a[e]!, b[e]!, q) + LEAST_SLOPE * q;
    const band = automatic[e]!;
    if (band >= 0) drop += bandPsi(core, band, q);
    // A check at the point of shutting may have less pressure across it than its law asks.
    const out = excess - drop;
    const size = core.checked[e] === 1 && q < 1e-5 && out < 0 ? 0 : Math.abs(out);
    if (!(size <= energy)) energy = size;
    if (core.checked[e] === 1 && q < -1e-6 && -q > energy) energy = -q;
  }
  for (let k = 0; k < core.pumps; k++) {
    const i = core.pumpIn[k]!;
    const o = core.pumpOut[k]!;
    const q = core.pumpFlow[k]!;
    balance[i] = balance[i]! + q;
    balance[o] = balance[o]! - q;
    if (core.dead[k]) continue;
    const out = pumpDeparturePsi(core, k, q, head[i]! - core.elevation[i]!, head[o]! - core.elevation[o]!);
    if (!(out <= energy)) energy = out;
  }
  let mass = 0;
  for (let i = 0; i < unknowns; i++) {
    const size = Math.abs(balance[i]!);
    if (!(size <= mass)) mass = size;
  }
  return {
    massGpm: Number.isNaN(mass) ? Number.POSITIVE_INFINITY : mass,
    energyPsi: Number.isNaN(energy) ? Number.POSITIVE_INFINITY : energy,
  };
}

function bandPsi(core: Core, band: number, q: number): number {
  const rated = core.ratedPsi[band]!;
  const least = core.leastGpm[band]!;
  const greatest = core.greatestGpm[band]!;
  if (q <= least) return rated * (q / least) * Math.max(q / least, 0.1 / least);
  if (q <= greatest) return rated + BAND_SLOPE * (q - least);
  return rated * (q / greatest) ** 2 + BAND_SLOPE * (greatest - least);
}

/** Distance [psi] of a pump's discharge from its law, whichever piece it is on. */
function pumpDeparturePsi(core: Core, k: number, q: number, intakePsi: number, dischargePsi: number): number {
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
