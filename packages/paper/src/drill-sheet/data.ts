/** What a drill sheet says. Units: gpm, psi, ft. */
import type { LimitCheck, Plan, RigOrder, SupplyState } from '@plugside/fireground';
import type { Source } from '../sheet/notes.ts';

/** One thing to do, in its order. */
export interface DrillStep {
  text: string;
  /** What can go wrong here. */
  hazard?: string;
}

/** What one crew does. */
export interface DrillRole {
  role:
    | 'Officer'
    | 'Hydrant engine'
    | 'Source engine'
    | 'Relay engine'
    | 'Attack engine'
    | 'Engine at the fire'
    | 'Aerial'
    | 'Other rig'
    | 'Connection crew'
    | 'Nozzle crew'
    | 'Master stream crew';
  /** "Engine 7" */
  who: string;
  steps: DrillStep[];
}

/** Something to time; the department sets the target. */
export interface Benchmark {
  text: string;
  /** "3 min"; a blank is printed where left out. */
  target?: string;
}

export interface DrillSheet {
  /** The building, where it is for one; else the plan's. */
  title: string;
  /** The supply in a line, where the title is the building. */
  supply?: string;
  note?: string;
  invented: boolean;
  /** As set and solved. */
  plan: Plan;
  state: SupplyState;
  demandGpm: number;
  /** It cannot be met: the sheet is for the most there is. */
  shortGpm: number;
  orders: RigOrder[];
  limits: LimitCheck[];
  roles: DrillRole[];
  benchmarks: Benchmark[];
  /** What an evaluator looks for. */
  points: string[];
  cautions: string[];
  sources: Source[];
}
