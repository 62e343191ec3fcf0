/** Legs with everyone's work given out. */
import type { HoseSize } from '../plan/plan.ts';
import type { WaterTimes, WayKind } from './choice.ts';
import type { Take } from './hose-pool.ts';
import type { Leg } from './leg.ts';
import type { RespondingRig } from './situation.ts';

/** One section that a rig gives for a suction line. */
export interface HoseUse {
  rig: RespondingRig;
  hose: HoseSize;
  lengthFt: number;
}

/** Hose of one size in a line [ft], whole sections as they are laid. */
export interface LaidHose {
  hose: HoseSize;
  lengthFt: number;
}

/** Who does what for one leg. */
export interface LegTasks {
  leg: Leg;
  lay: readonly Take[];
  suction: readonly HoseUse[];
  /** Engine at the fire that takes each line; the attack engine takes all where left out. */
  takenBy?: readonly RespondingRig[];
}

/** The same of an arrangement. */
export interface LegWork extends LegTasks {
  /** What comes to lie, by stretch and line; of a line of two sizes both, from the water on. */
  laid: readonly (readonly (readonly LaidHose[])[])[];
  takenBy: readonly RespondingRig[];
}

/** A line that comes to the fire. */
export interface LineAtFire {
  /** Place of its leg in the way, and of the line in the leg. */
  leg: number;
  line: number;
}

/** An engine at the fire and the lines that end at it. */
export interface AtFire {
  rig: RespondingRig;
  /** The most that its pump puts out there [gpm]. */
  gpm: number;
  lines: readonly LineAtFire[];
}

/** All that is known of a way before its water is solved. */
export interface Arrangement {
  id: string;
  kind: WayKind;
  legs: readonly Leg[];
  work: readonly LegWork[];
  /** Engines that the lines end at, the attack engine first. */
  atFire: readonly AtFire[];
  /** The engines at the fire, the pumps, and those who lay hose. */
  rigs: readonly RespondingRig[];
  /** As laid, suction lines with it [ft]. */
  hoseFt: number;
  hoseSections: number;
  time: WaterTimes;
}
