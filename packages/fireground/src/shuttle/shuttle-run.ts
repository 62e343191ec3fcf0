/** What playing a shuttle out takes and answers with. Minutes, gallons, gpm. */
import type { Shuttle } from './shuttle-flow.ts';

export interface ShuttleRunOptions extends Shuttle {
  /** Portable tank at the dump site, or several joined [gal]. */
  tankGal: number;
  /** In it at the start [gal]; 0 where left out. */
  startGal?: number;
  /** Fire flow drawn from it [gpm]. */
  drawGpm: number;
  /** When drawing begins [min]; left out: when the first tender has dumped. */
  drawFromMin?: number;
  /** How long to play [min], 1 to 720. */
  untilMin: number;
  /** When each tender first comes to the dump site, loaded [min], by id; 0 where left out. */
  firstAtMin?: Readonly<Record<string, number>>;
}

export type ShuttleEventKind =
  | 'waits to dump'
  | 'dumps'
  | 'leaves empty'
  | 'waits to fill'
  | 'fills'
  | 'leaves full'
  | 'drawing begins'
  | 'tank full'
  | 'tank dry'
  | 'tank has water again';

export interface ShuttleEvent {
  atMin: number;
  kind: ShuttleEventKind;
  /** Left out for events of the tank. */
  tenderId?: string;
}

/** Waiting seen at one site. */
export interface ShuttleQueue {
  /** Most tenders waiting at once. */
  most: number;
  /** All tenders' waiting together [min]. */
  waitedMin: number;
}

/** A shuttle played out. Minutes, gallons, gpm. */
export interface ShuttleRun {
  /** Corners of the tank's level: straight lines between. */
  level: { atMin: number; gal: number }[];
  /** First time that the tank could not give the draw; null where it always could. */
  runsDryAtMin: number | null;
  /** Time in all that it could not. */
  dryMin: number;
  drawFromMin: number | null;
  dumpedGal: number;
  drawnGal: number;
  /** Asked for but not there. */
  shortGal: number;
  endGal: number;
  /** Drawn on average since drawing began; 0 where it never did. */
  averageGpm: number;
  dumpQueue: ShuttleQueue;
  fillQueue: ShuttleQueue;
  loads: { tenderId: string; loads: number; waitedMin: number }[];
  events: ShuttleEvent[];
}
