import { isDatedAhead, latestTestDay } from '@plugside/fireground';

/** Why a test of that day cannot be saved; null where it can, or where no day stands yet. */
export function dayAheadWords(testedOn: string, today: string): string | null {
  if (!isDatedAhead(testedOn, today)) return null;
  return `Tested on ${testedOn} has not been yet; allowed: up to ${latestTestDay(today)}. Give the day on which the test was made.`;
}
