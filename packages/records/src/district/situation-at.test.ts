import { chooseSupply } from '@plugside/fireground';
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

async function byName(name: string): Promise<Stored<'buildings'>> {
  for await (const one of store.all('buildings')) if (one.name === name) return one;
  throw new Error(`No ${name} in the invented district.`);
}

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

  it('counts hydrants with a flow test alone, and tells the others as not to be counted on', async () => {
    const before = (await situationAt(store, building.id)).situation!;
    const { longitude, latitude } = building;
    const added = await store.create('hydrants', {
      name: 'H-untested',
      longitude,
      latitude: latitude + 0.0001,
      steamerIn: 4.5,
    });
    const { situation } = await situationAt(store, building.id);
    expect(situation!.hydrants.map(({ hydrant }) => hydrant.name)).toEqual(
      before.hydrants.map(({ hydrant }) => hydrant.name),
    );
    expect(situation!.untested).toEqual([
      expect.objectContaining({ name: 'H-untested', why: expect.stringContaining('no flow test') }),
    ]);
    const { refused } = chooseSupply(situation!);
    const told = refused.filter(({ title }) => title.startsWith('H-untested'));
    expect(told).toHaveLength(1);
    expect(told[0]!.reason).toMatch(
      /no flow test on record: test it.*The lay from H-untested is \d/,
    );
    await store.remove('hydrants', added.id, added.version);
  });

  it('joins a building to the street of its address where another is nearer', async () => {
    const store14 = await byName('14 Market Avenue South');
    const { situation, streets, recordIds } = await situationAt(store, store14.id);
    const first = situation!.hydrants[0]!;
    const record = (await store.get('hydrants', recordIds[first.hydrant.id]!))!;
    expect(streets[first.hydrant.id]).toBe('Market Avenue South');
    // The way is off the street at both ends and along it between: by the map no more than both legs.
    const straightFt = crowFt(
      [record.longitude, record.latitude],
      [store14.longitude, store14.latitude],
    );
    expect(first.lengthFt).toBeLessThan(2 * straightFt);
  });

  it('tells of hydrants that are near and not by street', async () => {
    const { notices } = await situationAt(store, (await byName('45 Basalt Drive')).id);
    const told = notices.find(({ code }) => code === 'near-not-by-street');
    expect(told!.text).toMatch(/H-396, 229 ft in a straight line and 1,\d\d\d ft by street/);
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
