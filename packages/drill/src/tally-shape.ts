/** What is counted as a drill runs, so that judging needs no second run. */

import type { Fault } from './fault.ts';
import type { RadioPresetKey } from './radio.ts';
import type { PlayedRole } from './role.ts';

/** A time during which something stood wrong. */
export interface Moment {
  /** The hose, pump, hydrant or nozzle. */
  piece: string;
  fromTick: number;
  /** Left out: still so. */
  toTick?: number;
  /** The worst value of it [psi, or gpm at a nozzle]. */
  worst: number;
  /** Of a hose: how far over its limit it was told to be, in steps. */
  toldSteps?: number;
}

export type TallyKind =
  | 'nozzle interrupted'
  | 'intake under'
  | 'main under'
  | 'hose over'
  | 'nozzle swing';

export interface TallyLine {
  /** Ticks in all, added over the pieces. */
  ticks: number;
  /** Ticks during which any piece stood so: what is judged. Left out: of before it was counted. */
  anyTicks?: number;
  /** Ticks by piece. */
  byPiece?: Record<string, number>;
  /** The first 100 moments. */
  moments: Moment[];
}

/** A valve that is being shut, in one move or in several. */
export interface ShuttingValve {
  valve: string;
  /** Where it began: moment, opening, and flow in the hose on it [gpm]. */
  fromTick: number;
  fromOpening: number;
  fromGpm: number;
  /** When it comes to rest. */
  endTick: number;
  /** The surge of it has been told, and counted. */
  told?: true;
  counted?: true;
}

export interface TallyNozzle {
  id: string;
  supplied: boolean;
  recentPsi: number[];
  /** For how long it has been short of water, and what of it was told. */
  lost?: { ticks: number; told?: 'weak' | 'none' };
  /** Swings that wait for their window to pass [psi]. */
  swings?: number[];
  /** For so long after an interruption nothing is a swing [ticks]. */
  settleTicks?: number;
}

export interface Tally {
  lines: Record<TallyKind, TallyLine>;
  /** By nozzle of the scene: has had water since it was opened, and pressure within the window [psi]. */
  nozzles: TallyNozzle[];
  /** Tick at which the pressure asked for was reached that was then held; -1: not yet. */
  boostTick: number;
  /** Step id of the evolution → tick at which its condition first held. */
  stepTicks: { step: string; tick: number }[];
  /** Couplings to a port that the plan has another hose on, or none. */
  wrongConnections: { tick: number; hose: string; port: string }[];
  /**
   * Valves shut so fast that the hose that feels it could pass its limit, with what it could come to [psi];
   * the last 100. Left out: none.
   */
  surges?: { tick: number; hose: string; valve: string; psi: number }[];
  /** Valves that have left their seat, since when, and whether that they were opened too fast was told. */
  openings?: { valve: string; fromTick: number; told?: true }[];
  /** Valves opened too fast, and the hose that they let rush; the last 100. */
  openedFast?: { tick: number; valve: string; hose: string }[];
  /** A shutdown that is ordered or called: since when, and which steps stood then. */
  shutDown?: { tick: number; stood: string[] };
  /** Each message at its last time. */
  saidLast?: { role: PlayedRole; preset: RadioPresetKey; tick: number }[];
  /** Hydrants that have run with nothing on, for how long [ticks]. */
  flushed?: { hydrant: string; ticks: number }[];
  /** Valves that shut, or have shut a moment ago. */
  shutting?: ShuttingValve[];
  /** For how long a pump's intake has stood under its benchmark, by rig [ticks]. */
  underTicks?: Record<string, number>;
  /** What there has been occasion to judge. Left out: of before it was counted. */
  occasions?: Occasion[];
  /** The boost that is drilled: since when it has been wanted, and held [ticks]. */
  boost?: { fromTick: number; heldFromTick?: number; overToldTick?: number };
  /** The last 100. */
  unsafe?: UnsafeAct[];
  /** Faults by the time they were in effect; the last 100. */
  faults?: FaultSpan[];
  /** Extra lines that were called, and when their water came. */
  called?: { nozzle: string; tick: number; flowedTick?: number; takenBackTick?: number }[];
  /** What the instructor marked; the last 100. */
  marks?: Mark[];
  /** What the instructor judged otherwise than it was counted. */
  overrules?: { criterion: string; met: boolean; reason: string; tick: number }[];
}

/** What may or may not come about in a drill, and is judged only where it did. */
export type Occasion = TallyKind | 'flow' | 'coupling' | 'step' | 'opening' | 'shutting' | 'worked';

export interface UnsafeAct {
  tick: number;
  /** The hose, valve or pump. */
  piece: string;
  act: UnsafeActKind;
}

export type UnsafeActKind =
  | 'charged hose uncoupled'
  | 'water to a loose end'
  | 'pump dead-ended'
  | 'pump run dry';

export interface FaultSpan {
  fault: Fault;
  fromTick: number;
  /** Left out: still so. */
  toTick?: number;
}

export interface Mark {
  tick: number;
  verdict: 'good' | 'fault';
  text: string;
  /** Whose doing it was; left out: everyone's. */
  about?: PlayedRole;
}
