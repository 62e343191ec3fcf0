/**
 * What a drill begins from: plain JSON. Made from any plan by `sceneFromPlan`; kept beside the log, it
 * is all that a replay needs. Units: gpm (US), psi gauge, ft, in, gal (US), s.
 */
import type { HoseSize, Plan, PortRef, PumpSetting } from '@plugside/fireground';
import type { DrillStep } from './drill-step.ts';
import type { Fault } from './fault.ts';
import type { ValveId } from './names.ts';
import type { PlayedRole, Posts } from './role.ts';

/** How far the crews have got when the drill begins. */
export type DrillStart = 'hose laid' | 'hose connected' | 'water flowing';

export type ValveKind =
  /** The hydrant's operating nut: feeds every outlet. */
  | 'hydrant stem'
  /** Gate on a side outlet of a hydrant. */
  | 'hydrant gate'
  /** Handle of a hydrant assist valve: 0 hydrant alone, 1 pump suction open. */
  | 'assist handle'
  | 'intake'
  /** Lets air out in front of an intake's valve; behind a discharge's, its drain, it lets pressure off. */
  | 'bleeder'
  | 'discharge'
  | 'tank to pump'
  /** From the pump's discharge back into its tank. */
  | 'tank fill'
  /** Outlet of a wye, a manifold or a standpipe. */
  | 'appliance gate'
  | 'nozzle bale';

export interface SceneValve {
  id: ValveId;
  kind: ValveKind;
  /** For people: "Discharge 1". */
  label: string;
  /** The piece it is part of. */
  pieceId: string;
  /** Where it starts, 0 shut to 1 open. */
  opening: number;
  /** Least time a hand takes from shut to open [s]. */
  travelS: number;
  /** Turns from shut to open, where it is turned. */
  turns?: number;
  /** Bore [in], for what a valve that is part open costs. */
  boreIn: number;
}

/** Where an end starts: on a port, or lying loose by a piece. */
export interface SceneHoseEnd {
  /** Left out: loose. */
  port?: PortRef;
  /** The piece that it lies at: its port's piece when coupled. */
  at: string;
  /** The port that the plan has it on: where it should go. */
  plannedPort: PortRef;
}

export interface SceneHose {
  id: string;
  /** For people: "Hydrant H1 to Attack engine". */
  label: string;
  hose: HoseSize;
  /** Each line [ft]. */
  lengthFt: number;
  /** Like lines side by side. */
  count: number;
  /** Friction coefficient C [psi per 100 ft at 100 gpm]. */
  coefficient: number;
  /** Water it holds, all its lines [gal]. */
  capacityGal: number;
  /** Its operating limit [psi]. */
  limitPsi: number;
  /** Pressure at which it bursts [psi]. */
  burstPsi: number;
  from: SceneHoseEnd;
  to: SceneHoseEnd;
  /** Starts full of water. */
  full: boolean;
  /**
   * Its discharge is gated: what stands behind the gate when its nozzle flows as rated [psi]. Left out: it may
   * stand open, or the scene was stored before this was told.
   */
  gatedPsi?: number;
}

export interface ScenePump {
  rigId: string;
  label: string;
  inGear: boolean;
  /** What its governor or throttle is set to once in gear. */
  setting: Exclude<PumpSetting, { mode: 'idle' }>;
  /** Pump is full of water at the start. */
  primed: boolean;
}

export interface SceneTank {
  rigId: string;
  capacityGal: number;
  gal: number;
}

/** A message that a drill expects. */
export interface ExpectedMessage {
  role: PlayedRole;
  /** Key of a preset (see `radioPresets`). */
  preset: string;
  /** For people. */
  why: string;
}

/** What a drill is judged against; the department's own. Defaults are ours (see `defaultBenchmarks`). */
export interface Benchmarks {
  /** A nozzle counts as supplied from this share of its rated flow [0 … 1]. */
  nozzleSuppliedShare: number;
  /** Water interrupted at an open nozzle, in all [s]. */
  interruptedS: number;
  /** Intake pressure that should be kept [psi], and time under it [s]. */
  intakePsi: number;
  intakeUnderS: number;
  /** Pressure of the main that should be kept [psi], and time under it [s]. */
  mainPsi: number;
  mainUnderS: number;
  /** Time with a hose over its limit [s]. */
  hoseOverS: number;
  /** Swing of pressure at an open nozzle within `swingWindowS` [psi], [s]. */
  nozzleSwingPsi: number;
  swingWindowS: number;
  /** From the order for a boost to the pressure asked for, held [s]; left out: shown, not judged. */
  boostWithinS?: number;
  /** Steps done before one that should come first. */
  stepsOutOfOrder: number;
  wrongConnections: number;
  messagesMissed: number;
  /** Valves shut so fast that a hose could pass its limit; left out: as ours. */
  surgesOverLimit?: number;
  /** Valves opened faster than in the times that follow; left out: as ours. */
  openedFast?: number;
  /** Least time from shut to all the way open, onto empty hose or a pump; left out: as ours. A hydrant's stem [s]. */
  hydrantOpenS?: number;
  /** An assist valve's handle, from hydrant to boost [s]. */
  handleOpenS?: number;
  /** A hydrant's gate, an intake, a discharge of 3½ in or more [s]. */
  largeOpenS?: number;
  /** A smaller discharge, a gate of a wye or manifold [s]. */
  lineOpenS?: number;
  /** Steps that are not done, or undone again, at the end; left out: as ours. */
  stepsUndone?: number;
  /** Acts that hurt people or wreck pumps; left out: as ours. */
  unsafeActs?: number;
  /** From the order for an extra line to its water [s]; left out: as ours. */
  extraLineS?: number;
}

export interface DrillSettings {
  /** Burst pressure over service test pressure [-]. */
  burstMultiple: number;
  /** First-order lag of a governor or throttle [s]. */
  governorLagS: number;
  /** First-order lag of a gauge [s]. */
  gaugeLagS: number;
  /** Noise of a gauge, share of its reading at most [0 … 0.1]. */
  gaugeNoiseShare: number;
  /**
   * Speed of a pressure wave in hose, at most [ft/s]: bounds what a valve shut fast can add. A scene of before
   * there was such a bound has none, and is not judged by it.
   */
  waveFtS?: number;
  /** Which rules it is run by (see `hasRules`); left out: those of before there was such a mark. */
  rules?: number;
}

export interface DrillScene {
  format: 1;
  title: string;
  /** Key of the evolution it drills (see `evolutions`), if any. */
  evolution?: string;
  start: DrillStart;
  /** The whole plan, for drawings, and for what nobody changes in a drill. */
  plan: Plan;
  hoses: SceneHose[];
  valves: SceneValve[];
  pumps: ScenePump[];
  tanks: SceneTank[];
  /** By role: ids of the pieces that it stands at; a role that is left out is nobody's here. */
  posts: Posts;
  /** What to do, in order; empty for a drill without a script. */
  steps: DrillStep[];
  benchmarks: Benchmarks;
  expectedMessages: ExpectedMessage[];
  /** Where a boost is drilled: the engine, and the discharge pressure it should come to [psi]. */
  boost?: { rig: string; pdpPsi: number };
  /** A line that lies ready, for an extra line to be called: its nozzle. */
  spareNozzle?: string;
  /** Faults that wait for their moment. */
  faults: Fault[];
  settings: DrillSettings;
}
