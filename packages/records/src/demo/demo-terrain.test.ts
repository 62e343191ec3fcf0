import { expect, it } from 'vitest';
import { terrainFrom } from '../elevation/index.ts';
import { openStore } from '../store/index.ts';
import { demoTerrain } from './demo-terrain.ts';
import { fillDemo } from './fill-demo.ts';
import { demoElevationFt, districtCentre, lonLatOf } from './ground.ts';

it('reads, by a GeoTIFF library, as the ground that the district stands on', async () => {
  const { name, bytes } = demoTerrain();
  const terrain = await terrainFrom(bytes, { name });
  const [west, south, east, north] = terrain.bounds;
  expect([(west + east) / 2, (south + north) / 2]).toEqual([
    expect.closeTo(districtCentre.longitude, 6),
    expect.closeTo(districtCentre.latitude, 6),
  ]);
  expect(terrain.cellFt).toBeGreaterThan(55);
  for (let eastFt = -11_000; eastFt <= 11_000; eastFt += 970) {
    for (let northFt = -11_000; northFt <= 11_000; northFt += 970) {
      const [longitude, latitude] = lonLatOf([eastFt, northFt]);
      const [read, ground] = [
        terrain.elevationFt(longitude, latitude),
        demoElevationFt(longitude, latitude),
      ];
      // Straight between cells 60 ft apart; the ground bends by at most 0.1 ft in so short a way.
      expect(Math.abs(read! - ground!)).toBeLessThan(0.5);
    }
  }
});

it('is there with the invented district, whose hydrants stand on it', async () => {
  const store = await openStore({ memory: true });
  await fillDemo(store);
  const file = await store.terrainFile();
  expect(file?.name).toContain('invented');
  const pieces: Uint8Array[] = [];
  for await (const piece of store.terrainPieces()) pieces.push(piece);
  const terrain = await terrainFrom(Buffer.concat(pieces), file!);
  const heights: number[] = [];
  for await (const { elevationFt, longitude, latitude } of store.all('hydrants')) {
    const read = terrain.elevationFt(longitude, latitude)!;
    heights.push(read);
    // A hydrant's height is its outlets', two feet above the ground.
    expect(Math.abs(read + 2 - elevationFt!)).toBeLessThan(0.5);
  }
  // Ups and downs to lay hose over.
  expect(Math.max(...heights) - Math.min(...heights)).toBeGreaterThan(40);
  await store.putTerrainFile({ name: 'ours.tif' }, [new Uint8Array(3)]);
  await fillDemo(store);
  expect(await store.terrainFile()).toMatchObject({ name: 'ours.tif' });
  await store.close();
});
