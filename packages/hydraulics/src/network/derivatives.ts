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
  /** By element: not 0 where it is shut. */
  elementClosed: Uint8Array;
  /** By node, of the answer. */
  head: Float64Array;
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
  const { reals, integers, right, step, pumpIn, pumpOut } = core;
  /** Rate at which an element's flow changes with the parameter while the unknown heads stay. */
  const direct = new Float64Array(core.passives);
  const pumpDirect = new Float64Array(core.pumps);
  right.fill(0);
  if (target.kind === 'demandGpm') right[target.index] = -1;
  if (target.kind === 'fixedPsi') {
    for (let e = 0; e < core.passives; e++) {
      const n = e * INTEGERS;
      if (integers[n + STATE] !== OPEN) continue;
      const g = reals[e * REALS + CONDUCTANCE]!;
      if (integers[n + FROM] === target.index) direct[e] = g;
      if (integers[n + TO] === target.index) direct[e] = direct[e]! - g;
    }
    for (let k = 0; k < core.pumps; k++) {
      if (core.dead[k]) continue;
      if (pumpIn[k] === target.index) pumpDirect[k] = core.pumpRateIn[k]!;
      if (pumpOut[k] === target.index) pumpDirect[k] = pumpDirect[k]! - core.pumpRateOut[k]!;
    }
  }
  if (target.kind === 'pdpPsi' && core.pumpState[target.index] === HOLDING) {
    pumpDirect[target.index] = core.pumpRateOut[target.index]!;
  }
  if (target.kind === 'speedFraction' && core.pumpState[target.index] === AT_CAPABILITY) {
    pumpDirect[target.index] = core.pumpRateIn[target.index]! * netPerSpeed(core, target.index);
  }
  for (let e = 0; e < core.passives; e++) {
    const i = integers[e * INTEGERS + FROM]!;
    const j = integers[e * INTEGERS + TO]!;
    right[i] = right[i]! - direct[e]!;
    right[j] = right[j]! + direct[e]!;
  }
  for (let k = 0; k < core.pumps; k++) {
    right[pumpIn[k]!] = right[pumpIn[k]!]! - pumpDirect[k]!;
    right[pumpOut[k]!] = right[pumpOut[k]!]! + pumpDirect[k]!;
  }
  eliminate(core.elimination, core.values, right, step);

  const head = new Float64Array(frame.nodeCount);
  const flow = new Float64Array(reduction.elements.length);
  core.nodes.forEach((node, at) => {
    head[node] = step[at]!;
    if (target.kind === 'fixedPsi' && at === target.index) head[node] = 1;
  });
  for (let e = 0; e < core.passives; e++) {
    const n = e * INTEGERS;
    if (integers[n + STATE] !== OPEN) continue;
    const across = step[integers[n + FROM]!]! - step[integers[n + TO]!]!;
    const rate = direct[e]! + reals[e * REALS + CONDUCTANCE]! * across;
    flow[core.element[e]!] = core.sense[e]! * rate;
  }
  expandRates(reduction, coefficients, frame, flow, head);

  const flowGpm = new Float64Array(frame.elementOf.length);
  for (let at = 0; at < flowGpm.length; at++) {
    const e = frame.elementOf[at]!;
    if (e >= 0) {
      flowGpm[at] = flow[e]!;
      continue;
    }
    const k = frame.pumpOf[at]!;
    if (core.dead[k]) continue;
    flowGpm[at] =
      pumpDirect[k]! +
      core.pumpRateIn[k]! * step[pumpIn[k]!]! -
      core.pumpRateOut[k]! * step[pumpOut[k]!]!;
  }
  return { flowGpm, pressurePsi: head.slice(0, frame.nodes) };
}

/** Rate of a pump's net pressure with its speed at its present flow [psi]. */
function netPerSpeed(core: Core, k: number): number {
  const at = (speed: number) =>
    capabilityPsi(
      core.curveFlow,
      core.curveNet,
      core.curveStart[k]!,
      core.curveCount[k]!,
      speed,
      core.pumpFlow[k]!,
    );
  const step = 1e-6;
  return (at(core.speed[k]! + step) - at(core.speed[k]! - step)) / (2 * step);
}

function expandRates(
  { program, elements }: Reduction,
  { a, b, offset, share }: Coefficients,
  frame: Frame,
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
      flow[x] = flow[z]! * share[z]!;
      flow[y] = program[at + 4]! * (flow[z]! - flow[x]!);
      continue;
    }
    flow[x] = program[at + 2]! * flow[z]!;
    flow[y] = program[at + 4]! * flow[z]!;
    const { from, to } = elements[z]!;
    if (frame.elementClosed[z] === 0 && a[z] !== Number.POSITIVE_INFINITY) {
      head[node] = head[from]! - passiveSlope(a[x]!, b[x]!, frame.elementFlow[z]!) * flow[z]!;
    } else {
      // With no flow a joint stands with one of its neighbours, and moves with it.
      const fromThere = frame.head[from]! - program[at + 2]! * offset[x]!;
      head[node] = Math.abs(frame.head[node]! - fromThere) < 1e-9 ? head[from]! : head[to]!;
    }
  }
}

/** Slope [psi/gpm] of a passive element's loss at a flow. */
function passiveSlope(a: number, b: number, flowGpm: number): number {
  const size = Math.abs(flowGpm);
  if (size <= LINEAR_BELOW_GPM) {
    return LEAST_SLOPE + a * LINEAR_BELOW_GPM + b * LINEAR_BELOW_GPM ** (MAIN_EXPONENT - 1);
  }
  return (
    LEAST_SLOPE + 2 * a * size + (b === 0 ? 0 : MAIN_EXPONENT * b * size ** (MAIN_EXPONENT - 1))
  );
}
