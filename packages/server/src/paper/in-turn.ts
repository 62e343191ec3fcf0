import { ProblemError } from '../problem.ts';

/**
 * Work that is long for the processor, one piece at a time, in the order in which it was asked for.
 * What it gives throws ProblemError 503 where as many as may wait do.
 * @param mostWaiting pieces asked for and not yet done [whole number ≥ 1]
 */
export function inTurn(mostWaiting: number): <T>(work: () => Promise<T>) => Promise<T> {
  let waiting = 0;
  let last: Promise<unknown> = Promise.resolve();
  return async (work) => {
    if (waiting >= mostWaiting) {
      throw new ProblemError({
        status: 503,
        title: 'Busy',
        detail: `${mostWaiting} others wait for the same. Try again in a minute.`,
        headers: { 'Retry-After': '60' },
      });
    }
    waiting += 1;
    const mine = last.then(work).finally(() => {
      waiting -= 1;
    });
    last = mine.catch(() => {});
    return mine;
  };
}
