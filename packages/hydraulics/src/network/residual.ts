/** How far an answer is from satisfying every law, worked out afresh from the laws themselves. */
import { capabilityPsi } from './capability.ts';
import * as constants from './constants.ts';
import type { Core } from './core.ts';
import * as tables from './core.ts';
import { bandDropPsi, passiveDropPsi } from './drop.ts';

// The engine folds a constant of this file into the code; one of another file it reads each time.
const { A, B, BAND, CHECK, CLOSED, FLOW, FROM, INTEGERS, OFFSET, REALS, SHUT, STATE, TO } = tables;
const { LEAST_SLOPE } = constants;

export interface Residual {
  /** Worst imbalance at a node [gpm]. */
  massGpm: number;
  /** Worst departure of a link from its law [psi]. */
  energyPsi: number;
}

/** Worst imbalance at a node [gpm]; NaN comes back as Infinity. No allocation. */
export function worstImbalanceGpm(core: Core): number {
  const { reals, integers, unknowns, right } = core;
  right.set(core.demand);
  for (let n = 0, r = 0; n < integers.length; n += INTEGERS, r += REALS) {
    if (integers[n + STATE] === SHUT) continue;
    const q = reals[r + FLOW]!;
    const i = integers[n + FROM]!;
    const j = integers[n + TO]!;
    right[i] = right[i]! + q;
    right[j] = right[j]! - q;
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

/** Greatest flow through one element [gpm], which the last digits of a balance are measured by. */
export function greatestFlowGpm(core: Core): number {
  let most = 0;
  for (let r = FLOW; r < core.reals.length; r += REALS) {
    const size = Math.abs(core.reals[r]!);
    if (size > most) most = size;
  }
  return most;
}

/** Worst departure of a link from its law [psi]; NaN comes back as Infinity. */
export function worstDeparturePsi(core: Core): number {
  const { reals, integers, head } = core;
  let worst = 0;
  for (let n = 0, r = 0; n < integers.length; n += INTEGERS, r += REALS) {
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
    if (band >= 0) {
      drop += bandDropPsi(core.ratedPsi[band]!, core.leastGpm[band]!, core.greatestGpm[band]!, q);
    }
    const out = Math.abs(excess - drop);
    if (!(out <= worst)) worst = out;
    if (check === 1 && q < 0 && -q > worst) worst = -q;
  }
  for (let k = 0; k < core.pumps; k++) {
    if (core.dead[k]) continue;
    const i = core.pumpIn[k]!;
    const o = core.pumpOut[k]!;
    const out = pumpDeparturePsi(
      core,
      k,
      head[i]! - core.elevation[i]!,
      head[o]! - core.elevation[o]!,
    );
    if (!(out <= worst)) worst = out;
  }
  return Number.isNaN(worst) ? Number.POSITIVE_INFINITY : worst;
}

/** Flow [gpm] that counts as none, and by which a flow on a pump's wall may be out. */
const SMALL_GPM = 1e-5;

/** Distance [psi] of a pump's discharge from its law, whichever piece it is on. */
function pumpDeparturePsi(core: Core, k: number, intakePsi: number, dischargePsi: number): number {
  const q = core.pumpFlow[k]!;
  if (q < -SMALL_GPM) return -q;
  const passed = intakePsi - (core.passK[k]! * Math.abs(q) + LEAST_SLOPE) * q;
  const most = givenPsi(core, k, q - SMALL_GPM, intakePsi, passed);
  let least = givenPsi(core, k, q + SMALL_GPM, intakePsi, passed);
  let top = most;
  const floor = core.floorPsi[k]!;
  if (!core.idle[k] && intakePsi <= floor + 1e-5) {
    // At its floor a pump gives less than it could, but never less than it passes; under it, only that.
    least = passed;
    if (intakePsi < floor - 1e-5) top = passed;
  }
  // With no flow the discharge may stand above what the pump gives: its check is shut.
  if (q <= SMALL_GPM) top = Number.POSITIVE_INFINITY;
  return Math.max(0, least - dischargePsi, dischargePsi - top);
}

/** Discharge [psi] a pump stands ready to give at a flow, its floor aside. */
function givenPsi(core: Core, k: number, q: number, intakePsi: number, passedPsi: number): number {
  if (core.idle[k]) return passedPsi;
  const net = capabilityPsi(
    core.curveFlow,
    core.curveNet,
    core.curveStart[k]!,
    core.curveCount[k]!,
    core.speed[k]!,
    q,
  );
  return Math.max(passedPsi, Math.min(core.setPsi[k]!, intakePsi + net));
}
