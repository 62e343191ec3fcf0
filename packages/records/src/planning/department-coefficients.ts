import {
  type DepartmentValues,
  fitCoefficient,
  formatHoseSize,
  isDatedAhead,
  parseHoseSize,
  shownC,
} from '@plugside/fireground';
import type { Fields } from '../model/index.ts';
import type { PlanningNotice } from './notice.ts';
import { testsAhead } from './tests-ahead.ts';

/**
 * The friction coefficients that a department has adopted from its own hose tests, the newest of
 * each size. A test whose readings make no sense, or that is dated after today, is left out; the
 * catalogue's value then counts.
 */
export function departmentCoefficients(
  tests: readonly Fields<'hose-tests'>[],
): NonNullable<DepartmentValues['coefficients']> {
  const adopted: NonNullable<DepartmentValues['coefficients']> = {};
  const oldestFirst = [...tests].sort((a, b) => a.testedOn.localeCompare(b.testedOn));
  for (const test of oldestFirst) {
    const size = parseHoseSize(test.size);
    if (!test.adopted || !size || isDatedAhead(test.testedOn)) continue;
    const { coefficient } = fitCoefficient(test.points, size);
    if (coefficient === null) continue;
    const text = `Own hose test, ${test.points.length} readings`;
    // No more digits than the readings bear, and those that are shown.
    adopted[size] = {
      coefficient: Number(shownC(coefficient)),
      origin: { kind: 'measured', text, date: test.testedOn },
    };
  }
  return adopted;
}

/** Adopted hose tests that count for nothing yet. @param today ISO date; the machine's where left out */
export function hoseTestsAhead(
  tests: readonly Fields<'hose-tests'>[],
  today?: string,
): PlanningNotice[] {
  return tests
    .filter(({ adopted }) => adopted)
    .flatMap((test) => {
      const size = parseHoseSize(test.size);
      const hose = size ? formatHoseSize(size) : test.size;
      return testsAhead(`The adopted test of ${hose} hose`, [test], today);
    });
}
