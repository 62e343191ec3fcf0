/** What a role sees: plain JSON, small enough to send several times a second. */
import type { PortRef, PumpSetting } from '@plugside/fireground';
import type { DrillStep } from './drill-step.ts';
import type { DrillEvent } from './event.ts';
import type { HoseEnd, ValveId } from './names.ts';
import type { RadioEntry } from './radio.ts';
import type { Role } from './role.ts';
import type { ValveKind } from './scene.ts';
import type { DrillState, HosePhase, PumpCondition } from './state.ts';

/** A gauge as it reads: late and a little restless. */
export interface GaugeView {
  /** `B1.intake`, `B1.discharge`, `B1.flow`, `N1.pressure`, …; `A1.discharge3` of a line that is gated. */
  id: string;
  label: string;
  value: number;
  unit: 'psi' | 'gpm' | 'gal';
  /** Reading below which, and above which, it should not stand. */
  least?: number;
  greatest?: number;
  /** Of a gauge below zero: the vacuum that it reads [inHg > 0]. */
  vacuumInHg?: number;
}

export interface ValveView {
  id: ValveId;
  kind: ValveKind;
  label: string;
  pieceId: string;
  opening: number;
  /** Where the hand is taking it. */
  target: number;
  turns?: number;
}

export interface HoseEndView {
  hose: string;
  end: HoseEnd;
  label: string;
  /** Coupled to; null: lying loose here. */
  port: PortRef | null;
  /** Piece it lies at. */
  at: string;
  /** What the hose looks like from here. */
  looks: 'flat' | 'filling' | 'hard' | 'soft' | 'burst';
}

/** A port within reach. */
export interface PortView {
  port: PortRef;
  label: string;
  /** Hose on it; null: free. Something else sits on it: its id. */
  hose: string | null;
  /** Can a hose be coupled here. */
  free: boolean;
}

export interface PumpView {
  rigId: string;
  label: string;
  inGear: boolean;
  /** What is set. */
  setting: PumpSetting;
  /** What an operator hears and feels; `no water` for a pump that runs dry. */
  sounds: 'quiet' | 'pumping' | 'rattling' | 'no water';
  tankGal?: number;
  tankCapacityGal?: number;
}

/** A nozzle as its crew sees and feels it; `hard to hold` over its rated pressure. */
export interface StreamView {
  nozzle: string;
  label: string;
  stream: 'shut' | 'none' | 'weak' | 'full' | 'hard to hold';
}

/** The truth, for instructor and observer; to an observer without faults that are not shown. */
export interface DrillTruth {
  state: Pick<
    DrillState,
    | 'hoses'
    | 'valves'
    | 'pumps'
    | 'tanks'
    | 'hydrants'
    | 'assistValves'
    | 'nozzles'
    | 'faults'
    | 'water'
  >;
  hoses: { id: string; phase: HosePhase; fillShare: number; flowGpm: number }[];
  pumps: { rigId: string; condition: PumpCondition }[];
}

export interface DrillView {
  role: Role;
  tick: number;
  timeS: number;
  paused: boolean;
  speed: number;
  title: string;
  gauges: GaugeView[];
  valves: ValveView[];
  hoseEnds: HoseEndView[];
  ports: PortView[];
  pumps: PumpView[];
  /** To a played role at nozzles: their streams, in place of gauges that no crew has. */
  streams?: StreamView[];
  /** To a played role at hydrants: those whose main stands under the benchmark while water is drawn. */
  mainsUnder?: string[];
  radio: RadioEntry[];
  /** A played role is shown its next step; left out: it is not. */
  guided?: true;
  /** The role's next step, where it was asked for and there is one; left out: wait, or done. */
  next?: DrillStep;
  /** Every step of the role is done. */
  done?: true;
  truth?: DrillTruth;
}

/** An event with its moment, as it is told to those who notice it (see `notices`). */
export interface NoticedEvent extends DrillEvent {
  tick: number;
}
