import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fillDemo } from '../demo/index.ts';
import type { Stored } from '../model/index.ts';
import { openStore, type RecordStore } from '../store/index.ts';
import { crowFt } from '../streets/ellipsoid.ts';
import { situationAt } from './situation-at.ts';

let store: RecordStore;
let building: Stored<'buildings'>;

beforeAll(async () => {
  store = await openStore({ memory: true });
  await fillDemo(store);
  for await (const one of store.all('buildings')) {
    if ((one.neededGpm ?? 0) > 1500) {
      building = one;
      break;
    }
  }
}, 60_000);
afterAll(() => store.close());

describe('the situation at a building of the invented district', () => {
  it('has hydrants in order of hose, none nearer than the crow flies', async () => {
    const { situation, recordIds } = await situationAt(store, building.id);
    expect(situation!.demandGpm).toBe(building.neededGpm);
    expect(situation!.invented).toBe(true);
    const lengths = situation!.hydrants.map(({ lengthFt }) => lengthFt);
    expect(lengths.length).toBeGreaterThanOrEqual(5);
    expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
    for (const { hydrant, lengthFt } of situation!.hydrants) {
      const record = (await store.get('hydrants', recordIds[hydrant.id]!))!;
      const straightFt = crowFt(
        [record.longitude, record.latitude],
        [building.longitude, building.latitude],
      );
      expect(lengthFt).toBeGreaterThanOrEqual(Math.floor(straightFt));
      expect(hydrant.name).toBe(record.name);
    }
  });

  it('has the rigs in order of arrival, with supply hose alone', async () => {
    const { situation } = await situationAt(store, building.id);
    const arrivals = situation!.rigs.map(({ arrivesMin }) => arrivesMin);
    expect(arrivals).toEqual([...arrivals].sort((a, b) => a - b));
    expect(situation!.rigs).toHaveLength(5);
    for (const { hose } of situation!.rigs) {
      expect(hose.some((load) => load.hose === '1-3/4')).toBe(false);
    }
  });

  it('takes the demand that is given', async () => {
    const { situation } = await situationAt(store, building.id, { demandGpm: 777, hydrants: 3 });
    expect(situation!.demandGpm).toBe(777);
  });

  it('refuses what it cannot answer', async () => {
    await expect(situationAt(store, '01HV00000000000000000000B0')).rejects.toThrow(/building/);
    await expect(situationAt(store, building.id, { hydrants: 0 })).rejects.toThrow(/1 to 40/);
  });
});
