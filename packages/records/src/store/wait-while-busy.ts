import { setTimeout as sleep } from 'node:timers/promises';
import { isBusy } from './database-errors.ts';

/** How long a writer waits for another [ms]. */
const LONGEST_MS = 20_000;

/**
 * Tries again while another connection is writing. SQLite's own waiting would stop this process
 * with all its other work, and for good where the other connection is this process's own.
 * @throws what the last try threw
 */
export async function waitWhileBusy<T>(work: () => Promise<T>): Promise<T> {
  const until = Date.now() + LONGEST_MS;
  for (let pauseMs = 1; ; pauseMs = Math.min(pauseMs * 2, 50)) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error) || Date.now() >= until) throw error;
      await sleep(pauseMs);
    }
  }
}
