const FIRST_MS = 500;
const MOST_MS = 10_000;
/** Share by which waits are spread, so that many devices do not come back in one moment. */
const SPREAD = 0.25;

/**
 * How long to wait before connecting again [ms]: twice as long each time, up to ten seconds.
 * @param tries in vain so far, from 0
 * @param random from 0 up to 1
 */
export function waitMs(tries: number, random: number): number {
  const even = Math.min(MOST_MS, FIRST_MS * 2 ** Math.min(tries, 10));
  return Math.round(even * (1 - SPREAD + 2 * SPREAD * random));
}
