/** A made-up district of 20,000 hydrants on a grid of streets, written by the project's own store. */
import { openStore, type RecordStore } from '@plugside/records';
import { seededRandom } from './measure.ts';

export const LARGE_HYDRANTS = 20_000;
const TESTED = 5_000;
const BUILDINGS = 2_000;
/** Degrees; about 330 ft north to south. */
const BLOCK = 0.0009;
const BLOCKS = 158;
/** About 60 ft. */
const HALF_BUILDING = 0.00008;
const SIZE = BLOCK * BLOCKS;

/** @param file a new SQLite file */
export async function fillLargeDistrict(file: string): Promise<void> {
  const store = await openStore({ file });
  try {
    await store.create('settings', { name: 'district', value: { name: 'A large district' } });
    await store.merge('stations', [
      { name: 'Station 1', longitude: SIZE / 2, latitude: SIZE / 2 + BLOCK / 3 },
    ]);
    await store.merge('streets', streets());
    await store.merge('hydrants', hydrants());
    await store.merge('flow-tests', await flowTests(store));
    await store.merge('buildings', buildings());
  } finally {
    await store.close();
  }
}

function* streets() {
  for (let n = 0; n <= BLOCKS; n += 1) {
    const stops = Array.from({ length: BLOCKS + 1 }, (_, k) => k * BLOCK);
    yield {
      name: `${n} Street`,
      path: stops.map((east): [number, number] => [east, n * BLOCK]),
    };
    yield {
      name: `${n} Avenue`,
      path: stops.map((north): [number, number] => [n * BLOCK, north]),
    };
  }
}

/** On their streets, each at a place of its own. */
function* hydrants() {
  const random = seededRandom(1);
  for (let n = 0; n < LARGE_HYDRANTS; n += 1) {
    const along = random() * SIZE;
    const across = Math.floor(random() * (BLOCKS + 1)) * BLOCK;
    const [longitude, latitude] = n % 2 ? [along, across] : [across, along];
    yield {
      name: `Plug ${String(n).padStart(5, '0')}`,
      longitude,
      latitude,
      mainIn: [6, 8, 12][n % 3]!,
      status: n % 20 === 0 ? ('out of service' as const) : ('in service' as const),
      externalSource: 'bench',
      externalId: String(n),
    };
  }
}

async function flowTests(store: RecordStore) {
  const tests = [];
  for await (const { id } of store.all('hydrants')) {
    if (tests.length >= TESTED) break;
    tests.push({
      hydrantId: id,
      testedOn: '2025-05-01',
      staticPsi: 68,
      residualPsi: 30 + (tests.length % 30),
      statedFlowGpm: 600 + ((tests.length * 37) % 1200),
    });
  }
  return tests;
}

/** In the middle of their blocks' southern sides. */
function* buildings() {
  for (let n = 0; n < BUILDINGS; n += 1) {
    const [column, row] = [(n * 7) % BLOCKS, (n * 13 + Math.floor(n / BLOCKS)) % BLOCKS];
    const [x, y] = [(column + 0.5) * BLOCK, (row + 0.25) * BLOCK];
    const h = HALF_BUILDING;
    const ring = [
      [x - h, y - h],
      [x + h, y - h],
      [x + h, y + h],
      [x - h, y + h],
      [x - h, y - h],
    ] as [number, number][];
    yield { name: `House ${n}`, longitude: x, latitude: y, footprint: [ring], neededGpm: 1500 };
  }
}
