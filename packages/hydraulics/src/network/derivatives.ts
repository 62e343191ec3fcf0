/** Rates of change of an answer: one more solve with the tangent system. */
import { capabilityPsi } from './capability.ts';
import { LEAST_SLOPE, LINEAR_BELOW_GPM, MAIN_EXPONENT } from './constants.ts';
import {
  AT_CAPABILITY,
  CONDUCTANCE,
  type Core,
  FROM,
  HOLDING,
  INTEGERS,
  OPEN,
  PROTECTING,
  REALS,
  STATE,
  TO,
} from './core.ts';
import { eliminate } from './elimination.ts';
import { writeTangents } from './newton.ts';
import { type Coefficients, DEAD_END, PARALLEL, type Reduction, STRIDE } from './reduction.ts';

export type Parameter =
  | { kind: 'pdpPsi'; pump: string }
  | { kind: 'speedFraction'; pump: string }
  | { kind: 'fixedPsi'; node: string }
  | { kind: 'demandGpm'; node: string };

export interface Derivatives {
  /** By link [gpm per unit of the parameter]. */
  flowGpm: Float64Array;
  /** By node [psi per unit of the parameter]. */
  pressurePsi: Float64Array;
}

interface Frame {
  elementOf: Int32Array;
  pumpOf: Int32Array;
  nodes: number;
  nodeCount: number;
  elementFlow: Float64Array;
}

/** @param target core index of the pump or node */
export function derive(
  core: Core,
  reduction: Reduction,
  coefficients: Coefficients,
  target: { kind: Parameter['kind']; index: number },
  frame: Frame,
): Derivatives {
  writeTangents(core);
  const { unknowns, values, reals, integers } = core;
  const right = new Float64Array(unknowns + 1);
  const source = new Float64Array(unknowns);
  if (target.kind === 'demandGpm') {
    if (target.index < unknowns) source[target.index] = -1;
  } else if (target.kind === 'fixedPsi') {
    for (let e = 0; e < core.passives; e++) {
      if (integers[e * INTEGERS + STATE] !== OPEN) continue;
      const i = integers[e * INTEGERS + FROM]!;
      const j = integers[e * INTEGERS + TO]!;
      const g = reals[e * REALS + CONDUCTANCE]!;
      if (i === target.index && j < unknowns) source[j] = source[j]! + g;
      if (j === target.index && i < unknowns) source[i] = source[i]! + g;
    }
  } else if (target.kind === 'speedFraction' && core.pumpState[target.index] === AT_CAPABILITY) {
    const k = target.index;
    const at = (speed: number) =>
      capabilityPsi(core.curveFlow, core.curveNet, core.curveStart[k]!, core.curveCount[k]!, speed, core.pumpFlow[k]!);
    const step = 1e-6;
    const perSpeed = (at(core.speed[k]! + step) - at(core.speed[k]! - step)) / (2 * step);
    const direct = core.pumpConductance[k]! * perSpeed;
    source[core.pumpIn[k]!] = source[core.pumpIn[k]!]! - direct;
    source[core.pumpOut[k]!] = source[core.pumpOut[k]!]! + direct;
  }
  right.set(source);
  for (let k = 0; k < core.pumps; k++) {
    const i = core.pumpIn[k]!;
    const o = core.pumpOut[k]!;
    if (core.pumpState[k] === HOLDING) {
      right[i] = right[i]! + right[o]!;
      right[o] = target.kind === 'pdpPsi' && target.index === k ? 1 : 0;
    } else if (core.pumpState[k] === PROTECTING) {
      right[o] = right[o]! + right[i]!;
      right[i] = 0;
    }
  }
  eliminate(core.elimination, values, right);

  const head = new Float64Array(frame.nodeCount);
  const flow = new Float64Array(reduction.elements.length);
  const rate = (coreNode: number) =>
    coreNode < unknowns ? right[coreNode]! : target.kind === 'fixedPsi' && coreNode === target.index ? 1 : 0;
  core.nodes.forEach((node, at) => {
    head[node] = rate(at);
  });
  for (let e = 0; e < core.passives; e++) {
    const n = e * INTEGERS;
    if (integers[n + STATE] !== OPEN) continue;
    const across = rate(integers[n + FROM]!) - rate(integers[n + TO]!);
    flow[core.element[e]!] = core.sense[e]! * reals[e * REALS + CONDUCTANCE]! * across;
  }
  expandRates(reduction, coefficients, frame.elementFlow, flow, head);

  const flowGpm = new Float64Array(frame.elementOf.length);
  for (let at = 0; at < flowGpm.length; at++) {
    const e = frame.elementOf[at]!;
    if (e >= 0) {
      flowGpm[at] = flow[e]!;
      continue;
    }
    const k = frame.pumpOf[at]!;
    const o = core.pumpOut[k]!;
    let q = target.kind === 'demandGpm' && target.index === o ? 1 : 0;
    for (let s = core.outletStart[k]!; s < core.outletStart[k + 1]!; s++) {
      const out = core.outletPassive[s]!;
      q += core.outletSense[s]! * core.sense[out]! * flow[core.element[out]!]!;
    }
    flowGpm[at] = q;
  }
  return { flowGpm, pressurePsi: head.slice(0, frame.nodes) };
}

function expandRates(
  { program, elements }: Reduction,
  { a, b }: Coefficients,
  flowGpm: Float64Array,
  flow: Float64Array,
  head: Float64Array,
): void {
  for (let at = program.length - STRIDE; at >= 0; at -= STRIDE) {
    const kind = program[at]!;
    const x = program[at + 1]!;
    const node = program[at + 6]!;
    if (kind === DEAD_END) {
      const element = elements[x]!;
      head[node] = head[element.from === node ? element.to : element.from]!;
      continue;
    }
    const y = program[at + 3]!;
    const z = program[at + 5]!;
    if (kind === PARALLEL) {
      const share = 1 / (1 + Math.sqrt(a[x]! / a[y]!));
      flow[x] = flow[z]! * (Number.isNaN(share) ? 0.5 : share);
      flow[y] = program[at + 4]! * (flow[z]! - flow[x]!);
      continue;
    }
    flow[x] = program[at + 2]! * flow[z]!;
    flow[y] = program[at + 4]! * flow[z]!;
    const { from, to } = elements[z]!;
    head[node] = Number.isFinite(a[x]!)
      ? head[from]! - passiveSlope(a[x]!, b[x]!, flowGpm[z]!) * flow[z]!
      : head[to]!;
  }
}

/** Slope [psi/gpm] of a passive element's loss at a flow. */
export function passiveSlope(a: number, b: number, flowGpm: number): number {
  const size = Math.max(Math.abs(flowGpm), LINEAR_BELOW_GPM);
  return LEAST_SLOPE + 2 * a * size + (b === 0 ? 0 : MAIN_EXPONENT * b * size ** (MAIN_EXPONENT - 1));
}
