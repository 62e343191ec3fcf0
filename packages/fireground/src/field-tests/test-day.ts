import { yearsOn } from './test-date.ts';

/** A clock that stands before the day of this version is wrong, and no measure of a test's date. */
const NO_CLOCK_BEFORE = '2026-12-01';
const DAY_MS = 86_400_000;

/** Today by the machine's clock, as an ISO date (UTC). */
const todayByClock = (): string => new Date().toISOString().slice(0, 10);

/**
 * The last day that a test may be dated: tomorrow, since it is tomorrow somewhere already.
 * @param today ISO date; the machine's own where left out
 * @returns ISO date
 */
export function latestTestDay(today: string = todayByClock()): string {
  const from = today > NO_CLOCK_BEFORE ? today : NO_CLOCK_BEFORE;
  return new Date(Date.parse(from) + DAY_MS).toISOString().slice(0, 10);
}

/**
 * Whether a test is dated after what can have happened. What is no date at all is not.
 * @param testedOn ISO date
 * @param today as in `latestTestDay`
 */
export function isDatedAhead(testedOn: string, today?: string): boolean {
  return yearsOn(testedOn, 0) !== null && testedOn > latestTestDay(today);
}
