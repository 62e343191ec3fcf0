/** What happened in a drill, in order. Its actions alone, with scene and seed, make the drill again. */
import type { Problem, Submitted } from './action.ts';
import type { DrillEvent } from './event.ts';

interface EntryBase {
  /** The tick that was about to be computed when it happened. */
  tick: number;
  /** Counts from 0 without gaps. */
  seq: number;
}

export type LogEntry =
  | (EntryBase & { kind: 'action' } & Submitted)
  /** An action that the person could not do, or that had no meaning: nothing changed. */
  | (EntryBase & { kind: 'refused'; problem: Problem } & Submitted)
  | (EntryBase & { kind: 'event'; event: DrillEvent });

export type DrillLog = LogEntry[];
