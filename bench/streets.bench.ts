/** How long it takes to find hydrants by hose length, in a district of 20,000 hydrants and 50,000 pieces of street. */
import {
  buildStreetNetwork,
  hoseRoutes,
  type Place,
  routeVia,
  usableHydrants,
} from '@plugside/records/streets';
import { measure, printTable, seededRandom } from './measure.ts';

const random = seededRandom(1);
/** Degrees; about 330 ft north to south. */
const BLOCK = 0.0009;
const BLOCKS = 158;
const stops = Array.from({ length: BLOCKS + 1 }, (_, i) => i * BLOCK);
const rows = stops.map((north) => ({ path: stops.map((east) => [east, north] as const) }));
const columns = stops.map((east) => ({ path: stops.map((north) => [east, north] as const) }));
const streets = [...rows, ...columns];
const anywhere = () => ({
  longitude: random() * BLOCK * BLOCKS,
  latitude: random() * BLOCK * BLOCKS,
});
const hydrants = Array.from({ length: 20_000 }, (_, i) => ({
  ...anywhere(),
  status: i % 20 === 0 ? ('out of service' as const) : ('in service' as const),
}));

const network = buildStreetNetwork(streets);
const pieces = network.graph.from.length;
printTable(`Building the network of ${pieces.toLocaleString('en')} pieces`, [
  measure('build', () => buildStreetNetwork(streets)),
]);

// Every hydrant's place on its street is looked up once, as in a session.
hoseRoutes(network, anywhere(), hydrants);
/** What is asked of a building, with no streets to go along: the least that any answer costs. */
function nearestAsTheCrowFlies(place: Place, count: number): Place[] {
  const shrink = Math.cos((place.latitude * Math.PI) / 180) ** 2;
  const far = ({ longitude, latitude }: Place) =>
    (longitude - place.longitude) ** 2 * shrink + (latitude - place.latitude) ** 2;
  return hydrants
    .filter(({ status }) => status === 'in service')
    .map((hydrant) => ({ hydrant, far: far(hydrant) }))
    .sort((a, b) => a.far - b.far)
    .slice(0, count)
    .map(({ hydrant }) => hydrant);
}

printTable(
  `From a building to ${hydrants.length.toLocaleString('en')} hydrants (ratio: to the crow's way)`,
  [
    measure('nearest 10 as the crow flies, all looked at', () =>
      nearestAsTheCrowFlies(anywhere(), 10),
    ),
    measure('nearest 10 usable by hose', () =>
      usableHydrants(network, hydrants, anywhere(), { count: 10 }),
    ),
    measure('nearest 5 usable', () => usableHydrants(network, hydrants, anywhere(), { count: 5 })),
    measure('nearest 5 usable, network new', () =>
      usableHydrants({ ...network }, hydrants, anywhere(), { count: 5 }),
    ),
    measure('all within 2,000 ft', () =>
      hoseRoutes(network, anywhere(), hydrants, { maxFt: 2000 }),
    ),
    measure('nearest point of a street', () => {
      const { longitude, latitude } = anywhere();
      return network.nearestPoint(longitude, latitude);
    }),
  ],
);

const here = { longitude: 60 * BLOCK, latitude: 60 * BLOCK };
const corner = (east: number, north: number) => ({
  longitude: (60 + east) * BLOCK,
  latitude: (60 + north) * BLOCK,
});
printTable('A lay dragged on the map', [
  measure('through one place, 6 blocks', () =>
    routeVia(network, [here, corner(2, 2 * random()), corner(3, 3)]),
  ),
]);
