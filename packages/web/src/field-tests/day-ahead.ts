import { isDatedAhead, latestTestDay, type TestFinding } from '@plugside/fireground';

/** Why a test of that day cannot be saved; null where it can, or where no day stands yet. */
export function dayAheadWords(testedOn: string, today: string): string | null {
  if (!isDatedAhead(testedOn, today)) return null;
  return `Tested on ${testedOn} has not been yet; allowed: up to ${latestTestDay(today)}. Give the day on which the test was made.`;
}

/** What is told of a test on record that is dated ahead of today; none of any other. */
export function aheadFindings(testedOn: string, today: string): TestFinding[] {
  if (!isDatedAhead(testedOn, today)) return [];
  const text = `It is dated ${testedOn}, ahead of today: it cannot have been made yet, and plans leave it aside. Correct its date.`;
  return [{ level: 'caution', code: 'dated-ahead', parts: [text], text }];
}
