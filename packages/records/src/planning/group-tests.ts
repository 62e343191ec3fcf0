import { type GroupTest, planSupply } from '@plugside/fireground';
import type { Fields } from '../model/index.ts';

/** A hydrant of a plan and the record behind it. */
export interface NamedHydrant {
  /** In the plan. */
  id: string;
  record: Pick<Fields<'hydrants'>, 'name'> & { id: string };
  /** Of its outlets [ft]. */
  elevationFt: number;
}

/**
 * Tests on record in which two or more of a plan's hydrants flowed together: what their main gives
 * them all, better known than from single tests. Flowing hydrants are told by their names, as tests
 * write them; an outlet without a name is the gauged hydrant's own.
 */
export function groupTests(
  hydrants: readonly NamedHydrant[],
  tests: readonly Fields<'flow-tests'>[],
): GroupTest[] {
  return tests.flatMap((test) => {
    const gauged = hydrants.find(({ record }) => record.id === test.hydrantId);
    const flowed = hydrants.filter((one) =>
      test.flowing.some(({ hydrant }) => (hydrant ?? gauged?.record.name) === one.record.name),
    );
    if (flowed.length < 2) return [];
    const supply = planSupply(test);
    if (!supply) return [];
    const { staticPsi, residualPsi, testGpm, testedOn } = supply;
    return [
      {
        hydrants: flowed.map(({ id }) => id),
        ...(gauged && { elevationFt: gauged.elevationFt }),
        staticPsi,
        residualPsi,
        testGpm: Math.round(testGpm),
        testedOn,
      },
    ];
  });
}
