import type { DepartmentValues } from '../plan/plan.ts';
import { hoseSizes } from '../units/hose-size.ts';
import { fitCoefficient, type HoseReading, shownC } from './hose-coefficient.ts';

/** A hose test as a department writes it down. */
export interface HoseTestEntry {
  /** Catalogue size, for instance `5`, `1-3/4`. */
  size: string;
  /** ISO date. */
  testedOn: string;
  points: readonly HoseReading[];
  /** Plans use its coefficient for the size. */
  adopted: boolean;
}

/**
 * The coefficients that a department has adopted, as a plan's `department.coefficients` takes
 * them: per size the newest adopted test that gives one. Tests not adopted change nothing.
 */
export function adoptedCoefficients(
  tests: readonly HoseTestEntry[],
): NonNullable<DepartmentValues['coefficients']> {
  const found: NonNullable<DepartmentValues['coefficients']> = {};
  const oldestFirst = [...tests].sort((a, b) => a.testedOn.localeCompare(b.testedOn));
  for (const test of oldestFirst) {
    const size = hoseSizes.find((each) => each === test.size);
    if (!test.adopted || size === undefined) continue;
    const { coefficient, plusMinus } = fitCoefficient(test.points, size);
    if (coefficient === null) continue;
    const count = test.points.length;
    const range = plusMinus === null ? '' : `, ± ${shownC(plusMinus)} at 95 %`;
    found[size] = {
      coefficient,
      origin: {
        kind: 'measured',
        text: `Own hose test, ${count} ${count === 1 ? 'reading' : 'readings'}${range}`,
        date: test.testedOn,
      },
    };
  }
  return found;
}
