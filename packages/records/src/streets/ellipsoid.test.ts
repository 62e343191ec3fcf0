import { describe, expect, it } from 'vitest';
import { crowFt, feetPerDegree, nearLongitude, pathFt } from './ellipsoid.ts';

const KM_FT = 1000 / 0.3048;
const degrees = (d: number, m: number, s: number) => d + m / 60 + s / 3600;

describe('lengths on WGS 84', () => {
  // "Longitude" and "Latitude", Wikipedia: tables of the length of a degree on WGS 84, to the metre.
  it.each([
    [0, 111.32, 110.574],
    [15, 107.55, 110.649],
    [30, 96.486, 110.852],
    [45, 78.847, 111.132],
    [60, 55.8, 111.412],
    [75, 28.902, 111.618],
  ])('a degree at latitude %s° is %s km east and %s km north', (latitude, eastKm, northKm) => {
    const { longitude, latitude: north } = feetPerDegree(latitude);
    expect(longitude / KM_FT).toBeCloseTo(eastKm, 2);
    expect(north / KM_FT).toBeCloseTo(northKm, 2);
  });

  it('Flinders Peak to Buninyong, 54,972.271 m by geodesic, is good to 0.001 %', () => {
    // Worked example of Vincenty's formulae in the "Geocentric Datum of Australia Technical
    // Manual", chapter 4 (GRS 80, which differs from WGS 84 by 0.1 mm); figures from memory.
    const flindersPeak = [degrees(144, 25, 29.5244), -degrees(37, 57, 3.7203)] as const;
    const buninyong = [degrees(143, 55, 35.3839), -degrees(37, 39, 10.1561)] as const;
    const metres = crowFt(flindersPeak, buninyong) * 0.3048;
    expect(Math.abs(metres / 54972.271 - 1)).toBeLessThan(1e-5);
  });

  it('is the same both ways and across 180°', () => {
    const [a, b] = [[179.999, 10] as const, [-179.999, 10.001] as const];
    expect(crowFt(a, b)).toBe(crowFt(b, a));
    expect(crowFt(a, b)).toBeCloseTo(crowFt([0.999, 10], [1.001, 10.001]), 4);
    expect(nearLongitude(-179.9, 179.9)).toBeCloseTo(180.1, 9);
  });

  it('a path is as long as its pieces, and one place has no length', () => {
    const a = [8, 50] as const;
    const b = [8.001, 50] as const;
    const c = [8.001, 50.001] as const;
    expect(pathFt([a, b, c])).toBe(crowFt(a, b) + crowFt(b, c));
    expect(pathFt([a])).toBe(0);
  });
});
