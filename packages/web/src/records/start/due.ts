/** Whose test is due. */
import type { Stored } from '@plugside/records/model';
import type { HydrantProperties } from '../../api/district.ts';

export interface DueTest {
  id: string;
  name: string;
  /** Null where there was none. */
  testedOn: string | null;
}

/** Pumps are tested every year: common practice, no source. */
const PUMP_TEST_YEARS = 1;

/**
 * Hydrants in service whose test no longer counts, or that have none: the oldest test first, those
 * never tested last, since their numbers are known to be missing.
 * @param today ISO date
 */
export function hydrantsDue(hydrants: readonly HydrantProperties[], today: string): DueTest[] {
  const due = hydrants.filter(
    ({ status, testedOn, retestOn }) =>
      status === 'in service' && (testedOn === null || (retestOn !== null && retestOn <= today)),
  );
  return inDueOrder(due);
}

/**
 * Rigs in service with a rated pump whose newest test is a year old or older, or that have none.
 * @param today ISO date
 */
export function rigsDue(
  rigs: readonly Stored<'rigs'>[],
  tests: readonly Stored<'pump-tests'>[],
  today: string,
): DueTest[] {
  const newest = new Map<string, string>();
  for (const { rigId, testedOn } of tests) {
    if (testedOn > (newest.get(rigId) ?? '')) newest.set(rigId, testedOn);
  }
  const last = `${Number(today.slice(0, 4)) - PUMP_TEST_YEARS}${today.slice(4)}`;
  const due = rigs
    .filter(({ inService, ratedGpm }) => inService && ratedGpm !== undefined)
    .map(({ id, name }) => ({ id, name, testedOn: newest.get(id) ?? null }))
    .filter(({ testedOn }) => testedOn === null || testedOn <= last);
  return inDueOrder(due);
}

const collator = new Intl.Collator('en', { numeric: true });

function inDueOrder(due: readonly DueTest[]): DueTest[] {
  return due
    .map(({ id, name, testedOn }) => ({ id, name, testedOn }))
    .sort(
      (a, b) =>
        (a.testedOn ?? '9999').localeCompare(b.testedOn ?? '9999') ||
        collator.compare(a.name, b.name),
    );
}
