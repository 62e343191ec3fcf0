/** What a pump chart says. Units: gpm, psi, ft. */
import type { HoseSize, LimitValues, NozzleMake, Origin } from '@plugside/fireground';
import type { Source } from '../sheet/notes.ts';

/** One way in which a rig's water is put to use. */
export type ChartLine =
  /** One line to a nozzle; the chart's lengths are its own. */
  | { kind: 'hand line'; hose: HoseSize; nozzle: NozzleMake }
  /** A leader to a wye and like lines from it; the chart's lengths are the leader's. */
  | {
      kind: 'wyed lines';
      leader: HoseSize;
      hose: HoseSize;
      lengthFt: number;
      nozzle: NozzleMake;
      /** 1 or 2. */
      lines: number;
    }
  /** Like lines into a monitor; the chart's lengths are each line's. */
  | { kind: 'master stream'; hose: HoseSize; lines: number; nozzle: NozzleMake };

/**
 * What is passed at a pressure: the hose's limit, the next pump's intake once nothing flows, what the pump can
 * give, its rated flow. `M`: raised to the least that a pump is set to.
 */
export type OverMark = 'H' | 'I' | 'P' | 'R' | 'M';

export interface ChartCell {
  /** To set; no less than the department's least. */
  pdpPsi: number;
  over: OverMark[];
}

export interface ChartRow {
  line: ChartLine;
  flowGpm: number;
  /** By the chart's lengths. */
  cells: ChartCell[];
}

/** A connection on a building, pumped by like lines. */
export interface ConnectionRow {
  kind: 'standpipe' | 'sprinkler';
  /** Lines to the connection. */
  lines: number;
  hose: HoseSize;
  lengthFt: number;
  flowGpm: number;
  /** Hand line from a standpipe's outlet. */
  handLine?: { hose: HoseSize; lengthFt: number; nozzle: NozzleMake };
  /** A sprinkler system's own: pressure that it needs at the connection. */
  basePsi?: number;
  /** By the chart's floors; one alone for a sprinkler system. */
  cells: ChartCell[];
  /** What crews are taught to pump at the connection, by the same floors [psi]. */
  rulePsi: number[];
}

export interface SupplyBlock {
  hose: HoseSize;
  /** Like lines side by side. */
  lines: number;
  coefficient: number;
  limitPsi: number;
  /** In service on the rig [ft]. */
  carriedFt: number;
  lengthsFt: number[];
  rows: { flowGpm: number; cells: ChartCell[] }[];
}

export interface PumpChart {
  rigName: string;
  ratedGpm: number;
  invented: boolean;
  lengthsFt: number[];
  attack: ChartRow[];
  /** Pressure a floor is reckoned with, and the exact one of a storey [psi]. */
  perFloorPsi: number;
  storeyFt: number;
  storeyPsi: number;
  /** Floors that the connection rows are for; the ground floor is 1. */
  floors: number[];
  connections: ConnectionRow[];
  supply: SupplyBlock[];
  /** Left at the next pump's intake [psi]. */
  nextIntakePsi: number;
  /** What stands there at most with its lines shut [psi]. */
  intakeMost: { psi: number; origin: Origin; relief: boolean };
  /** Lost in a standpipe system and in a monitor, at any flow [psi]. */
  systemPsi: number;
  limits: Pick<LimitValues, 'supplyHosePsi' | 'attackHosePsi' | 'leastDischargePsi'>;
  pump: { origin: Origin; intakePsi: number };
  /** What its record does not bear out. */
  cautions: string[];
  sources: Source[];
}
