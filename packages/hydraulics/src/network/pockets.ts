/**
 * Pressures of pockets: parts that closed checks and pumps without flow shut off from everything
 * that holds a pressure. Flows and laws leave their level open; they stand at what their strongest
 * feeder fills them to, so that the same network always shows the same pressures.
 */
import { capabilityPsi } from './capability.ts';
import type { Core } from './core.ts';
import * as tables from './core.ts';

// The engine folds a constant of this file into the code; one of another file it reads each time.
const { CHECK, CLOSED, FLOW, FROM, INTEGERS, NO_FLOW, OFFSET, OPEN, REALS, SHUT, STATE, TO } =
  tables;

/** Flow [gpm] through a check or a pump that ties its two sides together. */
const FLOWS_GPM = 1e-6;

export class Pockets {
  /** States for which `#part` and `#levels` were worked out. */
  readonly #known: Int8Array;
  readonly #part: Int32Array;
  #any = false;

  constructor(core: Core) {
    this.#known = new Int8Array(core.passives + core.pumps).fill(-1);
    this.#part = new Int32Array(core.head.length);
  }

  /** Sets the heads of all pockets of a solved core. */
  fill(core: Core): void {
    if (this.#changed(core)) this.#findParts(core);
    if (this.#any) this.#setLevels(core);
  }

  #changed(core: Core): boolean {
    const known = this.#known;
    let changed = false;
    for (let e = 0; e < core.passives; e++) {
      const state = ties(core, e) ? 1 : 0;
      if (known[e] === state) continue;
      known[e] = state;
      changed = true;
    }
    for (let k = 0; k < core.pumps; k++) {
      const state = core.pumpFlow[k]! > FLOWS_GPM ? core.pumpState[k]! : NO_FLOW;
      if (known[core.passives + k] === state) continue;
      known[core.passives + k] = state;
      changed = true;
    }
    return changed;
  }

  /** Joins nodes that open elements and flowing pumps join; finds parts in which nothing holds a pressure. */
  #findParts(core: Core): void {
    const { integers, unknowns, pumpIn, pumpOut, dry } = core;
    const part = this.#part;
    for (let i = 0; i < part.length; i++) part[i] = i;
    const find = (i: number): number => {
      let at = i;
      while (part[at] !== at) at = part[at]!;
      part[i] = at;
      return at;
    };
    // Fixed nodes come last: of two parts joined, the later stands for both, so a held part is known by its name.
    const join = (i: number, j: number) => {
      const one = find(i);
      const two = find(j);
      part[Math.min(one, two)] = Math.max(one, two);
    };
    const held = core.head.length - 1;
    for (let e = 0; e < core.passives; e++) {
      const n = e * INTEGERS;
      if (ties(core, e)) join(integers[n + FROM]!, integers[n + TO]!);
    }
    for (let k = 0; k < core.pumps; k++) {
      if (core.pumpFlow[k]! <= FLOWS_GPM) continue;
      join(pumpIn[k]!, pumpOut[k]!);
      // A pump at work keeps its law at the level where it stands, not at another.
      if (core.idle[k] === 0) join(pumpOut[k]!, held);
    }
    for (let k = 0; k < core.pumps; k++) {
      // Nor does one that stands between two ends of the same part.
      if (core.idle[k] === 0 && find(pumpIn[k]!) === find(pumpOut[k]!)) join(pumpIn[k]!, held);
    }
    this.#any = false;
    for (let i = 0; i < part.length; i++) part[i] = find(i);
    for (let i = 0; i < unknowns; i++) if (part[i]! < unknowns && !dry[i]) this.#any = true;
  }

  /** Raises every pocket from nothing to what its feeders fill it to, pocket by pocket downstream. */
  #setLevels(core: Core): void {
    const { head, unknowns, integers, reals } = core;
    const part = this.#part;
    const lift = new Float64Array(head.length);
    for (let i = 0; i < unknowns; i++) if (part[i]! < unknowns) lift[part[i]!] = -Infinity;
    const offer = (from: number, to: number, gainPsi: number): boolean => {
      if (part[to]! >= unknowns || part[from] === part[to]) return false;
      const offered = head[from]! + lift[part[from]!]! + gainPsi - head[to]!;
      if (!(offered > lift[part[to]!]! + 1e-9)) return false;
      lift[part[to]!] = offered;
      return true;
    };
    for (let round = 0; round <= unknowns; round++) {
      let moved = false;
      for (let e = 0; e < core.passives; e++) {
        const n = e * INTEGERS;
        if (integers[n + STATE] === SHUT || integers[n + CHECK] === 2) continue;
        const offset = reals[e * REALS + OFFSET]!;
        if (offer(integers[n + FROM]!, integers[n + TO]!, -offset)) moved = true;
      }
      for (let k = 0; k < core.pumps; k++) {
        if (core.dead[k]) continue;
        const i = core.pumpIn[k]!;
        const intakePsi = head[i]! + lift[part[i]!]! - core.elevation[i]!;
        const rise = core.elevation[core.pumpOut[k]!]! - core.elevation[i]!;
        if (offer(i, core.pumpOut[k]!, readyPsi(core, k, intakePsi) - intakePsi + rise)) {
          moved = true;
        }
      }
      if (!moved) break;
    }
    for (let i = 0; i < unknowns; i++) {
      const by = lift[part[i]!]!;
      if (by > -Infinity) head[i] = head[i]! + by;
    }
    for (let e = 0; e < core.passives; e++) {
      const n = e * INTEGERS;
      if (integers[n + STATE] !== OPEN || ties(core, e)) continue;
      // A check that nothing passes has fallen shut where the level beyond it now stands higher.
      const excess =
        head[integers[n + FROM]!]! - head[integers[n + TO]!]! - reals[e * REALS + OFFSET]!;
      if (excess >= -1e-9) continue;
      integers[n + STATE] = CLOSED;
      reals[e * REALS + FLOW] = 0;
    }
  }
}

/** Whether an element makes the heads of its two ends depend on each other. */
function ties(core: Core, e: number): boolean {
  const n = e * INTEGERS;
  if (core.integers[n + STATE] !== OPEN) return false;
  return core.integers[n + CHECK] === 0 || core.reals[e * REALS + FLOW]! > FLOWS_GPM;
}

/** Discharge [psi] at which a pump starts to give water. */
function readyPsi(core: Core, k: number, intakePsi: number): number {
  if (core.idle[k] || !(intakePsi > core.floorPsi[k]! + 1e-5)) return intakePsi;
  const { curveFlow, curveNet, curveStart, curveCount, speed } = core;
  const net = capabilityPsi(curveFlow, curveNet, curveStart[k]!, curveCount[k]!, speed[k]!, 0);
  return Math.max(intakePsi, Math.min(core.setPsi[k]!, intakePsi + net));
}
