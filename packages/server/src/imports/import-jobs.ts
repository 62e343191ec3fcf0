import { randomUUID } from 'node:crypto';
import type { ImportKind, RecordStore } from '@plugside/records';
import { ProblemError } from '../problem.ts';
import type { WorkFolder } from '../work/work-folder.ts';
import { ImportJob } from './import-job.ts';
import type { DistrictBounds } from './whereabouts.ts';

/** Kept at once; beyond, the oldest that is not at work makes room. */
const MOST_JOBS = 20;

export interface ImportJobs {
  /** Takes an uploaded file over and begins to read it. @throws ProblemError 503 while all are at work */
  add(
    name: string,
    kind: ImportKind | undefined,
    upload: string,
    district?: DistrictBounds,
  ): Promise<ImportJob>;
  /** @throws ProblemError 404 */
  get(id: string): ImportJob;
  /** Removes a job and its files. */
  forget(id: string): Promise<void>;
}

/** Imports of this server: kept in memory, since one that a stop cut short has written nothing. */
export function importJobs(store: RecordStore, work: WorkFolder): ImportJobs {
  const jobs = new Map<string, ImportJob>();

  const forget = async (id: string) => {
    const job = jobs.get(id);
    jobs.delete(id);
    await job?.forget();
  };

  return {
    add: async (name, kind, upload, district) => {
      if (jobs.size >= MOST_JOBS) {
        const idle = [...jobs.values()].find((one) => one.isFinished || one.state === 'ready');
        if (!idle) throw tooMany();
        await forget(idle.id);
      }
      const files = { upload, refused: work.newPath('.csv') };
      const job = new ImportJob(randomUUID(), { name, kind, files }, store, district);
      jobs.set(job.id, job);
      job.read();
      return job;
    },
    get: (id) => {
      const job = jobs.get(id);
      if (job) return job;
      throw new ProblemError({
        status: 404,
        title: 'Not found',
        detail:
          'There is no such import. Imports are forgotten when the server stops; upload the file again.',
      });
    },
    forget,
  };
}

function tooMany(): ProblemError {
  return new ProblemError({
    status: 503,
    title: 'Busy',
    detail: `${MOST_JOBS} imports are at work. Wait until one has ended, or cancel one.`,
    headers: { 'Retry-After': '10' },
  });
}
