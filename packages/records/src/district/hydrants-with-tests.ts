import type { Stored } from '../model/index.ts';
import { longestLayFt } from '../planning/index.ts';
import type { RecordStore } from '../store/index.ts';
import {
  frontageOf,
  type StreetNetwork,
  type UsableHydrant,
  usableHydrants,
} from '../streets/index.ts';
import { planTest } from './plan-tests.ts';

/** A hydrant by hose length with its tests. */
export interface TestedHydrant {
  route: UsableHydrant<Stored<'hydrants'>>;
  /** The flow test that plans use; none where it has none. */
  test: Stored<'flow-tests'> | undefined;
  /** All of them. */
  tests: Stored<'flow-tests'>[];
}

/** As often as the count is doubled while hydrants lack tests: 8 times the count at most. */
const DOUBLINGS = 3;

/**
 * The nearest hydrants by hose until `count` of them are in service and have a flow test. The others on
 * the way to the last of those are in the list too, so that they can be told; past the longest lay nobody
 * looks for more.
 */
export async function hydrantsWithTests(
  store: RecordStore,
  network: StreetNetwork,
  hydrants: readonly Stored<'hydrants'>[],
  building: Stored<'buildings'>,
  count: number,
): Promise<TestedHydrant[]> {
  const known = new Map<string, Omit<TestedHydrant, 'route'>>();
  const frontage = frontageOf(building);
  const found: TestedHydrant[] = [];
  for (let doubled = 0; doubled <= DOUBLINGS; doubled++) {
    const asked = count * 2 ** doubled;
    const routes = usableHydrants(network, hydrants, building, { count: asked, frontage });
    found.length = 0;
    let tested = 0;
    for (const route of routes) {
      const one = known.get(route.target.id) ?? (await testsOf(store, route.target));
      known.set(route.target.id, one);
      found.push({ route, ...one });
      if (route.usable && one.test) tested += 1;
      if (tested === count) return found;
    }
    const all = routes.filter(({ usable }) => usable).length < asked;
    if (all || (routes.at(-1)?.lengthFt ?? 0) > longestLayFt) break;
  }
  return found;
}

async function testsOf(
  store: RecordStore,
  hydrant: Stored<'hydrants'>,
): Promise<Omit<TestedHydrant, 'route'>> {
  const tests: Stored<'flow-tests'>[] = [];
  for await (const one of store.all('flow-tests', { hydrantId: hydrant.id })) tests.push(one);
  return { test: await planTest(store, hydrant), tests };
}
