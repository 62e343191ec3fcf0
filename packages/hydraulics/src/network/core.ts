/**
 * The collapsed network on flat arrays: everything the Newton loop touches, allocated once.
 * Heads are psi of water column, `pressure + 0.434·elevation`, so that elevation drops out of the links.
 */
import { PSI_PER_FT } from './constants.ts';
import { type Elimination, planElimination } from './elimination.ts';
import type { Reduction } from './reduction.ts';

/** What a pump is doing. */
export const HOLDING = 0;
export const AT_CAPABILITY = 1;
export const PASSING = 2;
export const NO_FLOW = 3;
export const PROTECTING = 4;

/** What a passive element is doing. */
export const OPEN = 1;
export const CLOSED = 0;
export const SHUT = 2;

/**
 * Passive elements lie in two flat tables, so that the hot loop walks straight through memory.
 * Columns of the numbers' table; PREDICTED is the flow its tangent gives at the present heads.
 */
export const A = 0;
export const B = 1;
export const OFFSET = 2;
export const FLOW = 3;
export const CONDUCTANCE = 4;
export const PREDICTED = 5;
export const REALS = 6;

/**
 * Columns of the integers' table: ends, and where in the matrix each end's column takes the element's
 * conductance (the other end's row; the column's own excess where the other end is fixed).
 */
export const FROM = 0;
export const TO = 1;
export const SLOT_FROM = 2;
export const SLOT_TO = 3;
export const BAND = 4;
export const CHECK = 5;
export const STATE = 6;
export const INTEGERS = 7;

export interface Core {
  /** Unknown heads first, then fixed ones. */
  unknowns: number;
  /** Node of the full network by core index. */
  nodes: Int32Array;
  head: Float64Array;
  /** What the last solve changed the heads by; 0 at fixed ones. */
  step: Float64Array;
  demand: Float64Array;
  /** 0.434·elevation. */
  elevation: Float64Array;
  /** By unknown: 1 where shut valves leave it with no water. */
  dry: Uint8Array;

  passives: number;
  /** Element of the reduction by passive; +1, or -1 where it was turned so that its check runs forward. */
  element: Int32Array;
  sense: Int8Array;
  reals: Float64Array;
  integers: Int32Array;

  /** Automatic nozzles. */
  ratedPsi: Float64Array;
  leastGpm: Float64Array;
  greatestGpm: Float64Array;

  pumps: number;
  pumpIn: Int32Array;
  pumpOut: Int32Array;
  slotIn: Int32Array;
  slotOut: Int32Array;
  /** Set pressure, Infinity when throttled [psi gauge]. */
  setPsi: Float64Array;
  floorPsi: Float64Array;
  speed: Float64Array;
  idle: Uint8Array;
  /** Shut, or with a dry intake. */
  dead: Uint8Array;
  passK: Float64Array;
  curveStart: Int32Array;
  curveCount: Int32Array;
  curveFlow: Float64Array;
  curveNet: Float64Array;
  pumpFlow: Float64Array;
  pumpState: Uint8Array;
  pumpPredicted: Float64Array;
  /** Rate of a pump's flow with its intake's head, and against its outlet's. */
  pumpRateIn: Float64Array;
  pumpRateOut: Float64Array;

  elimination: Elimination;
  values: Float64Array;
  /** Balances by node; those of fixed nodes are not used. */
  right: Float64Array;
  /** Heads at the start of a step in time, for the slow method. */
  before: Float64Array;
  iterations: number;
}

export interface CorePump {
  from: number;
  to: number;
  points: readonly (readonly [number, number])[];
}

export interface AutomaticBand {
  ratedPsi: number;
  leastGpm: number;
  greatestGpm: number;
}

/**
 * @param reduction the collapsed network
 * @param fixed by node: 1 where the pressure is fixed
 * @param elevationFt by node
 */
export function buildCore(
  reduction: Reduction,
  fixed: Uint8Array,
  elevationFt: Float64Array,
  pumps: readonly CorePump[],
  bands: readonly AutomaticBand[],
): Core {
  const free = reduction.coreNodes.filter((node) => !fixed[node]);
  const ordered = [...free, ...reduction.coreNodes.filter((node) => fixed[node])];
  const unknowns = free.length;
  const coreOf = new Int32Array(fixed.length).fill(-1);
  ordered.forEach((node, at) => {
    coreOf[node] = at;
  });
  const m = reduction.core.length;
  const p = pumps.length;

  const integers = new Int32Array(m * INTEGERS);
  const sense = new Int8Array(m);
  const pairs: [number, number][] = [];
  const couple = (i: number, j: number) => {
    if (i < unknowns && j < unknowns && i !== j) pairs.push([i, j]);
  };
  reduction.core.forEach((id, e) => {
    const element = reduction.elements[id]!;
    const turned = element.check === -1;
    sense[e] = turned ? -1 : 1;
    const from = coreOf[turned ? element.to : element.from]!;
    const to = coreOf[turned ? element.from : element.to]!;
    const at = e * INTEGERS;
    integers[at + FROM] = from;
    integers[at + TO] = to;
    integers[at + BAND] = element.automatic;
    integers[at + CHECK] = element.check === 0 ? 0 : element.check === 2 ? 2 : 1;
    integers[at + STATE] = OPEN;
    couple(from, to);
  });
  const pumpIn = Int32Array.from(pumps, (pump) => coreOf[pump.from]!);
  const pumpOut = Int32Array.from(pumps, (pump) => coreOf[pump.to]!);
  for (let k = 0; k < p; k++) couple(pumpIn[k]!, pumpOut[k]!);

  const elimination = planElimination(unknowns, pairs);
  const spare = elimination.slots - 1;
  /** Where the column of `one` takes the conductance of a link to `other`. */
  const slot = (one: number, other: number) => {
    if (one >= unknowns) return spare;
    return other < unknowns ? elimination.slotOf(other, one) : one;
  };
  for (let at = 0; at < integers.length; at += INTEGERS) {
    integers[at + SLOT_FROM] = slot(integers[at + FROM]!, integers[at + TO]!);
    integers[at + SLOT_TO] = slot(integers[at + TO]!, integers[at + FROM]!);
  }
  const curveStart = new Int32Array(p);
  const curveFlow: number[] = [];
  const curveNet: number[] = [];
  pumps.forEach((pump, k) => {
    curveStart[k] = curveFlow.length;
    for (const [flow, net] of pump.points) {
      curveFlow.push(flow);
      curveNet.push(net);
    }
  });
  const floats = (size: number) => new Float64Array(size);
  return {
    unknowns,
    nodes: Int32Array.from(ordered),
    head: floats(ordered.length),
    step: floats(ordered.length),
    demand: floats(ordered.length),
    elevation: Float64Array.from(ordered, (node) => PSI_PER_FT * elevationFt[node]!),
    dry: new Uint8Array(unknowns),
    passives: m,
    element: Int32Array.from(reduction.core),
    sense,
    reals: floats(m * REALS),
    integers,
    ratedPsi: Float64Array.from(bands, (band) => band.ratedPsi),
    leastGpm: Float64Array.from(bands, (band) => band.leastGpm),
    greatestGpm: Float64Array.from(bands, (band) => band.greatestGpm),
    pumps: p,
    pumpIn,
    pumpOut,
    slotIn: Int32Array.from(pumpIn, (i, k) => slot(i, pumpOut[k]!)),
    slotOut: Int32Array.from(pumpOut, (o, k) => slot(o, pumpIn[k]!)),
    setPsi: floats(p),
    floorPsi: floats(p).fill(Number.NEGATIVE_INFINITY),
    speed: floats(p).fill(1),
    idle: new Uint8Array(p),
    dead: new Uint8Array(p),
    passK: floats(p),
    curveStart,
    curveCount: Int32Array.from(pumps, (pump) => pump.points.length),
    curveFlow: Float64Array.from(curveFlow),
    curveNet: Float64Array.from(curveNet),
    pumpFlow: floats(p),
    pumpState: new Uint8Array(p).fill(NO_FLOW),
    pumpPredicted: floats(p),
    pumpRateIn: floats(p),
    pumpRateOut: floats(p),
    elimination,
    values: floats(elimination.slots),
    right: floats(ordered.length),
    before: floats(unknowns),
    iterations: 0,
  };
}
