import { isDatedAhead } from '@plugside/fireground';
import { notice, type PlanningNotice } from './notice.ts';

/**
 * Tests dated ahead of today cannot have been made: plans leave them aside. Each such day is told
 * once, so that it gets corrected.
 * @param what the test and what was tested: "The pump test of Engine 1"
 * @param today ISO date; the machine's where left out
 */
export function testsAhead(
  what: string,
  tests: readonly { testedOn: string }[],
  today?: string,
): PlanningNotice[] {
  const days = tests.map(({ testedOn }) => testedOn).filter((day) => isDatedAhead(day, today));
  return [...new Set(days)]
    .sort()
    .map(
      (day) =>
        notice(
          'caution',
          'dated-ahead',
        )`${what} dated ${day} is not used: it cannot have been made yet. Correct its date.`,
    );
}
