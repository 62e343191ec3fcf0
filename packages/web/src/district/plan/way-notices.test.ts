import { buildStreetNetwork, type Place, routeVia } from '@plugside/records/streets';
import { describe, expect, it } from 'vitest';
import { unitsIn } from '../../editing/use-units.ts';
import { wayNotices } from './way-notices.ts';

// On the equator a degree of longitude is 111,319.49 m, one of latitude 110,574.3 m (WGS 84).
const at = (eastFt: number, northFt: number): Place => ({
  longitude: (eastFt * 0.3048) / 111_319.49,
  latitude: (northFt * 0.3048) / 110_574.3,
});
const path = (...places: Place[]) => places.map((one) => [one.longitude, one.latitude] as const);

const streets = buildStreetNetwork([
  { path: [...path(at(0, 0), at(300, 0), at(600, 0))].map(([x, y]): [number, number] => [x, y]) },
]);

const told = (points: Place[], system: 'us' | 'si' = 'us') =>
  wayNotices(routeVia(streets, points), unitsIn(system)).map(({ text }) => text);

describe('notices of a way', () => {
  it('say that the lay leaves the street and comes back, and how much hose that takes', () => {
    const [text, ...more] = told([at(0, 0), at(200, 100), at(600, 0)]);
    expect(more).toEqual([]);
    expect(text).toMatch(
      /^At point 1 the lay leaves the street for 100 ft, and comes back: 200 ft/,
    );
  });

  it('are in metres for those who read metres: 100 ft are 30.48 m', () => {
    const [text] = told([at(0, 0), at(200, 100), at(600, 0)], 'si');
    expect(text).toMatch(/for 30 m, and comes back: 61 m of hose/);
  });

  it('say where it turns round on a street', () => {
    const [text] = told([at(0, 0), at(500, 0), at(300, 0)]);
    expect(text).toMatch(/^At point 1 the lay turns round, .* for 200 ft: 400 ft of hose/);
  });

  it('are none for the shortest way', () => {
    expect(told([at(0, 0), at(600, 0)])).toEqual([]);
  });

  it('say that a leg is straight, and why', () => {
    const [text] = told([at(0, 0), at(0, 3000)]);
    expect(text).toMatch(
      /^3,000 ft of the lay are a straight line \(an end is far from any street\)/,
    );
  });
});
