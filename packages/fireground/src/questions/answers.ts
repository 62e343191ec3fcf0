/** What the questions answer with. Units: gpm, psi gauge, ft, gal, ft/s, lb. */
import type { Origin, Plan, PumpSetting, RigRole } from '../plan/plan.ts';

export type LimitKind =
  | 'main residual'
  | 'booster intake'
  | 'relay intake'
  | 'attack intake'
  | 'draft vacuum'
  | 'hose pressure'
  | 'hilltop pressure'
  | 'pump capability'
  | 'scene pumps'
  | 'nozzle pressure'
  | 'hose velocity';

/** One limit, what it is now, and the room left. */
export interface LimitCheck {
  /** Unique within an answer, for instance `hose pressure:lay`. */
  id: string;
  kind: LimitKind;
  /** The plan's piece that it belongs to (hydrant, rig, line or nozzle id). */
  piece: string;
  /** For people: "Supply hose, 5 in, Hydrant 114 to Engine 3". */
  label: string;
  value: number;
  limit: number;
  /** `min`: value must stay at or above limit. */
  sense: 'min' | 'max';
  unit: 'psi' | 'gpm' | 'ft/s' | 'inHg';
  /** Room left in `unit`; negative: passed. */
  margin: number;
  /** Room left as a share of the limit's scale, for ranking. */
  marginFraction: number;
  /** No more to give here: this limit stops the answer from being greater. */
  binds: boolean;
  passed: boolean;
  /** `hard` limits stop a search; `caution` ones are only told. */
  weight: 'hard' | 'caution';
  origin: Origin;
}

export interface LineState {
  id: string;
  /** All of its like lines together. Negative: from `to` to `from`. */
  flowGpm: number;
  perLineGpm: number;
  inletPsi: number;
  outletPsi: number;
  frictionPsi: number;
  /** Lost to height, gained when negative. */
  elevationPsi: number;
  valveLossPsi: number;
  coefficient: number;
  coefficientOrigin: Origin;
  velocityFtS: number;
  /** Water in all its like lines [gal]. */
  volumeGal: number;
  /** Greatest pressure anywhere along it. */
  greatestPsi: number;
  /** Least pressure at a height between its ends; left out where none is known. */
  hilltopPsi?: number;
  limitPsi: number;
}

export interface HydrantState {
  id: string;
  flowGpm: number;
  /** In the main at the outlet's height. */
  mainPsi: number;
  /** Behind each outlet in use. */
  outlets: { port: string; flowGpm: number; psi: number }[];
  /** Flow at the main's residual limit [gpm]. */
  availableGpm: number;
}

export interface AssistValveState {
  id: string;
  handle: 'hydrant' | 'boost';
  clapper: 'open' | 'shut' | 'stuck shut';
  /** At each port. A port with no hose on it has no entry. */
  hydrantPsi: number;
  supplyPsi: number;
  suctionPsi?: number;
  dischargePsi?: number;
  /** Hydrant to supply through the clapper, hydrant to pump suction, pump discharge to supply. */
  clapperGpm: number;
  suctionGpm: number;
  dischargeGpm: number;
}

export type PumpState =
  | 'holding'
  | 'at capability'
  | 'passing'
  | 'not pumping'
  | 'protecting intake'
  | 'no flow';

export interface RigState {
  id: string;
  role: RigRole;
  setting: PumpSetting;
  intakePsi: number;
  pdpPsi: number;
  netPsi: number;
  flowGpm: number;
  /** Flow by intake port. */
  intakeGpm: Record<string, number>;
  state: PumpState;
  /** Net pressure it could add at this flow [psi]; 0 past the wall. */
  capabilityPsi: number;
  /** Share of capability in use, 0 … 1. */
  capabilityFraction: number;
  /** Flow above the rated capacity: prove it by test. */
  beyondRating: boolean;
  drafting: boolean;
  tankGpm: number;
  /** Minutes of tank at this draw; left out when nothing is drawn. */
  tankMinutes?: number;
  reliefGpm: number;
}

export interface NozzleState {
  id: string;
  flowGpm: number;
  pressurePsi: number;
  ratedGpm: number;
  ratedPsi: number;
  reactionLb: number;
}

export interface ApplianceState {
  id: string;
  kind: string;
  flowGpm: number;
  inletPsi: number;
  outletPsi: number;
}

/** A plan solved with fixed settings. */
export interface SupplyState {
  lines: LineState[];
  hydrants: HydrantState[];
  assistValves: AssistValveState[];
  rigs: RigState[];
  nozzles: NozzleState[];
  appliances: ApplianceState[];
  /** Flow into the scene rig's intakes (its own tank aside) and its intake pressure. */
  sceneGpm: number;
  sceneIntakePsi: number;
  /** How well the equations hold: worst node balance [gpm] and worst link [psi]. */
  residual: { massGpm: number; energyPsi: number };
  iterations: number;
}

/** A caution or a fact that the reader must see. */
export interface Notice {
  level: 'caution' | 'fact';
  /** Piece that it belongs to, where there is one. */
  piece?: string;
  /** `mains`: how the hydrants' mains hang together. */
  about?: 'mains';
  text: string;
}

/** What hangs on whether hydrants share a main. */
export interface MainRange {
  /** What is known of them; tests of them flowing together go before their single ones. */
  basis: 'shared' | 'tested together' | 'not known';
  /** The hydrants that it is about, by id. */
  hydrants: string[];
  /** `flow`: the greatest flow [gpm]; `intake`: pressure at the scene's intake as set [psi]. */
  figure: 'flow' | 'intake';
  /** In the answer. */
  counted: number;
  /** On one main, the least that their tests allow. */
  shared: number;
  /** Each on a main of its own. */
  apart: number;
  /** Between the static heads of those that share a main [psi]. */
  headsApartPsi: number;
  /** ISO date of the test together. */
  testedOn?: string;
}

/** One change to the plan and what it would bring. */
export interface Improvement {
  /** For people: "a 3 in and a 5 in line from the side outlets". */
  change: string;
  /** What it asks of the fireground, the least first. */
  effort: 'hose at the hydrant' | 'hose on the lay' | 'another engine';
  plan: Plan;
  flowGpm: number;
  gainGpm: number;
  /** What binds after it. */
  thenBinding: LimitCheck[];
}

/** Pressure at rest: every nozzle shut, the pumps still set. */
export interface ShutOff {
  /** By line: greatest pressure with no flow, its limit, and the flowing one beside it. */
  lines: { id: string; flowingPsi: number; shutPsi: number; limitPsi: number; passed: boolean }[];
  /** By rig: intake pressure at rest. */
  intakes: { id: string; flowingPsi: number; shutPsi: number; limitPsi: number; passed: boolean }[];
  notices: Notice[];
}

/** Each rig's order: what to set. */
export interface RigOrder {
  id: string;
  setting: PumpSetting;
  pdpPsi: number;
  /** What the operator says on the radio. */
  radio: string;
  /** Lines to gate down, with the loss to take at the valve. */
  gate: { line: string; lossPsi: number; atGpm: number }[];
}

/** "What do I get": the greatest flow within every hard limit. */
export interface MostWater {
  question: 'most water';
  /** `intake`: at the scene rig's intake; `nozzles`: out of the tips. */
  at: 'intake' | 'nozzles';
  flowGpm: number;
  /** The settings that give it, written into a plan. */
  plan: Plan;
  state: SupplyState;
  limits: LimitCheck[];
  binding: LimitCheck[];
  /** Flow is 0 because a limit fails even at rest. */
  noneReason?: string;
  orders: RigOrder[];
  shutOff: ShutOff;
  notices: Notice[];
  /** Worked out by `withMainRange`, where the hydrants' mains matter. */
  mains?: MainRange;
}

/** "How do I set it": each PDP for the demand. */
export interface SettingsFor {
  question: 'settings';
  demandGpm: number;
  possible: boolean;
  /** Not possible: gpm short, and where it fails. */
  shortfallGpm: number;
  failing: LimitCheck[];
  plan: Plan;
  /** State at the demand if possible, else at the greatest flow. */
  state: SupplyState;
  limits: LimitCheck[];
  orders: RigOrder[];
  shutOff: ShutOff;
  notices: Notice[];
  /** Worked out by `withMainRange`, where the hydrants' mains matter. */
  mains?: MainRange;
}

/** "What happens now": settings and valves as they stand. */
export interface Now {
  question: 'now';
  plan: Plan;
  state: SupplyState;
  limits: LimitCheck[];
  orders: RigOrder[];
  shutOff: ShutOff;
  notices: Notice[];
  /** Worked out by `withMainRange`, where the hydrants' mains matter. */
  mains?: MainRange;
}

/** Hydrant pressure alone against boosted, at the greatest flow of each. */
export interface BoostComparison {
  unassisted: MostWater;
  boosted: MostWater | null;
  gainGpm: number;
  /** Lay length [ft] past which boosting is needed for the demand; null: never or always. */
  boostPaysFromFt: number | null;
  boostPays: 'from length' | 'at any length' | 'not for this demand' | 'demand out of reach';
  demandGpm: number;
}

/** Pressure left at the scene's intake against flow. */
export interface SupplyCurve {
  id: string;
  label: string;
  points: { flowGpm: number; intakePsi: number }[];
  /** Greatest flow within every limit. */
  mostGpm: number;
}
