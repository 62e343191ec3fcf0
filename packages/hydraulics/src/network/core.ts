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
 * Columns of the numbers' table:
 */
export const A = 0;
export const B = 1;
export const OFFSET = 2;
export const FLOW = 3;
export const CONDUCTANCE = 4;
export const CONSTANT = 5;
export const REALS = 6;

/** Columns of the integers' table: ends, the rows their balances stand in, the four matrix slots, and the rest. */
export const FROM = 0;
export const TO = 1;
export const ROW_FROM = 2;
export const ROW_TO = 3;
export const SLOT_FF = 4;
export const SLOT_TT = 5;
export const SLOT_FT = 6;
export const SLOT_TF = 7;
export const BAND = 8;
export const CHECK = 9;
export const STATE = 10;
export const INTEGERS = 11;

export interface Core {
  /** Unknown heads first, then fixed ones. */
  unknowns: number;
  /** Node of the full network by core index. */
  nodes: Int32Array;
  head: Float64Array;
  demand: Float64Array;
  /** 0.434·elevation. */
  elevation: Float64Array;
  /**
   * Row in which a node's balance stands: its own, but for the outlet of a pump that holds its
   * discharge (the intake's row, so that the pump's flow cancels) and the intake of one that protects it.
   */
  row: Int32Array;

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
  pumpConductance: Float64Array;
  pumpConstant: Float64Array;
  slotII: Int32Array;
  slotOO: Int32Array;
  slotIO: Int32Array;
  slotOI: Int32Array;
  /** Passives at a pump's outlet with their sense (+1 leaving it), and passives at its intake. */
  outletStart: Int32Array;
  outletPassive: Int32Array;
  outletSense: Int8Array;
  intakeStart: Int32Array;
  intakePassive: Int32Array;

  elimination: Elimination;
  /** One slot and one row more than needed: what belongs to fixed heads is dropped there. */
  values: Float64Array;
  right: Float64Array;
  /** Heads at the start of a step in time, for the slow method. */
  before: Float64Array;
  iterations: number;
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

  const integers = new Int32Array(m * INTEGERS);
  const sense = new Int8Array(m);
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
    const from = coreOf.get(turned ? element.to : element.from)!;
    const to = coreOf.get(turned ? element.from : element.to)!;
    integers[e * INTEGERS + FROM] = from;
    integers[e * INTEGERS + TO] = to;
    integers[e * INTEGERS + BAND] = element.automatic;
    integers[e * INTEGERS + CHECK] = element.check === 0 ? 0 : element.check === 2 ? 2 : 1;
    couple(from, to);
  });
  const pumpIn = Int32Array.from(pumps, (pump) => coreOf.get(pump.from)!);
  const pumpOut = Int32Array.from(pumps, (pump) => coreOf.get(pump.to)!);
  for (let k = 0; k < p; k++) couple(pumpIn[k]!, pumpOut[k]!);
  // A holding pump's outlet is balanced in its intake's row; a protecting one's intake in its outlet's.
  for (let k = 0; k < p; k++) {
    for (const j of around[pumpOut[k]!]!) entries.push([pumpIn[k]!, j]);
    if (pumps[k]!.mayProtect) for (const j of around[pumpIn[k]!]!) entries.push([pumpOut[k]!, j]);
  }
  const elimination = planElimination(unknowns, entries);
  const { slotOf } = elimination;

  const outletStart = new Int32Array(p + 1);
  const outletPassive: number[] = [];
  const outletSense: number[] = [];
  const intakeStart = new Int32Array(p + 1);
  const intakePassive: number[] = [];
  for (let k = 0; k < p; k++) {
    for (let e = 0; e < m; e++) {
      const from = integers[e * INTEGERS + FROM]!;
      const to = integers[e * INTEGERS + TO]!;
      if (from === pumpOut[k] || to === pumpOut[k]) {
        outletPassive.push(e);
        outletSense.push(from === pumpOut[k] ? 1 : -1);
      }
      if (from === pumpIn[k] || to === pumpIn[k]) intakePassive.push(e);
    }
    outletStart[k + 1] = outletPassive.length;
    intakeStart[k + 1] = intakePassive.length;
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
  const core: Core = {
    unknowns,
    nodes: Int32Array.from(ordered),
    head: floats(ordered.length),
    demand: floats(ordered.length),
    elevation: Float64Array.from(ordered, (node) => PSI_PER_FT * elevationFt[node]!),
    row: Int32Array.from(ordered, (_, i) => i),
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
    pumpConductance: floats(p),
    pumpConstant: floats(p),
    slotII: Int32Array.from(pumpIn, (i) => slotOf(i, i)),
    slotOO: Int32Array.from(pumpOut, (o) => slotOf(o, o)),
    slotIO: Int32Array.from(pumpIn, (i, k) => slotOf(i, pumpOut[k]!)),
    slotOI: Int32Array.from(pumpOut, (o, k) => slotOf(o, pumpIn[k]!)),
    outletStart,
    outletPassive: Int32Array.from(outletPassive),
    outletSense: Int8Array.from(outletSense),
    intakeStart,
    intakePassive: Int32Array.from(intakePassive),
    elimination,
    values: floats(elimination.slots + 1),
    right: floats(unknowns + 1),
    before: floats(unknowns),
    iterations: 0,
  };
  for (let e = 0; e < m; e++) placeInMatrix(core, e);
  return core;
}

/** Works out the rows and slots of one passive element from its ends and the rows their balances stand in. */
function placeInMatrix(core: Core, e: number): void {
  const { integers, unknowns, row, elimination } = core;
  const at = e * INTEGERS;
  const from = integers[at + FROM]!;
  const to = integers[at + TO]!;
  const spare = elimination.slots;
  const rowFrom = from < unknowns ? row[from]! : unknowns;
  const rowTo = to < unknowns ? row[to]! : unknowns;
  const slot = (i: number, j: number) => (i < unknowns && j < unknowns ? elimination.slotOf(i, j) : spare);
  integers[at + ROW_FROM] = rowFrom;
  integers[at + ROW_TO] = rowTo;
  integers[at + SLOT_FF] = slot(rowFrom, from);
  integers[at + SLOT_TT] = slot(rowTo, to);
  integers[at + SLOT_FT] = slot(rowFrom, to);
  integers[at + SLOT_TF] = slot(rowTo, from);
}

/** Puts a pump on a piece of its law, and the balances of its ends in the rows that the piece needs. */
export function setPumpState(core: Core, k: number, next: number): void {
  const was = core.pumpState[k]!;
  core.pumpState[k] = next;
  if (was === next) return;
  const { pumpIn, pumpOut, row } = core;
  const i = pumpIn[k]!;
  const o = pumpOut[k]!;
  const rowO = next === HOLDING ? i : o;
  const rowI = next === PROTECTING ? o : i;
  if (row[o] !== rowO) {
    row[o] = rowO;
    for (let s = core.outletStart[k]!; s < core.outletStart[k + 1]!; s++) placeInMatrix(core, core.outletPassive[s]!);
  }
  if (row[i] !== rowI) {
    row[i] = rowI;
    for (let s = core.intakeStart[k]!; s < core.intakeStart[k + 1]!; s++) placeInMatrix(core, core.intakePassive[s]!);
  }
}
