/** The threads that work on the records a server serves. */
import { availableParallelism } from 'node:os';
import { extname } from 'node:path';
import type { StoreTarget } from '@plugside/records';
import type { pieces } from './pieces.ts';
import { type ThreadPool, threadPool } from './pool.ts';
import { startThread } from './start-thread.ts';
import type { ThreadData } from './thread.ts';

export type RecordThreads = ThreadPool<typeof pieces>;

/** Each takes 100 to 150 MB. */
const MOST_THREADS = 4;
const MOST_WAITING = 20;
const IDLE_MS = 5 * 60_000;
const GRACE_MS = 1_000;

/**
 * Begins none before there is work for one.
 * @throws TypeError for records in memory, which no other thread can see
 */
export function recordThreads(target: StoreTarget): RecordThreads {
  if ('memory' in target) {
    throw new TypeError(
      'Records in memory cannot be served: threads would not see them. Open a file or a PostgreSQL database.',
    );
  }
  const data: ThreadData = { target };
  // Beside this file, in source as in what is built of it.
  const entry = new URL(`thread${extname(import.meta.url)}`, import.meta.url);
  return threadPool({
    start: () => startThread(entry, data),
    // A core is the main thread's; two threads all the same, so that a stack of cards keeps no plan waiting.
    mostThreads: Math.min(MOST_THREADS, Math.max(2, availableParallelism() - 1)),
    mostWaiting: MOST_WAITING,
    idleMs: IDLE_MS,
    graceMs: GRACE_MS,
  });
}
