/** What a hydrant card says. Units: gpm, psi, ft, in. */
import type {
  HoseSize,
  HydrantClass,
  LimitKind,
  Loss,
  Origin,
  TestFinding,
} from '@plugside/fireground';
import type { Source } from '../sheet/notes.ts';

/** Its flow test and what follows from it. */
export interface CardTest {
  testedOn: string;
  by?: string;
  staticPsi: number;
  residualPsi: number;
  testGpm: number;
  /** Flow at 20 psi; 0 where static is no more. */
  q20Gpm: number;
  class: HydrantClass | null;
  retestOn: string;
  /** That day has passed when the card is made. */
  overdue: boolean;
}

/** What reaches the attack engine's intake, and what stops more. */
export interface LayFlow {
  flowGpm: number;
  /** Empty where no water comes. */
  stoppedBy: LimitKind[];
}

export interface LayRow {
  lengthFt: number;
  alone: LayFlow;
  /** With an engine at the hydrant, and what that one is set to. */
  boosted: LayFlow & { pdpPsi: number };
  /** Whose hose it takes, those with most of it first: so many rigs; null: more than all carry. */
  rigs: number | null;
}

export interface LayTable {
  hose: HoseSize;
  /** In service on the attack engine [ft]. */
  carriedFt: number;
  /** Rigs that have it in service, the most first. */
  carriers: { name: string; lengthFt: number }[];
  coefficient: number;
  origin: Origin;
  rows: LayRow[];
}

export interface Neighbour {
  name: string;
  /** Hose between the two along the streets, or the straight line [ft]. */
  alongFt: number;
  q20Gpm?: number;
  outOfService?: boolean;
}

export interface HydrantCard {
  name: string;
  invented: boolean;
  /** Out of service, and why where it is known. */
  outOfService?: { reason?: string };
  facts: {
    mainIn?: number;
    steamerIn?: number;
    sideOutlets: number;
    sideOutletIn: number;
    type?: string;
    owner?: string;
    /** That it stands on. */
    street?: string;
    elevationFt?: number;
    longitude: number;
    latitude: number;
  };
  /** Null: never tested, or the test cannot be used; `findings` then say why. */
  test: CardTest | null;
  findings: TestFinding[];
  attack: { name: string; ratedGpm: number };
  booster: { name: string; ratedGpm: number; assistValve: boolean };
  /** That the lay hangs on, with and without the booster; left out where none is brought. */
  valve?: { clapperLoss: Loss; from: string };
  /** What its record does not bear out. */
  cautions: string[];
  lays: LayTable[];
  /** What the attack engine's intake stands once its lines shut: its relief on record, else the limit [psi]. */
  intakeMost: { psi: number; relief: boolean };
  /** Why there is no table of lays. */
  noLays?: string;
  mainResidualPsi: number;
  neighbours: Neighbour[];
  sources: Source[];
}
