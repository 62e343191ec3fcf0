/** Drills that several devices share, over HTTP; what happens in one goes over its WebSocket. */
import type {
  Benchmarks,
  DrillLog,
  DrillScene,
  DrillStart,
  Judgement,
  PlayedRole,
} from '@plugside/drill';
import { apiRequest } from './request.ts';

/** Give exactly one of `evolution`, `plan` and `planId`. */
export interface NewDrill {
  evolution?: string;
  /** A hydrant among the records, for an evolution. */
  hydrantId?: string;
  /** A plan file's text. */
  plan?: string;
  /** A plan among the records. */
  planId?: string;
  /** Of a plan alone; an evolution has its own. */
  start?: DrillStart;
  title?: string;
  /** Who drills: "B shift". No names of persons. */
  crew?: string;
  guided?: boolean;
  /** Those that are the department's own. */
  benchmarks?: Partial<Benchmarks>;
  seed?: number;
}

export interface MadeDrill {
  roomId: string;
  code: string;
  /** Told this once. */
  keys: { instructor: string; watch: string };
}

export interface DrillFacts {
  roomId: string;
  code: string;
  title: string;
  crew?: string;
  startedAt: string;
  /** The drill's own time [s]. */
  timeS: number;
  state: 'running' | 'paused';
  roles: { role: PlayedRole; seat: 'free' | 'taken' | 'computer'; connected: boolean }[];
  instructors: number;
  observers: number;
}

export interface DrillRun {
  roomId: string;
  title: string;
  evolution?: string;
  crew?: string;
  startedAt: string;
  timeS: number;
  /** Left out while it runs. */
  endedAt?: string;
  result?: Judgement[];
}

export interface RunPage {
  runs: DrillRun[];
  /** Asks for the next page as `after`; left out on the last. */
  next?: string;
}

/** All that is needed to look at a drill again. */
export interface DrillRecord {
  roomId: string;
  title: string;
  crew?: string;
  startedAt: string;
  scene: DrillScene;
  seed: number;
  /** Where it stands, or ended. */
  tick: number;
  log: DrillLog;
  result?: Judgement[];
}

/** @throws ProblemError with the refused fields in `problem.issues` */
export const makeDrill = (asked: NewDrill): Promise<MadeDrill> =>
  apiRequest('/drills', { method: 'POST', json: asked });

/** @throws ProblemError (404) where none runs under the code, (429) after too many wrong ones */
export const drillByCode = (code: string, signal?: AbortSignal): Promise<DrillFacts> =>
  apiRequest(`/drills/${code}`, { signal });

/** Drills that ran or run, the newest first. */
export const drillRuns = (
  query: { crew?: string; limit?: number; after?: string } = {},
  signal?: AbortSignal,
): Promise<RunPage> => apiRequest('/drill-runs', { query, signal });

/** A drill that has ended. @throws ProblemError (404) where there is none, (401) while it runs */
export const drillRecord = (roomId: string, signal?: AbortSignal): Promise<DrillRecord> =>
  apiRequest(`/drills/${roomId}/replay`, { signal });

/**
 * Takes a drill that has ended out of the records, with its log.
 * @param endedAt as it was read
 * @throws ProblemError (404) where there is none any more, (409) while it runs
 */
export const removeDrillRun = (roomId: string, endedAt: string): Promise<void> =>
  apiRequest(`/drill-runs/${roomId}`, { method: 'DELETE', version: endedAt });
