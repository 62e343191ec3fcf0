import { flowTestResult, type Hydrant, newHydrant, planSupply } from '@plugside/fireground';
import { type Fields, isFilledIn } from '../model/index.ts';
import { notice, type PlanningNotice } from './notice.ts';

export interface RecordedHydrant {
  /** None where an `error` says why no plan can be drawn from it. */
  hydrant: Hydrant | undefined;
  /** It has a large outlet on record. */
  steamer: boolean;
}

/**
 * A plan's hydrant from its record and its flow test. Why there is none, that it is out of
 * service, that it has no large outlet and what there is to doubt in its test go to `notices`.
 *
 * @param elevationFt of its outlets [ft]
 * @param today ISO date, to be told when the test is old
 */
export function hydrantFromRecord(
  id: string,
  record: Fields<'hydrants'>,
  test: Fields<'flow-tests'> | undefined,
  elevationFt: number,
  notices: PlanningNotice[],
  today?: string,
): RecordedHydrant {
  const steamer = record.steamerIn !== undefined;
  const supply = test && planSupply(test);
  if (!supply) {
    notices.push(
      test
        ? notice(
            'error',
            'test-not-usable',
          )`The flow test of ${record.name} on ${test.testedOn} gives no supply curve. See what is wrong with it, or pick another test.`
        : notice(
            'error',
            'no-flow-test',
          )`${record.name} has no flow test on record. Enter one, or pick another hydrant.`,
    );
    return { hydrant: undefined, steamer };
  }
  notices.push(...testDoubts(record, test, today));
  if (record.status === 'out of service') {
    const why = record.statusReason ? ` (${record.statusReason})` : '';
    notices.push(notice('caution', 'out-of-service')`${record.name} is out of service${why}.`);
  }
  if (!steamer && record.sideOutlets === 0) {
    notices.push(
      notice(
        'error',
        'no-outlet',
      )`${record.name} has no outlet on record. Enter its outlets, or pick another hydrant.`,
    );
    return { hydrant: undefined, steamer };
  }
  if (!steamer) {
    notices.push(
      notice(
        'caution',
        'no-steamer',
      )`${record.name} has no large outlet on record. The plan takes one ${`${record.sideOutletIn}`} in outlet.`,
    );
  }
  if (isFilledIn('hydrants', record, 'sideOutlets')) {
    notices.push(
      notice(
        'fact',
        'outlets-assumed',
      )`Nobody has entered the side outlets of ${record.name}: the plan takes the default, ${`${record.sideOutlets}`} of ${`${record.sideOutletIn}`} in.`,
    );
  }
  const hydrant = newHydrant(id, {
    ...supply,
    // Pitots are read to a psi or so: fractions of a gpm mean nothing.
    testGpm: Math.round(supply.testGpm),
    name: record.name,
    elevationFt,
    sideOutlets: record.sideOutlets,
    ...(record.main !== undefined && { main: record.main }),
    ...(record.mainFedFrom !== undefined && { mainFedFrom: record.mainFedFrom }),
    ...(record.steamerLoss && { steamerLoss: record.steamerLoss }),
    ...(record.sideLoss && { sideLoss: record.sideLoss }),
  });
  return { hydrant, steamer };
}

/** What makes a usable test a weak ground for a plan: its drop, its pitots, its age. */
export function testDoubts(
  { name }: Pick<Fields<'hydrants'>, 'name'>,
  test: Fields<'flow-tests'>,
  today: string | undefined,
): PlanningNotice[] {
  const of = `${name}, test of ${test.testedOn}: `;
  return flowTestResult(test, { today })
    .notices.filter(({ level }) => level === 'caution')
    .map((one) => ({ ...one, parts: [of, ...one.parts], text: of + one.text }));
}
