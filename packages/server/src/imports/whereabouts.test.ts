import type { Mapping, SourceRow } from '@plugside/records';
import { describe, expect, it } from 'vitest';
import { whereaboutsOf } from './whereabouts.ts';

const mapping = {
  place: {
    geometry: false,
    longitude: 'lon',
    latitude: 'lat',
    crs: 'EPSG:4326',
    swapped: 'refuse',
    farOff: 'refuse',
  },
} as unknown as Mapping;
const row = (lon: number, lat: number, number = 1): SourceRow => ({ number, values: { lon, lat } });
const district = [-71.2, 42.2, -71.0, 42.4] as const;

describe('where a list lies', () => {
  it('is no distance from the district that it lies in', () => {
    expect(whereaboutsOf([row(-71.1, 42.3)], mapping, district)?.awayKm).toBe(0);
  });

  it('is the great circle to the nearest edge: a degree of latitude is 111.2 km on 6371 km', () => {
    expect(whereaboutsOf([row(-71.1, 43.4)], mapping, district)?.awayKm).toBeCloseTo(111.2, 1);
  });

  it('is another continent where it is: Lauf to Boston is some 6,200 km', () => {
    const rows = [row(11.28, 49.51), row(11.29, 49.52), row(11.27, 49.5)];
    const found = whereaboutsOf(rows, mapping, district)!;
    expect(found.awayKm).toBeGreaterThan(6000);
    expect(found.awayKm).toBeLessThan(6400);
    expect(found.places).toHaveLength(3);
  });

  it('is not known without a district or a place', () => {
    expect(whereaboutsOf([row(-71.1, 42.3)], mapping, undefined)).toBeNull();
    expect(whereaboutsOf([row(0, 0)], mapping, district)).toBeNull();
  });
});
