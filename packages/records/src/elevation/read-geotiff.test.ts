import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readTerrain } from './read-geotiff.ts';
import { type Raster, terrainOf } from './terrain.ts';

const data = (name: string) => fileURLToPath(new URL(`../../test-data/${name}`, import.meta.url));

const gdal = readFileSync(data('hydrant_elevations_gdal.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [id, longitude, latitude, , , metres] = line.split(',');
    return { id, longitude: Number(longitude), latitude: Number(latitude), metres: Number(metres) };
  });

describe('terrain of SRTM', () => {
  it('is what GDAL reads at each of 479 hydrants', async () => {
    const terrain = await readTerrain(data('srtm.tif'));
    expect(gdal).toHaveLength(479);
    for (const { id, longitude, latitude, metres } of gdal) {
      const feet = terrain.elevationFt(longitude, latitude, 'nearest');
      expect(Number(feet) * 0.3048, id).toBeCloseTo(metres, 6);
    }
  });

  it('between centres stays within the cells around', async () => {
    const terrain = await readTerrain(data('srtm.tif'));
    for (const { longitude, latitude } of gdal) {
      const around: number[] = [];
      const cell = 0.1 / 120;
      for (const x of [-cell, 0, cell]) {
        for (const y of [-cell, 0, cell]) {
          const feet = terrain.elevationFt(longitude + x, latitude + y, 'nearest');
          if (feet !== undefined) around.push(feet);
        }
      }
      const feet = terrain.elevationFt(longitude, latitude)!;
      expect(feet).toBeGreaterThanOrEqual(Math.min(...around) - 1e-9);
      expect(feet).toBeLessThanOrEqual(Math.max(...around) + 1e-9);
    }
  });

  it('says nothing outside', async () => {
    const terrain = await readTerrain(data('srtm.tif'));
    expect(terrain.elevationFt(0, 0)).toBeUndefined();
    expect(terrain.elevationFt(Number.NaN, 49.5)).toBeUndefined();
  });

  it('refuses what is no terrain, with a remedy', async () => {
    await expect(readTerrain(data('hydrants.geojson'))).rejects.toThrow('GeoTIFF');
    await expect(readTerrain(data('none.tif'))).rejects.toThrow('no such file');
  });
});

describe('a plane', () => {
  const raster: Raster = {
    values: [10, 20, 30, 40, 50, 60, 70, 80, -32768],
    width: 3,
    height: 3,
    west: 0,
    north: 3,
    cellX: 1,
    cellY: 1,
    noData: -32768,
    feetPerUnit: 1,
    system: {
      name: 'test',
      degrees: true,
      toWgs84: (x, y) => [x, y],
      fromWgs84: (x, y) => [x, y],
    },
  };
  const terrain = terrainOf('plane', raster);

  it('is itself between centres: 10 more to the east, 30 more to the south', () => {
    expect(terrain.elevationFt(0.5, 2.5)).toBe(10);
    expect(terrain.elevationFt(1, 2)).toBe(10 + 5 + 15);
    expect(terrain.elevationFt(0.75, 2.25)).toBe(10 + 2.5 + 7.5);
  });

  it('without a value gives none, and beside it the cell itself', () => {
    expect(terrain.elevationFt(2.5, 0.5)).toBeUndefined();
    expect(terrain.elevationFt(1.9, 0.5)).toBe(80);
  });
});
