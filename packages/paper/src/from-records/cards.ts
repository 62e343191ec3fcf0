import { flowTestResult, type UnitSystem } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import type { PickedRig } from '@plugside/records/planning';
import { hoseRoutes, type StreetNetwork } from '@plugside/records/streets';
import type { HydrantCard, Neighbour } from '../hydrant-card/data.ts';
import { hydrantCardFor } from '../hydrant-card/hydrant-card-for.ts';
import { cardRigs, type DepartmentRecords } from './department.ts';

export interface CardsRequest {
  records: DepartmentRecords;
  /** Those to print, in that order. */
  hydrants: readonly Stored<'hydrants'>[];
  /** All there are: the neighbours are among them. */
  everyHydrant: readonly Stored<'hydrants'>[];
  /** The flow test that plans use, by hydrant. */
  tests: ReadonlyMap<string, Stored<'flow-tests'>>;
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

/** Cards made one by one, as they are asked for; nothing is solved ahead. */
export function* hydrantCardsFrom(request: CardsRequest): Generator<HydrantCard> {
  const { records, hydrants, tests, today, invented, units } = request;
  const usual = cardRigs(records);
  for (const hydrant of hydrants) {
    yield hydrantCardFor({
      hydrant,
      test: tests.get(hydrant.id),
      attack: request.attack ?? usual.attack,
      booster: request.booster ?? usual.booster,
      department: records.department,
      neighbours: neighboursOf(hydrant, request),
      today,
      invented,
      ...(units && { units }),
    });
  }
}

/** The nearest others by hose, with what each gives. */
function neighboursOf(
  hydrant: Stored<'hydrants'>,
  { everyHydrant, tests, streets }: CardsRequest,
): Neighbour[] {
  const others = everyHydrant.filter(({ id }) => id !== hydrant.id);
  if (others.length === 0) return [];
  return hoseRoutes(streets, hydrant, others, { count: NEIGHBOURS }).map(({ target, lengthFt }) => {
    const test = tests.get(target.id);
    const q20Gpm = test && flowTestResult(test).q20Gpm;
    return {
      name: target.name,
      alongFt: lengthFt,
      ...(q20Gpm !== null && q20Gpm !== undefined && { q20Gpm }),
      ...(target.status === 'out of service' && { outOfService: true }),
    };
  });
}
