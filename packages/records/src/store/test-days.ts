import { isDatedAhead, latestTestDay } from '@plugside/fireground';
import type { Kind } from '../model/index.ts';

/** A day on which something was tested, and is dated after today. */
export interface DayAhead {
  /** Field, or field and place in a list: `serviceTests`, 2, `testedOn`. */
  path: (string | number)[];
  value: string;
}

/**
 * Tests of a record that are dated after today (one day allowed for time zones): what has not been
 * yet tells nothing, and would stand as the newest test for years.
 * @param fields as the kind's schema has them
 * @param today ISO date; the machine's own where left out
 */
export function daysAhead(
  kind: Kind,
  fields: Readonly<Record<string, unknown>>,
  today?: string,
): DayAhead[] {
  const isAhead = (value: unknown): value is string =>
    typeof value === 'string' && isDatedAhead(value, today);
  if (kind === 'hose') {
    const tests = (fields.serviceTests ?? []) as readonly { testedOn?: unknown }[];
    return tests.flatMap(({ testedOn }, at) =>
      isAhead(testedOn) ? [{ path: ['serviceTests', at, 'testedOn'], value: testedOn }] : [],
    );
  }
  if (kind !== 'flow-tests' && kind !== 'pump-tests' && kind !== 'hose-tests') return [];
  const { testedOn } = fields;
  return isAhead(testedOn) ? [{ path: ['testedOn'], value: testedOn }] : [];
}

/** What a test's day may be, in words. */
export const testDaysAllowed = (today?: string): string =>
  `a date as YYYY-MM-DD, up to ${latestTestDay(today)}`;

/** What to do about one that is not. */
export const dayAheadRemedy = 'Give the day on which the test was made.';
