/** What a drill's report says. Units: psi, s. Sentences are in the reader's units. */
import type { Judgement } from '@plugside/drill';

/** A time at which something stood wrong. */
export interface ReportMoment {
  /** Left out: it never came. */
  fromS?: number;
  toS?: number;
  /** The piece, and what of it. */
  what: string;
}

export type Stands = 'met' | 'missed' | 'not judged';

/** One criterion and what came of it. */
export interface ReportCriterion {
  label: string;
  /** Undefined: it never came about. */
  value: number | undefined;
  unit: Judgement['unit'];
  /** At most; undefined: not judged. */
  benchmark: number | undefined;
  benchmarkFrom: Judgement['benchmarkFrom'];
  stands: Stands;
  /** "worst 12 psi, Attack engine; 30 s of it while something was made to go wrong" */
  detail?: string;
  /** Why it could not be judged: "No hydrant flowed." */
  notJudged?: string;
  moments: ReportMoment[];
}

/** Pressure at one gauge, or in a main [psi], one reading at each of `timesS`. */
export interface ReportLine {
  label: string;
  valuesPsi: number[];
}

/** What is drawn over one another. */
export interface ReportPanel {
  name: string;
  /** Up to three. */
  lines: ReportLine[];
  /** What should be kept [psi], and of which line. */
  least?: { psi: number; of: string };
}

/**
 * `done`: an action; `refused`: one that was not possible; `said`: radio and the instructor's word;
 * `fault`: put in or lifted; `caution` and `fact`: what happened by itself.
 */
export type EntryKind = 'done' | 'refused' | 'said' | 'fault' | 'caution' | 'fact';

/** An entry of the log; its number is its place, from 1. */
export interface ReportEntry {
  timeS: number;
  kind: EntryKind;
  /** By role, with a star where the computer played it; left out: it happened by itself. */
  who?: string;
  what: string;
}

export interface ReportFault {
  what: string;
  /** When it took effect; undefined: its moment never came. */
  fromS: number | undefined;
  liftedS?: number;
  /** Set before the drill, or put in while it ran. */
  by: 'scene' | 'instructor';
}

export interface DrillReport {
  title: string;
  drilled: { as: 'evolution' | 'plan'; name: string };
  invented: boolean;
  /** As typed. */
  crew?: string;
  /** ISO 8601, UTC. */
  startedAt: string;
  lastedS: number;
  beganWith: string;
  seed: number;
  score: ReportCriterion[];
  timesS: number[];
  panels: ReportPanel[];
  entries: ReportEntry[];
  faults: ReportFault[];
  cautions: string[];
}
