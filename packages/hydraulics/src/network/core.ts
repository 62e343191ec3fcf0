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

export interface Core {
  /** Unknown heads first, then fixed ones. */
  unknowns: number;
  /** Node of the full network by core index. */
  nodes: Int32Array;
  head: Float64Array;
  demand: Float64Array;
  elevation: Float64Array;

  /** Passive elements: index in the reduction, ends, direction, coefficients' state. */
  passives: number;
  element: Int32Array;
  from: Int32Array;
  to: Int32Array;
  /** +1, or -1 where the element was turned so that its check runs forward. */
  sense: Int8Array;
  checked: Uint8Array;
  automatic: Int32Array;
  a: Float64Array;
  b: Float64Array;
  offset: Float64Array;
  flow: Float64Array;
  state: Uint8Array;
  /** Slots of its four matrix entries, -1 where an end is fixed. */
  slotFF: Int32Array;
  slotTT: Int32Array;
  slotFT: Int32Array;
  slotTF: Int32Array;
  conductance: Float64Array;
  constant: Float64Array;

  /** Automatic nozzles. */
  ratedPsi: Float64Array;
  leastGpm: Float64Array;
  greatestGpm: Float64Array;

  /** Pumps. */
  pumps: number;
  pumpIn: Int32Array;
  pumpOut: Int32Array;
  /** Set pressure, Infinity when throttled [psi gauge]. */
  setPsi: Float64Array;
  floorPsi: Float64Array;
  speed: Float64Array;
  idle: Uint8Array;
  dead: Uint8Array;
  passK: Float64Array;
  curveStart: Int32Array;
  curveCount: Int32Array;
  curveFlow: Float64Array;
  curveNet: Float64Array;
  pumpFlow: Float64Array;
  pumpState: Uint8Array;
  pumpConductance: Float64Array;
  pumpConstant: Float64Array;
  slotII: Int32Array;
  slotOO: Int32Array;
  slotIO: Int32Array;
  slotOI: Int32Array;
  /** Pairs (slot in the outlet's row, slot in the inlet's row), by pump: start and flat list. */
  mergeStart: Int32Array;
  mergeOut: Int32Array;
  mergeIn: Int32Array;
  /** Pairs the other way, for pumps that may protect their intake. */
  yieldStart: Int32Array;
  yieldIn: Int32Array;
  yieldOut: Int32Array;
  /** Passive elements at each pump's outlet, and whether they leave it (+1) or enter (-1). */
  outletStart: Int32Array;
  outletElement: Int32Array;
  outletSense: Int8Array;

  elimination: Elimination;
  values: Float64Array;
  right: Float64Array;
  /** Scratch, one per unknown. */
  before: Float64Array;
  iterations: number;
  settled: boolean;
}

export interface CorePump {
  from: number;
  to: number;
  points: readonly (readonly [number, number])[];
  mayProtect: boolean;
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
  const ordered = [
    ...reduction.coreNodes.filter((n) => !fixed[n]),
    ...reduction.coreNodes.filter((n) => fixed[n]),
  ];
  const unknowns = reduction.coreNodes.filter((n) => !fixed[n]).length;
  const coreOf = new Map(ordered.map((node, at) => [node, at]));
  const m = reduction.core.length;
  const p = pumps.length;

  const from = new Int32Array(m);
  const to = new Int32Array(m);
  const sense = new Int8Array(m);
  const checked = new Uint8Array(m);
  const automatic = new Int32Array(m);
  const entries: [number, number][] = [];
  const around: Set<number>[] = Array.from({ length: unknowns }, () => new Set<number>());
  const couple = (i: number, j: number) => {
    if (i >= unknowns || j >= unknowns || i === j) return;
    entries.push([i, j], [j, i]);
    around[i]!.add(j);
    around[j]!.add(i);
  };
  reduction.core.forEach((id, e) => {
    const element = reduction.elements[id]!;
    const turned = element.check === -1;
    sense[e] = turned ? -1 : 1;
    from[e] = coreOf.get(turned ? element.to : element.from)!;
    to[e] = coreOf.get(turned ? element.from : element.to)!;
    checked[e] = element.check === 0 ? 0 : element.check === 2 ? 2 : 1;
    automatic[e] = element.automatic;
    couple(from[e]!, to[e]!);
  });
  const pumpIn = Int32Array.from(pumps, (pump) => coreOf.get(pump.from)!);
  const pumpOut = Int32Array.from(pumps, (pump) => coreOf.get(pump.to)!);
  for (let k = 0; k < p; k++) couple(pumpIn[k]!, pumpOut[k]!);
  // A holding pump adds its outlet's balance to its intake's row; a protecting one the reverse.
  for (let k = 0; k < p; k++) {
    for (const j of around[pumpOut[k]!]!) entries.push([pumpIn[k]!, j]);
    if (pumps[k]!.mayProtect) for (const j of around[pumpIn[k]!]!) entries.push([pumpOut[k]!, j]);
  }
  const elimination = planElimination(unknowns, entries);
  const { slotOf } = elimination;
  const slot = (i: number, j: number) => (i < unknowns && j < unknowns ? slotOf(i, j) : -1);

  const mergeStart = new Int32Array(p + 1);
  const mergeOut: number[] = [];
  const mergeIn: number[] = [];
  const yieldStart = new Int32Array(p + 1);
  const yieldIn: number[] = [];
  const yieldOut: number[] = [];
  const outletStart = new Int32Array(p + 1);
  const outletElement: number[] = [];
  const outletSense: number[] = [];
  for (let k = 0; k < p; k++) {
    const i = pumpIn[k]!;
    const o = pumpOut[k]!;
    for (const j of [o, ...around[o]!]) {
      mergeOut.push(slot(o, j));
      mergeIn.push(slot(i, j));
    }
    mergeStart[k + 1] = mergeOut.length;
    if (pumps[k]!.mayProtect) {
      for (const j of [i, ...around[i]!]) {
        yieldIn.push(slot(i, j));
        yieldOut.push(slot(o, j));
      }
    }
    yieldStart[k + 1] = yieldIn.length;
    for (let e = 0; e < m; e++) {
      if (from[e] === o) {
        outletElement.push(e);
        outletSense.push(1);
      } else if (to[e] === o) {
        outletElement.push(e);
        outletSense.push(-1);
      }
    }
    outletStart[k + 1] = outletElement.length;
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
    demand: floats(ordered.length),
    elevation: Float64Array.from(ordered, (node) => PSI_PER_FT * elevationFt[node]!),
    passives: m,
    element: Int32Array.from(reduction.core),
    from,
    to,
    sense,
    checked,
    automatic,
    a: floats(m),
    b: floats(m),
    offset: floats(m),
    flow: floats(m),
    state: new Uint8Array(m),
    slotFF: Int32Array.from(from, (i) => slot(i, i)),
    slotTT: Int32Array.from(to, (j) => slot(j, j)),
    slotFT: Int32Array.from(from, (i, e) => slot(i, to[e]!)),
    slotTF: Int32Array.from(to, (j, e) => slot(j, from[e]!)),
    conductance: floats(m),
    constant: floats(m),
    ratedPsi: Float64Array.from(bands, (band) => band.ratedPsi),
    leastGpm: Float64Array.from(bands, (band) => band.leastGpm),
    greatestGpm: Float64Array.from(bands, (band) => band.greatestGpm),
    pumps: p,
    pumpIn,
    pumpOut,
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
    pumpState: new Uint8Array(p),
    pumpConductance: floats(p),
    pumpConstant: floats(p),
    slotII: Int32Array.from(pumpIn, (i) => slot(i, i)),
    slotOO: Int32Array.from(pumpOut, (o) => slot(o, o)),
    slotIO: Int32Array.from(pumpIn, (i, k) => slot(i, pumpOut[k]!)),
    slotOI: Int32Array.from(pumpOut, (o, k) => slot(o, pumpIn[k]!)),
    mergeStart,
    mergeOut: Int32Array.from(mergeOut),
    mergeIn: Int32Array.from(mergeIn),
    yieldStart,
    yieldIn: Int32Array.from(yieldIn),
    yieldOut: Int32Array.from(yieldOut),
    outletStart,
    outletElement: Int32Array.from(outletElement),
    outletSense: Int8Array.from(outletSense),
    elimination,
    values: floats(elimination.slots),
    right: floats(unknowns),
    before: floats(unknowns),
    iterations: 0,
    settled: false,
  };
}
