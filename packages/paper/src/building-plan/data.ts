/** What a building's water plan says. Units: gpm, psi, ft, min; places in degrees WGS 84. */
import type { LimitCheck, Mishap, Notice, SupplyWay } from '@plugside/fireground';
import type { LonLat } from '@plugside/records/streets';
import type { Source } from '../sheet/notes.ts';

/** What is drawn around the building. */
export interface PlanMap {
  streets: readonly { name: string; path: readonly LonLat[]; footOnly?: boolean }[];
  /** Rings, the outer first. */
  footprint?: readonly (readonly LonLat[])[];
  /** Where the building is on a list. */
  building: LonLat;
  hydrants: readonly { name: string; at: LonLat; used: boolean; outOfService?: boolean }[];
  waters: readonly { name: string; at: LonLat; used: boolean }[];
  /** Hose of the chosen supply, and of the next one. */
  lays: readonly { path: readonly LonLat[]; label: string; next?: boolean }[];
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
  /** In order of arrival. */
  rigs: readonly { id: string; name: string; arrivesMin: number }[];
  way: SupplyWay;
  /** What is done where the first cannot be. */
  next?: SupplyWay;
  /** Why the first is first. */
  why: string;
  /** As the pumps are set, the tightest first. */
  limits: readonly LimitCheck[];
  mishaps: readonly Mishap[];
  /** Cautions beside the way's own. */
  notices: readonly Notice[];
  map: PlanMap;
  sources: readonly Source[];
}
