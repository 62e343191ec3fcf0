import { randomUUID } from 'node:crypto';
import { ProblemError } from '../problem.ts';
import type { RecordThreads } from '../threads/record-threads.ts';
import type { WorkFolder } from '../work/work-folder.ts';
import { CardsJob } from './cards-job.ts';
import type { CardsBody } from './cards-request.ts';

/** Kept at once; beyond, the oldest that has ended makes room. */
const MOST_JOBS = 10;
/** Not done yet: a stack takes a thread for minutes, and others wait for it. */
const MOST_RUNNING = 2;

export interface CardsJobs {
  /**
   * Begins a stack in the background.
   * @throws ProblemError 503 while enough are at work; 404, 422 where they cannot be printed
   */
  add(asked: CardsBody): Promise<CardsJob>;
  /** @throws ProblemError 404 */
  get(id: string): CardsJob;
  /** Removes a job and its file. */
  forget(id: string): Promise<void>;
}

/** Stacks of cards of this server: kept in memory and in its work folder until it stops. */
export function cardsJobs(threads: RecordThreads, work: WorkFolder): CardsJobs {
  const jobs = new Map<string, CardsJob>();
  const forget = async (id: string) => {
    const job = jobs.get(id);
    jobs.delete(id);
    await job?.forget();
  };
  return {
    add: async (asked) => {
      const total = await threads.run('count hydrant cards', asked);
      if ([...jobs.values()].filter(({ isRunning }) => isRunning).length >= MOST_RUNNING) {
        throw busy();
      }
      if (jobs.size >= MOST_JOBS) {
        const ended = [...jobs.values()].find(({ isRunning }) => !isRunning);
        if (ended) await forget(ended.id);
      }
      const job = new CardsJob(randomUUID(), { threads, asked, total, folder: work.newPath() });
      jobs.set(job.id, job);
      return job;
    },
    get: (id) => {
      const job = jobs.get(id);
      if (job) return job;
      throw new ProblemError({
        status: 404,
        title: 'Not found',
        detail:
          'There are no such cards. They are forgotten when the server stops; ask for them again.',
      });
    },
    forget,
  };
}

function busy(): ProblemError {
  return new ProblemError({
    status: 503,
    title: 'Busy',
    detail: `${MOST_RUNNING} stacks of cards are being printed. Wait until one is done, or cancel one.`,
    headers: { 'Retry-After': '10' },
  });
}
