/** What choosing a supply answers with. Units: gpm, psi, ft, min. */
import type { HoseSections } from '../catalogue/hose-sections.ts';
import type { HoseSize, Origin, Plan } from '../plan/plan.ts';
import type { LimitCheck, MainRange, Notice, RigOrder } from '../questions/answers.ts';

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
  /** The attack engine is at the fire [min]: its own lay, if it has one, is done. No line flows before. */
  atFireMin?: number;
}

/** What one source brings in a way, and when. */
export interface SourcePart {
  /** Hydrant, water or fill place id; one of the way's `sources`. */
  sourceId: string;
  sourceName: string;
  kind: 'hydrant' | 'open water' | 'portable tank';
  /** Rig ids that pump for it, from the water on. */
  pumps: string[];
  /** Its first pump stands on an assist valve. */
  valve: boolean;
  /** Of each line at the water, the larger first; empty for a portable tank beside the attack engine. */
  hose: HoseSize[];
  /** Of each line from the hydrant's side outlets into its pump, besides the main one. */
  suction: HoseSize[];
  /** From the water to the fire along the streets [ft]. */
  lengthFt: number;
  /** Hose of its longest line: whole sections, as laid and as solved [ft]. */
  laidFt?: number;
  /** The same as sections, where they are of one length. */
  laidSections?: HoseSections;
  /** Its part of the flow that the way is set to [gpm]. */
  setGpm: number;
  /** Its part of the way's most [gpm]. */
  mostGpm: number;
  /** What it gives until its pump is set, on hydrant pressure alone [gpm]; 0 where nothing comes before. */
  startGpm: number;
  /** Its first water at the attack engine's intake [min]. */
  waterAtMin: number;
  /** All of it [min]. */
  fullAtMin: number;
}

/** An engine at the fire that lines of a way end at, and what its pump puts out. */
export interface FireEngine {
  rigId: string;
  rigName: string;
  /** Sources whose lines it takes. */
  sources: string[];
  /** The most that its pump puts out at the pressure that its lines need [gpm]. */
  pumpMostGpm: number;
  /** That pressure, at its discharge [psi]. */
  pdpPsi: number;
  /** Its part of the way's most [gpm]. */
  mostGpm: number;
  /** Its pump as a limit, with what is left of it there. */
  limit: LimitCheck;
}

/** A figure with where it comes from. */
export interface Given {
  value: number;
  origin: Origin;
}

/** What a pump can do at the open water of a way, and how long the water lasts. */
export interface DraftPart {
  sourceId: string;
  sourceName: string;
  rigId: string;
  rigName: string;
  /** Pump above the water [ft]. */
  liftFt: Given;
  /** Above the sea [ft]. */
  altitudeFt: Given;
  /** [°F] */
  waterTempF: Given;
  suction: { hose: HoseSize; lengthFt: number; count: number; origin: Origin };
  /** Pressure that its lay asks of it [psi]. */
  dischargePsi: number;
  /** The most that its pump gives there at that pressure, whatever the lay takes [gpm]. */
  pumpMostGpm: number;
  /** What stops it there, in a sentence. */
  bindingText: string;
  /** Vacuum at its intake at the flow that it is set to, and the deepest to count on here [inHg]. */
  vacuumInHg: number;
  vacuumLimitInHg: number;
  /** Published share of rated capacity at this lift, as a flow [gpm]; null past 20 ft. */
  ruleGpm: number | null;
  /** What can be drawn in all [gal]; left out: not known. */
  usableGal?: number;
  /** How long that lasts at the flow that it is set to [min]; left out with `usableGal`. */
  lastsMin?: number;
  /** How a rig gets to it, as its record has it. */
  access?: string;
}

/** One tender's round in a way's shuttle. Minutes, gallons, gpm. */
export interface TenderRound {
  rigId: string;
  rigName: string;
  tankGal: number;
  /** Dropped on each round. */
  loadGal: number;
  /** Empty to the fill place, handling and filling there, loaded back, handling and dumping. */
  outMin: number;
  fillMin: number;
  backMin: number;
  dumpMin: number;
  roundTripMin: number;
  /** Kept up by it alone, none waiting. */
  gpm: number;
  /** At the portable tank with its first load. */
  firstAtMin: number;
}

/** A way's tender shuttle, and how its portable tank fares. */
export interface ShuttlePart {
  place: {
    id: string;
    name: string;
    kind: 'hydrant' | 'open water';
    /** One way [mi]. */
    roadMi: number;
    /** Into a tender [gpm]. */
    fillGpm: number;
    /** The engine that drafts there and fills; left out at a hydrant. */
    fillingRig?: { rigId: string; rigName: string };
    access?: string;
  };
  tenders: TenderRound[];
  /** Kept up [gpm]. */
  gpm: number;
  limitedBy: 'tenders' | 'fill site' | 'dump site';
  /** Portable tank or tanks joined [gal]. */
  tankGal: Given;
  /** Drawn from it: what the way needs of it, no more than is kept up [gpm]. */
  drawGpm: number;
  /** From when [min], same zero as arrivals. */
  drawFromMin: number;
  /** Corners of the portable tank's level: straight lines between. */
  level: { atMin: number; gal: number }[];
  /** First time that it could not give the draw; null where it always could. */
  runsDryAtMin: number | null;
  /** The pump that drafts from it. `pdpPsi`: what its line to the attack engine asks [psi]; null for the attack engine itself, whose lines set it. */
  pump: { rigId: string; rigName: string; pdpPsi: number | null; text: string };
  /** How the portable tank fares, in a sentence. */
  text: string;
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
  /** Hose laid, all lines together, whole sections [ft], and as sections of the size carried. */
  hoseFt: number;
  hoseSections: number;
  /** As drawn and solved, set to the demand where met, else to its most. Null for a shuttle alone. */
  plan: Plan | null;
  /** Greatest flow within every hard limit [gpm]. */
  mostGpm: number;
  meetsDemand: boolean;
  /** Meets the demand, with less to spare than is wanted; hydrants that may share a main counted as if they did. */
  littleToSpare?: boolean;
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
  /** Engines at the fire that the water goes through, the attack engine first. */
  atFire?: FireEngine[];
  /** By source, in the order of `sources`. */
  parts?: SourcePart[];
  /** By open water in use. */
  drafts?: DraftPart[];
  /** Where tenders haul. */
  shuttle?: ShuttlePart;
  /** Tenders that no part of the way needs: each gives its tank to the attack engine until the supply is there. */
  standBy?: Duty[];
  /** What hangs on the hydrants' mains, where it takes from several hydrants not known to be apart. */
  mains?: MainRange;
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
  /** And within every hard limit after the pumps are set anew; no less than the settings as they stand give within limits [gpm]. */
  resetGpm: number;
  /** Wanted while it lasts: the demand, a further line counted in [gpm]. */
  wantedGpm: number;
  /** `wantedGpm` is met within every hard limit, as the pumps stand or set anew. */
  stillMeets: boolean;
  /** `wantedGpm` less the most that comes within every hard limit [gpm]; 0 where met. */
  shortfallGpm: number;
  /** What happens and what to do, in a sentence. */
  text: string;
  orders: RigOrder[];
  /** Limits passed with the settings as they stand. */
  passed: LimitCheck[];
}

/** When a second engine at the hydrant pays, for a hydrant and hose. */
export interface WhenToBoost {
  /** What this hydrant must bring [gpm]: its share where others bring the rest. */
  demandGpm: number;
  points: { lengthFt: number; unassistedGpm: number; boostedGpm: number }[];
  /** Longest lay looked at [ft]: the hose carried, where that is known. */
  carriedFt?: number;
  /** The lay as it is [ft]: of a way the hose laid; and whose. */
  layFt?: number;
  sourceName?: string;
  /** Without an engine the water goes through the assist valve, which a plain lay does without. */
  throughValve: boolean;
  /** Longest lay that still meets the demand [ft]; null: none does, Infinity is never used. */
  unassistedToFt: number | null;
  boostedToFt: number | null;
  /** The rule that a crew can remember. */
  rule: string;
}
