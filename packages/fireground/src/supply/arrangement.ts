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

/** Who lays the hose of one leg. */
export interface LegWork {
  leg: Leg;
  lay: readonly Take[];
  suction: readonly HoseUse[];
}

/** All that is known of a way before its water is solved. */
export interface Arrangement {
  id: string;
  kind: WayKind;
  legs: readonly Leg[];
  work: readonly LegWork[];
  /** The attack engine, the pumps, and those who lay hose. */
  rigs: readonly RespondingRig[];
  hoseFt: number;
  hoseSections: number;
  time: WaterTimes;
}
