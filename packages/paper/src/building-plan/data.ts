/** What a building's water plan says. Units: gpm, psi, ft, gal, min; places in degrees WGS 84. */
import type {
  Asked,
  LimitCheck,
  Mishap,
  Notice,
  SupplyWay,
  TimelineAnswer,
} from '@plugside/fireground';
import type { LonLat } from '@plugside/records/streets';
import type { Source } from '../sheet/notes.ts';

/** A leg on the map. */
export interface PlanLeg {
  path: readonly LonLat[];
  /** "H-394: 197 ft of 5 in"; empty where the length is not known. */
  label: string;
  /** Hose on the ground, or a road that tenders drive. */
  kind: 'hose' | 'road';
  /** Of the supply that stands by, not of this one. */
  next?: boolean;
}

/** What is drawn around the building. */
export interface PlanMap {
  streets: readonly { name: string; path: readonly LonLat[]; footOnly?: boolean }[];
  /** Rings, the outer first. */
  footprint?: readonly (readonly LonLat[])[];
  /** Where the building is on a list. */
  building: LonLat;
  hydrants: readonly { name: string; at: LonLat; used: boolean; outOfService?: boolean }[];
  waters: readonly { name: string; at: LonLat; used: boolean }[];
  /** Of the chosen supply, and of the one that stands by. */
  lays: readonly PlanLeg[];
  /** Engines that pump for it, where they stand along their leg. */
  pumps: readonly { name: string; at: LonLat; atWater: boolean }[];
}

/** The attack engine's tank against the supply. */
export interface TankAgainstSupply {
  rigName: string;
  tankGal: number;
  /** What its first lines take [gpm], from then on [min]. */
  flowGpm: number;
  fromMin: number;
  answer: TimelineAnswer;
}

/** What goes wrong, and what it comes to. */
export interface PlanMishap {
  what: string;
  /** As the pumps stand, and set anew [gpm]. */
  flowGpm: number;
  resetGpm: number;
  /** Wanted while it lasts [gpm]. */
  wantedGpm: number;
  met: boolean;
  /** "met", "95 gpm short". */
  verdict: string;
  /** What to do; the limit that is passed as set before it. */
  remedy: string;
}

export interface BuildingWaterPlan {
  building: {
    name: string;
    address?: string;
    storeys?: number;
    areaFt2?: number;
    construction?: string;
    occupancy?: string;
    exposures?: number;
    sprinklered?: boolean;
    standpipe?: boolean;
  };
  invented: boolean;
  demand: {
    flowGpm: number;
    /** "needed fire flow on record" */
    method: string;
  };
  /** Flow to spare and pressure for the lines at the fire, as chosen with. */
  asked: Asked;
  /** In order of arrival. */
  rigs: readonly { id: string; name: string; arrivesMin: number }[];
  way: SupplyWay;
  /** The best of the others, whatever water it takes. */
  nextInRank?: SupplyWay;
  /** What is done where the first one's water is lost: of others that take none of it the best. */
  next?: SupplyWay;
  /** Why the first is first. */
  why: string;
  /** As the pumps are set, the tightest first. */
  limits: readonly LimitCheck[];
  /** As worked out, each with its own verdict. */
  mishaps: readonly Mishap[];
  /** The same as rows, and of a shuttle what it comes to without a tender. */
  whatIf: readonly PlanMishap[];
  /** Left out where the attack engine has no tank on record. */
  tank?: TankAgainstSupply;
  /** By name of its source, the street that the hose takes at the building, where that has a name. */
  comesBy: readonly { source: string; street: string }[];
  /** Cautions beside the way's own. */
  notices: readonly Notice[];
  map: PlanMap;
  sources: readonly Source[];
}
