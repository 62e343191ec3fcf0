/** What choosing a supply answers with. Units: gpm, psi, ft, min. */
import type { Plan } from '../plan/plan.ts';
import type { LimitCheck, Notice, RigOrder } from '../questions/answers.ts';

export type WayKind =
  | 'direct lay'
  | 'dual lines'
  | 'boosted at the hydrant'
  | 'boosted with suction lines'
  | 'reverse lay'
  | 'relay'
  | 'two hydrants'
  | 'draft'
  | 'tender shuttle'
  | 'combined';

/** What one rig does in a way, in the order in which crews do it. */
export interface Duty {
  rigId: string;
  rigName: string;
  /** "lays 900 ft of 5 in from H-114, connects, goes to the fire". */
  duty: string;
}

/** When water is there. */
export interface WaterTimes {
  /** Water from this supply at the attack engine's intake [min], same zero as arrivals. */
  waterAtMin: number;
  /** All of it: every source in use and every pump set [min]; the same where nothing follows. */
  fullAtMin: number;
}

/** How long water takes, by step. */
export interface TimeToWater extends WaterTimes {
  steps: { text: string; startMin: number; endMin: number; rigId?: string }[];
}

/** One arrangement, solved. */
export interface SupplyWay {
  /** Unique within a choice; the same situation gives the same ids. */
  id: string;
  kind: WayKind;
  /** "5 in from H-114, boosted by Engine 3". */
  title: string;
  /** Hydrant and water ids that it takes from. */
  sources: string[];
  duties: Duty[];
  rigsUsed: number;
  /** Hose laid, all lines together [ft], and as sections of the size carried. */
  hoseFt: number;
  hoseSections: number;
  /** As drawn and solved, set to the demand where met, else to its most. Null for a shuttle alone. */
  plan: Plan | null;
  /** Greatest flow within every hard limit [gpm]. */
  mostGpm: number;
  meetsDemand: boolean;
  /** 0 where met. */
  shortfallGpm: number;
  /** mostGpm − demandGpm; negative: short. */
  marginGpm: number;
  /** What stops it from giving more. */
  binding: LimitCheck[];
  /** That limit as a short sentence; for a shuttle what holds it. */
  bindingText: string;
  orders: RigOrder[];
  time: TimeToWater;
  notices: Notice[];
}

/** A way that was looked at and cannot be used at all, and why. */
export interface RefusedWay {
  kind: WayKind;
  title: string;
  /** "The rigs carry 800 ft of 5 in; the lay is 1,150 ft." */
  reason: string;
  /** The limit that refused it, where one did. */
  limit?: LimitCheck;
}

export interface Choice {
  demandGpm: number;
  /** The best first. Those that meet the demand come before those that do not. */
  ways: SupplyWay[];
  refused: RefusedWay[];
  /** In one sentence why the first is first, or what is short if none meets the demand. */
  why: string;
  notices: Notice[];
}

/** What the ranking weighs, the weightiest first. */
export type Criterion = 'meets demand' | 'time to water' | 'rigs used' | 'hose' | 'margin';

/** One thing that goes wrong with a chosen way, and what is left. */
export interface Mishap {
  /** "Booster stops pumping". */
  what: string;
  /** What the scene still gets with the settings as they stand [gpm]. */
  flowGpm: number;
  /** And after the pumps are set anew. */
  resetGpm: number;
  /** The demand is met, as the pumps stand or set anew. */
  stillMeets: boolean;
  /** What happens and what to do, in a sentence. */
  text: string;
  orders: RigOrder[];
  /** Limits passed with the settings as they stand. */
  passed: LimitCheck[];
}

/** When a second engine at the hydrant pays, for a hydrant and hose. */
export interface WhenToBoost {
  demandGpm: number;
  points: { lengthFt: number; unassistedGpm: number; boostedGpm: number }[];
  /** Longest lay that still meets the demand [ft]; null: none does, Infinity is never used. */
  unassistedToFt: number | null;
  boostedToFt: number | null;
  /** The rule that a crew can remember. */
  rule: string;
}
