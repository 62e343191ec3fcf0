/** What there is to work with: a demand, the water within reach, the rigs that come. */
import type { TestFinding } from '../field-tests/finding.ts';
import type {
  AssistValve,
  DepartmentValues,
  DraftSource,
  GroupTest,
  HoseSize,
  Hydrant,
  Origin,
  Rig,
} from '../plan/plan.ts';

/** Ground along a lay from the water to the scene. */
export interface LayGround {
  /** Hose to lay along the streets [ft], above 0. */
  lengthFt: number;
  /** Heights between the ends, from the water: distance along the lay and elevation [ft]. */
  terrain?: readonly { alongFt: number; elevationFt: number }[];
}

/** A hydrant that hose reaches the scene from. */
export interface HydrantAtHand extends LayGround {
  /** With its flow test, its main where that is known, and its outlets' losses. Its id is the situation's. */
  hydrant: Hydrant;
  /** False where its record has no large outlet: one side outlet feeds the lay. */
  steamer: boolean;
  outOfService?: string;
  /** What makes its flow test a weak ground: told with every way that takes from it. */
  doubts?: readonly TestFinding[];
}

/** A hydrant within hose that nothing can be counted on of, since no usable flow test tells what it gives. */
export interface UntestedHydrant {
  name: string;
  /** Hose to lay along the streets [ft]. */
  lengthFt: number;
  /** In a sentence. */
  why: string;
}

/** Open water that a pump can draft from. */
export interface WaterAtHand extends LayGround {
  /** Water's surface, height above the sea and temperature. */
  draft: DraftSource;
  /** Where the pump stands, above the water [ft]. */
  liftFt: number;
  /** Where the lift comes from; the rating test's where left out. */
  liftOrigin?: Origin;
  /** What can be taken [gal]; left out: not known. */
  usableGal?: number;
  /** How a rig gets to it, as its record has it. */
  access?: string;
}

/** A place where tenders fill, and the road there. */
export interface FillPlace {
  id: string;
  name: string;
  /** One way along the road [mi]. */
  roadMi: number;
  /** Rate at which it fills a tender [gpm]; of open water the most that a tender takes. */
  fillGpm: number;
  /** Open water takes an engine to draft and fill; a hydrant where left out. */
  kind?: 'hydrant' | 'open water';
  /** Of open water: where its pump stands, above the water [ft]; 10 where left out. */
  liftFt?: number;
  access?: string;
}

/** Hose that a rig can lay for supply. */
export interface HoseAboard {
  hose: HoseSize;
  lengthFt: number;
}

export interface RespondingRig {
  /** `role`, `setting` and `elevationFt` are the way's to set. */
  rig: Rig;
  kind: 'engine' | 'tender' | 'aerial' | 'brush';
  /** From the call, or from the first rig's arrival: the same zero for all [min]. */
  arrivesMin: number;
  hose: readonly HoseAboard[];
  assistValve: boolean;
  /** An aerial: its pump's rating is on record. Left out: it has a pump only where its own test says so. */
  pumpKnown?: boolean;
  /** Measured losses of that valve's paths; the catalogue's where left out. */
  valveLosses?: Partial<Pick<AssistValve, 'clapperLoss' | 'suctionLoss' | 'dischargeLoss'>>;
}

export interface Situation {
  title: string;
  invented: boolean;
  scene: { name: string; elevationFt: number };
  /** What must reach the scene [gpm], above 0. */
  demandGpm: number;
  /** Share of the demand that a way should have to spare [0 to 2]; `usualMarginShare` where left out. */
  marginShare?: number;
  /** Discharge pressure that the lines at the fire need of their pump [psi, 50 to 400]; `usualFireLinePdpPsi` where left out. */
  fireLinePdpPsi?: number;
  /** In order of arrival. The first engine attacks. */
  rigs: readonly RespondingRig[];
  hydrants: readonly HydrantAtHand[];
  /** Hydrants that no way can be made of for want of a test; left out: none. */
  untested?: readonly UntestedHydrant[];
  /** Tests of several of the hydrants flowing together; left out: none. */
  groupTests?: readonly GroupTest[];
  waters: readonly WaterAtHand[];
  fillPlaces: readonly FillPlace[];
  department: DepartmentValues;
}
