import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { problemIn, type TestServer, testServer } from '../test-server.ts';
import { districtTerrain } from './district-terrain.ts';
import { geotiff } from './test-geotiff.ts';

let server: TestServer;

beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

const load = (body: Uint8Array<ArrayBuffer> | string, query = 'name=ground.tif') =>
  server.ask(`/elevation?${query}`, { method: 'POST', body });
const height = async (lon: number, lat: number) =>
  (await (await server.ask(`/elevation?lon=${lon}&lat=${lat}`)).json()) as unknown;

describe('the height of the ground', () => {
  it('is not known where nothing is loaded', async () => {
    expect(await height(-71, 42)).toEqual({ elevationFt: null, name: null });
    const answer = await server.ask('/elevation');
    expect(await answer.json()).toEqual({ name: null, bounds: null, cellFt: null });
  });

  it('comes from the terrain that was loaded, in feet', async () => {
    const answer = await load(geotiff(2, [100, 200, 300, 400]));
    expect(answer.status).toBe(201);
    const told = (await answer.json()) as { name: string; bounds: number[] };
    expect(told.name).toBe('ground.tif');
    for (const [n, edge] of [-71, 41.98, -70.98, 42].entries()) {
      expect(told.bounds[n]).toBeCloseTo(edge, 9);
    }
    // 100 m at the north-west cell's centre are 100/0.3048 = 328.084 ft.
    const { elevationFt } = (await height(-70.995, 41.995)) as { elevationFt: number };
    expect(elevationFt).toBeCloseTo(328.084, 2);
    expect(await height(-70, 41.995)).toEqual({ elevationFt: null, name: 'ground.tif' });

    const places = [
      [-70.995, 41.995],
      [-70.985, 41.985],
      [-60, 40],
    ];
    const many = await server.ask('/elevation/places', { json: { places } });
    const { elevationFt: heights } = (await many.json()) as { elevationFt: (number | null)[] };
    // Between cells' centres that are 0.01° apart the position's rounding costs under 0.001 ft.
    expect(heights.map((one) => one && Number(one.toFixed(1)))).toEqual([328.1, 1312.3, null]);
  });

  it('stays as it was when another file is refused', async () => {
    const answer = await load('no picture');
    expect(answer.status).toBe(422);
    expect((await problemIn(answer)).detail).toContain('ground.tif');
    expect((await load(geotiff(1, [1]), 'name=a.tif&unit=yd')).status).toBe(400);
    expect(await height(-70.995, 41.995)).toMatchObject({ name: 'ground.tif' });
  });

  it.each(['lon=1', 'lon=x&lat=2', 'lon=181&lat=0', 'lon=&lat=', 'lon=0&lat=-91'])(
    'refuses ?%s',
    async (query) => {
      expect((await server.ask(`/elevation?${query}`)).status).toBe(400);
    },
  );

  it.each([{}, { places: [[1]] }, { places: [[200, 0]] }, { places: 'all' }])(
    'refuses %j',
    async (json) => {
      expect((await server.ask('/elevation/places', { json })).status).toBe(422);
    },
  );

  it('is gone when taken away', async () => {
    expect((await server.ask('/elevation', { method: 'DELETE' })).status).toBe(204);
    expect(await height(-70.995, 41.995)).toEqual({ elevationFt: null, name: null });
  });
});

describe('loaded terrain', () => {
  const upload = () => {
    const file = join(server.folder, 'upload.tif');
    writeFileSync(file, geotiff(1, [100]));
    return file;
  };
  afterEach(() => server.store.removeTerrainFile());

  it('is there after the next start, in the unit that was asked for', async () => {
    await districtTerrain(server.store).load(upload(), { name: 'a.tif', unit: 'ft' });
    const again = await districtTerrain(server.store).current();
    expect(again?.name).toBe('a.tif');
    expect(again?.elevationFt(-70.995, 41.995)).toBeCloseTo(100, 6);
    await districtTerrain(server.store).load(upload(), { name: 'a.tif' });
    const metres = await districtTerrain(server.store).current();
    expect(metres?.elevationFt(-70.995, 41.995)).toBeCloseTo(328.084, 2);
  });

  it('is seen by another server on the same records, and its going too', async () => {
    const [one, other] = [districtTerrain(server.store), districtTerrain(server.store)];
    expect(await other.current()).toBeUndefined();
    await one.load(upload(), { name: 'a.tif' });
    expect((await other.current())?.name).toBe('a.tif');
    await other.remove();
    expect(await one.current()).toBeUndefined();
  });

  it('that an earlier version kept beside the records is taken in, once', async () => {
    const beside = join(server.folder, 'records.sqlite.terrain.tif');
    const kept = beside.replace('.tif', '.ft.tif');
    writeFileSync(kept, geotiff(1, [100]));
    const terrain = await districtTerrain(server.store, beside).current();
    expect(terrain?.elevationFt(-70.995, 41.995)).toBeCloseTo(100, 6);
    expect(existsSync(kept)).toBe(false);
    expect(await server.store.terrainFile()).toMatchObject({ unit: 'ft' });
    writeFileSync(kept, geotiff(1, [900]));
    const second = await districtTerrain(server.store, beside).current();
    expect(second?.elevationFt(-70.995, 41.995)).toBeCloseTo(100, 6);
  });
});
