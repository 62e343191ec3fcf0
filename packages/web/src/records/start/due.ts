/** Whose test is due. */
import { isDatedAhead } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import type { HydrantProperties } from '../../api/district.ts';

export interface DueTest {
  id: string;
  name: string;
  /** Null where there was none. */
  testedOn: string | null;
  /** Its test cannot be used, so it counts for nothing. */
  isVoid?: boolean;
}

/** Pumps and hose are tested every year: common practice, no source. */
const aYearBefore = (today: string): string => `${Number(today.slice(0, 4)) - 1}${today.slice(4)}`;

/**
 * Hydrants in service whose test no longer counts or cannot be used, or that have none: the oldest
 * test first, those never tested last, since their numbers are known to be missing.
 * @param today ISO date
 */
export function hydrantsDue(hydrants: readonly HydrantProperties[], today: string): DueTest[] {
  const due = hydrants.filter(
    ({ status, retestOn }) => status === 'in service' && (retestOn === null || retestOn <= today),
  );
  return inDueOrder(
    due.map(({ id, name, testedOn, retestOn }) => ({
      id,
      name,
      testedOn,
      ...(testedOn !== null && retestOn === null && { isVoid: true }),
    })),
  );
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
    if (isDatedAhead(testedOn, today)) continue;
    if (testedOn > (newest.get(rigId) ?? '')) newest.set(rigId, testedOn);
  }
  const last = aYearBefore(today);
  const due = rigs
    .filter(({ inService, ratedGpm }) => inService && ratedGpm !== undefined)
    .map(({ id, name }) => ({ id, name, testedOn: newest.get(id) ?? null }))
    .filter(({ testedOn }) => testedOn === null || testedOn <= last);
  return inDueOrder(due);
}

/** Rigs and stores of hose that belong to none. */
const NO_RIG = 'Hose on no rig';

export interface DueHose extends DueTest {
  /** Lengths in service whose service test is due. */
  count: number;
}

/**
 * Hose in service whose newest service test is a year old or older, that failed it, or that has none:
 * by the rig that carries it, since a rig's hose is tested together. A length's age by its oldest test.
 * @param today ISO date
 */
export function hoseDue(
  lengths: readonly Stored<'hose'>[],
  rigs: readonly Stored<'rigs'>[],
  today: string,
): DueHose[] {
  const last = aYearBefore(today);
  const byRig = new Map<string, DueHose>();
  for (const { retiredOn, serviceTests, rigId } of lengths) {
    if (retiredOn !== undefined && retiredOn <= today) continue;
    const tests = serviceTests.filter(({ testedOn }) => !isDatedAhead(testedOn, today));
    const newest = tests.reduce<(typeof tests)[number] | undefined>(
      (a, b) => (a && a.testedOn > b.testedOn ? a : b),
      undefined,
    );
    if (newest?.passed && newest.testedOn > last) continue;
    const id = rigId ?? '';
    const rig = rigs.find((one) => one.id === rigId);
    const before = byRig.get(id);
    const testedOn = newest?.testedOn ?? null;
    byRig.set(id, {
      id,
      name: rig?.name ?? NO_RIG,
      count: (before?.count ?? 0) + 1,
      testedOn: before ? older(before.testedOn, testedOn) : testedOn,
    });
  }
  const order = inDueOrder([...byRig.values()]);
  return order.map(({ id }) => byRig.get(id)!);
}

/** Never tested is the oldest of all. */
const older = (a: string | null, b: string | null): string | null =>
  a === null || b === null ? null : a < b ? a : b;

const collator = new Intl.Collator('en', { numeric: true });

function inDueOrder(due: readonly DueTest[]): DueTest[] {
  return due
    .map(({ id, name, testedOn, isVoid }) => ({
      id,
      name,
      testedOn,
      ...(isVoid && { isVoid }),
    }))
    .sort(
      (a, b) =>
        (a.testedOn ?? '9999').localeCompare(b.testedOn ?? '9999') ||
        collator.compare(a.name, b.name),
    );
}
