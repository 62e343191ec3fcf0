import { describe, expect, it } from 'vitest';
import { feetPerDegree, type LonLat } from '../streets/ellipsoid.ts';
import { terrainAlong } from './terrain-along.ts';

// Due north along a meridian: a foot is a foot.
const scale = feetPerDegree(0).latitude;
const north = (feet: number): LonLat => [10, feet / scale];
const ends = (startFt: number, endFt: number) => ({ startFt, endFt });
const heightBy = (ground: (northFt: number) => number) => (_: number, latitude: number) =>
  ground(latitude * scale);

describe('ground along a lay', () => {
  it('an even slope needs no points between', () => {
    expect(
      terrainAlong(
        [north(0), north(1000)],
        1000,
        ends(100, 150),
        heightBy((y) => 100 + y / 20),
      ),
    ).toEqual([]);
  });

  it('a hump is its top', () => {
    const hump = heightBy((y) => 100 + 30 * (1 - Math.abs(y - 500) / 500));
    expect(terrainAlong([north(0), north(1000)], 1000, ends(100, 100), hump)).toEqual([
      { alongFt: 500, elevationFt: 130 },
    ]);
  });

  it('the ground is tilted to meet the heights of the ends', () => {
    // The model counts 10 ft more at the start and 30 ft more at the end than the records.
    const hump = heightBy((y) => 110 + y / 50 + 40 * (1 - Math.abs(y - 500) / 500));
    const points = terrainAlong([north(0), north(1000)], 1000, ends(100, 100), hump);
    expect(points).toEqual([{ alongFt: 500, elevationFt: 140 }]);
  });

  it('stays strictly between the ends and in order round a corner', () => {
    const waves = heightBy((y) => 20 * Math.sin(y / 60));
    const points = terrainAlong([north(0), north(700), north(400)], 1030, ends(0, 8), waves);
    expect(points.length).toBeGreaterThan(3);
    points.forEach(({ alongFt }, i) => {
      expect(alongFt).toBeGreaterThan(i === 0 ? 0 : points[i - 1]!.alongFt);
      expect(alongFt).toBeLessThan(1030);
    });
  });

  it('is left out where any of the ground is not known', () => {
    const edge = (_: number, latitude: number) => (latitude * scale > 600 ? undefined : 50);
    expect(terrainAlong([north(0), north(1000)], 1000, ends(0, 0), edge)).toEqual([]);
  });
});
