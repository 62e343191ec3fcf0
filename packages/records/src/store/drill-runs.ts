/**
 * Drills that run or have run. Scene, seats, log entries, keyframe and result are the drill's own
 * JSON, which is kept and given back as it is. An entry is only ever added: a log grows by what is
 * new, however long it is.
 */

/** What a list tells of a drill. */
export interface DrillRunFacts {
  id: string;
  /** Short word to join it by; another drill may have it once this one has ended. */
  code: string;
  title: string;
  /** Key of the evolution that it drills. */
  evolution?: string;
  /** Who drilled, in the department's words: "B shift". */
  crew?: string;
  startedAt: string;
  /** When it was last written. */
  changedAt: string;
  /** Left out while it runs. */
  endedAt?: string;
  /** Where it stands [ticks]. */
  tick: number;
  result?: unknown;
}

export interface DrillRun extends DrillRunFacts {
  /** [0 … 2³²−1] */
  seed: number;
  scene: unknown;
  /** Who may act in which role. */
  seats: unknown;
  /** State to go on from; left out: from the scene's beginning. */
  keyframe?: unknown;
}

export type NewDrillRun = Pick<
  DrillRun,
  'code' | 'title' | 'evolution' | 'crew' | 'seed' | 'scene' | 'seats'
>;

export interface DrillLogRow {
  /** Counts from 0 without gaps. */
  seq: number;
  entry: unknown;
  /** Whose action it is, and its number there, so that one sent again is known. */
  sender?: string;
  clientSeq?: number;
}

/** A drill as it is kept, whole. */
export interface KeptDrill {
  run: DrillRun;
  log: DrillLogRow[];
}

/** What has become of a drill since it was last written. */
export interface DrillRunChange {
  id: string;
  /** `changedAt` as the writer knows it: if it is another by now, somebody else has written. */
  since: string;
  /** The new one; later than that. */
  changedAt: string;
  tick: number;
  /** Entries to add. */
  log: readonly DrillLogRow[];
  seats?: unknown;
  keyframe?: unknown;
  /** Given: it has ended. */
  ended?: { at: string; result: unknown };
}

export interface DrillRunQuery {
  /** A part of the crew's name, in any case. */
  crew?: string;
  evolution?: string;
  /** 1 to 500; 100 where left out. */
  limit?: number;
  /** Older than this id. */
  before?: string;
}

export interface DrillRuns {
  /** Undefined where a running drill has that code: nothing is written. */
  add(run: NewDrillRun): Promise<DrillRun | undefined>;

  /** Those that have not ended, in the order in which they began. */
  running(): Promise<DrillRunFacts[]>;

  /** All of them, the newest first. */
  list(query?: DrillRunQuery): Promise<DrillRunFacts[]>;

  get(id: string): Promise<DrillRun | undefined>;

  /** The one that runs under a code. */
  runningAs(code: string): Promise<DrillRun | undefined>;

  /** Every one with its log, the newest first. */
  all(): AsyncIterable<KeptDrill>;

  /** In order. */
  log(id: string): Promise<DrillLogRow[]>;

  /**
   * Writes all of it in one transaction; it is on the disk when this resolves.
   * @throws DrillTakenError where another process has written one of these drills meanwhile
   */
  write(changes: readonly DrillRunChange[]): Promise<void>;

  /** With its log. */
  remove(id: string): Promise<void>;
}
