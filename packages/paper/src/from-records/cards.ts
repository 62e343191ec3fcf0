import { flowTestResult, type UnitSystem } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import { type PickedRig, testsAhead } from '@plugside/records/planning';
import { hoseRoutes, type StreetNetwork } from '@plugside/records/streets';
import type { HydrantCard, Neighbour } from '../hydrant-card/data.ts';
import { hydrantCardFor } from '../hydrant-card/hydrant-card-for.ts';
import { cardRigs, type DepartmentRecords, layingRigs } from './department.ts';

type FlowTest = Stored<'flow-tests'>;
type DatedTests = readonly Pick<FlowTest, 'testedOn'>[] | undefined;

export interface CardsRequest {
  records: DepartmentRecords;
  /** Those to print, in that order. */
  hydrants: readonly Stored<'hydrants'>[];
  /** The neighbours are among these; the hydrant itself may be too. */
  around: readonly Stored<'hydrants'>[];
  /** The flow test that plans use. */
  testOf: (hydrant: Stored<'hydrants'>) => FlowTest | undefined | Promise<FlowTest | undefined>;
  /** Its tests that are dated ahead of today, told on its card; left out: none. */
  testsAheadOf?: (hydrant: Stored<'hydrants'>) => DatedTests | Promise<DatedTests>;
  streets: StreetNetwork;
  /** Left out: as `cardRigs` picks. */
  attack?: PickedRig | undefined;
  booster?: PickedRig | undefined;
  /** ISO date. */
  today: string;
  invented: boolean;
  units?: UnitSystem;
}

const NEIGHBOURS = 6;
/** A street farther off is not the hydrant's own [ft]. Ours. */
const STREET_WITHIN_FT = 150;

/** Cards made one by one, as they are asked for; nothing is solved ahead. */
export async function* hydrantCardsFrom(request: CardsRequest): AsyncGenerator<HydrantCard> {
  const { records, hydrants, testOf, testsAheadOf, today, invented, units } = request;
  const usual = cardRigs(records, today);
  const carriers = layingRigs(records, today);
  for (const hydrant of hydrants) {
    const { longitude, latitude } = hydrant;
    const street = request.streets.nearestName(longitude, latitude, STREET_WITHIN_FT);
    yield hydrantCardFor({
      hydrant,
      ...(street && { street }),
      test: await testOf(hydrant),
      attack: request.attack ?? usual.attack,
      booster: request.booster ?? usual.booster,
      carriers,
      notices: [
        ...testsAhead(
          `The flow test of ${hydrant.name}`,
          (await testsAheadOf?.(hydrant)) ?? [],
          today,
        ),
        ...(records.notices ?? []),
      ],
      department: records.department,
      neighbours: await neighboursOf(hydrant, request),
      today,
      invented,
      ...(units && { units }),
    });
  }
}

/** The nearest others by hose, with what each gives. */
async function neighboursOf(
  hydrant: Stored<'hydrants'>,
  { around, testOf, streets }: CardsRequest,
): Promise<Neighbour[]> {
  const others = around.filter(({ id }) => id !== hydrant.id);
  if (others.length === 0) return [];
  const neighbours: Neighbour[] = [];
  for (const route of hoseRoutes(streets, hydrant, others, { count: NEIGHBOURS })) {
    const { target, lengthFt } = route;
    const test = await testOf(target);
    const q20Gpm = test && flowTestResult(test).q20Gpm;
    neighbours.push({
      name: target.name,
      alongFt: lengthFt,
      ...(q20Gpm !== null && q20Gpm !== undefined && { q20Gpm }),
      ...(target.status === 'out of service' && { outOfService: true }),
    });
  }
  return neighbours;
}
