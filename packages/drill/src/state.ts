/**
 * The state of a drill: plain JSON, all that the next step needs beside the scene. Arrays keep the
 * scene's order. Every number that physics writes is rounded to a fixed grid (see `grid.ts`).
 */
import type { PortRef } from '@plugside/fireground';
import type { Fault } from './fault.ts';
import type { ValveId } from './names.ts';
import type { RadioEntry, RadioPresetKey } from './radio.ts';
import type { Role } from './role.ts';
import type { Tally } from './tally-shape.ts';

/** Steps in a second of a drill's own time. */
export const TICKS_PER_S = 20;

export type HosePhase =
  /** Not full: water may stand at either end, air between. */
  | 'filling'
  | 'full'
  /** Full or nearly, with an end loose: it runs out there. */
  | 'open'
  | 'burst';

export interface HoseEndState {
  /** Coupled here; null: loose. */
  port: PortRef | null;
  /** Piece that it lies at. */
  at: string;
  /** Pressure at the port [psi]; 0 where no water presses; what stood in the hose where it is shut in. */
  psi: number;
  /** Into the hose here while it is not full, or runs out elsewhere [gpm ≥ 0]. */
  gpm: number;
  /** Water that stands at this end while the hose fills [gal]; all of it counts on `from` once full. */
  waterGal: number;
}

/** Air that water carries through a full hose. */
export interface CarriedAir {
  /** The hose that it was in at first. */
  of: string;
  /** At the pressure of the open [gal]. */
  gal: number;
  /** Water between it and the end `from` [gal]. */
  atGal: number;
}

export interface HoseState {
  id: string;
  phase: HosePhase;
  from: HoseEndState;
  to: HoseEndState;
  /** Through a full hose, from `from` to `to` [gpm]; 0 else. */
  flowGpm: number;
  /** Pressure of the air that is left [psi]. */
  airPsi: number;
  /** That air at the pressure of the open [gal]. */
  airGal: number;
  /** Air on its way through it while it is full; left out: none. */
  air?: CarriedAir[];
  /** Burst, and put right: a new length lies in from this tick on, once nothing pours. */
  newAtTick?: number;
}

export interface ValveState {
  id: ValveId;
  /** 0 shut to 1 open. */
  opening: number;
  target: number;
  /** Speed of the hand [1/s]. */
  perS: number;
}

export type PumpMode = 'governed' | 'throttled';

export type PumpCondition =
  | 'out of gear'
  | 'pumping'
  | 'at capability'
  | 'passing'
  | 'cavitating'
  | 'no flow'
  | 'lost prime'
  | 'dead';

export interface PumpState {
  rigId: string;
  inGear: boolean;
  mode: PumpMode;
  /** What the operator asked for [psi] and share of full speed. */
  targetPdpPsi: number;
  targetSpeed: number;
  /** Where governor or throttle have got to. */
  pdpPsi: number;
  speed: number;
  condition: PumpCondition;
  primed: boolean;
  /** Time without water, or with it again while priming [s]. */
  dryS: number;
  /** Last tick at which it cavitated; −1: never. */
  cavitatedTick: number;
  /** For how long it has been held in gear with nothing flowing [ticks]; left out: of before it was counted. */
  deadEndTicks?: number;
  /** For how long it has been in gear without its prime [ticks]; left out: of before it was counted. */
  dryTicks?: number;
  /** Air in the pump [gal]: lowers what it can do. */
  airGal: number;
  /** Last tick at which air came to a pump that had much of it; left out: never, or by older rules. */
  airTick?: number;
  /** True pressures and flow. */
  intakePsi: number;
  dischargePsi: number;
  flowGpm: number;
  tankGpm: number;
  reliefGpm: number;
  /** What its gauges show before noise: lagged [psi]. */
  intakeGaugePsi: number;
  dischargeGaugePsi: number;
}

export interface TankState {
  rigId: string;
  gal: number;
}

export interface HydrantState {
  id: string;
  flowGpm: number;
  /** In the main, and behind the stem [psi]. */
  mainPsi: number;
  barrelPsi: number;
}

export interface AssistValveState {
  id: string;
  hydrantPsi: number;
  supplyPsi: number;
  suctionPsi: number;
  dischargePsi: number;
  clapperGpm: number;
  suctionGpm: number;
  dischargeGpm: number;
  clapper: 'open' | 'shut' | 'stuck shut' | 'stuck open';
  /** Where a fault has it stuck. */
  stuck?: 'open' | 'shut';
}

export interface NozzleState {
  id: string;
  flowGpm: number;
  pressurePsi: number;
  /** For how long it has stood well over its rated pressure [ticks]; left out: it does not. */
  overTicks?: number;
}

/** Where every gallon has gone since the start [gal]. */
export interface WaterLedger {
  /** From hydrants and drafts. */
  sourceGal: number;
  /** Through nozzles and sprinklers. */
  nozzleGal: number;
  /** Thrown on the ground: open ends, bursts, bleeders, reliefs, drains. */
  wasteGal: number;
  /** Into tanks less out of them. */
  tankGal: number;
  /** Into hose less out of it. */
  hoseGal: number;
}

export interface DrillState {
  format: 1;
  tick: number;
  /** Entries written to the log so far. */
  seq: number;
  seed: number;
  paused: boolean;
  speed: number;
  hoses: HoseState[];
  valves: ValveState[];
  pumps: PumpState[];
  tanks: TankState[];
  hydrants: HydrantState[];
  assistValves: AssistValveState[];
  nozzles: NozzleState[];
  /** Ports that a hose was taken off: open to the air while their valve is. */
  uncapped: PortRef[];
  faults: Fault[];
  /** The last messages, oldest first. */
  radio: RadioEntry[];
  /** Each preset that a role has said, at its first time. */
  said: { role: Role; preset: RadioPresetKey; tick: number }[];
  water: WaterLedger;
  tally: Tally;
}
