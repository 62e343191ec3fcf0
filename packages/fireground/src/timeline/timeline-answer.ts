/** Tank water against supply, as it is answered. Minutes, gallons, gpm. */
import type { Origin } from '../plan/plan.ts';
import type { Notice } from '../questions/answers.ts';
import type { ScheduledTask } from './schedule.ts';
import type { FlowStep } from './timeline-input.ts';

export type TimelineEventKind =
  | 'arrival'
  | 'flow'
  | 'task'
  | 'nursing begins'
  | 'nurse tank empty'
  | 'attack tank dry'
  | 'supply';

export interface TimelineEvent {
  atMin: number;
  /** End of a task that takes time; else left out. */
  untilMin?: number;
  kind: TimelineEventKind;
  /** A sentence in the reader's units. */
  text: string;
  rigId?: string;
  /** Where the time comes from, where it is reckoned with one. */
  origin?: Origin;
}

/** Tank water against supply. Minutes, gallons, gpm. */
export interface TimelineAnswer {
  /** In order of time. */
  events: TimelineEvent[];
  /** Corners of the attack tank's level: straight lines between. */
  tank: { atMin: number; gal: number }[];
  tasks: ScheduledTask[];
  /** What all sources together give from a time on, in order of time; what came to it in `what`. */
  supply: FlowStep[];
  /**
   * The supply is there: it gives all that the lines take, or, where it never does, all that it ever
   * gives; null without one.
   */
  supplyAtMin: number | null;
  /** First time that the lines lack water, everything counted; null where they never do. */
  runsDryAtMin: number | null;
  /** The same with tanks and what of the supply comes before it is there, within 240 min. */
  tanksDryAtMin: number | null;
  /** Tanks dry less supply there: how long the supply may be late; below 0, how long the lines lack water. Null where either is. */
  marginMin: number | null;
  /** Greatest steady flow that the tanks hold up until the supply is there; null where nothing is to be bridged. */
  bridgeGpm: number | null;
  deliveredGal: number;
  shortGal: number;
  nurseTanks: { rigId: string; fromMin: number; usedGal: number; emptyAtMin: number | null }[];
  /** What the picture shows, in a sentence or two. */
  text: string;
  notices: Notice[];
}
