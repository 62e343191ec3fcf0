import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crowFt, type LonLat, type Place, pathFt } from './ellipsoid.ts';
import { hoseRoutes } from './hose-routes.ts';
import { buildStreetNetwork } from './street-network.ts';
import { at, grid, street } from './test-town.ts';

const feet = 2; // Decimals that hand-made places hold: the test lies on a plane, the town does not.

describe('hose along streets, by hand', () => {
  const square = buildStreetNetwork(grid(2, 300));

  it('goes round the block, not across it', () => {
    const [route] = hoseRoutes(square, at(0, 0), [at(600, 600)]);
    expect(route!.lengthFt).toBeCloseTo(1200, feet);
    expect(route!.alongStreets).toBe(true);
    expect(route!.path).toHaveLength(5);
  });

  it('counts the stretch off the street at both ends', () => {
    const [route] = hoseRoutes(square, at(100, 40), [at(100, 250)]);
    // 40 down to the street, 100 west (not 200 east), 300 north, 100 east, 50 down.
    expect(route!.lengthFt).toBeCloseTo(40 + 100 + 300 + 100 + 50, feet);
    expect(route!.placeOffFt).toBeCloseTo(40, feet);
    expect(route!.targetOffFt).toBeCloseTo(50, feet);
  });

  it('is exact between points in the middle of one piece and of two', () => {
    const [same] = hoseRoutes(square, at(100, 0), [at(220, 0)]);
    expect(same!.lengthFt).toBeCloseTo(120, feet);
    expect(same!.path).toHaveLength(2);
    const [around] = hoseRoutes(square, at(250, 0), [at(300, 80)]);
    expect(around!.lengthFt).toBeCloseTo(130, feet);
  });

  it('takes the way round where the piece between is longer', () => {
    // A long bow between two corners that a short street joins.
    const bow = street([0, 0], [50, 2000], [100, 0]);
    const short = street([0, 0], [100, 0]);
    const network = buildStreetNetwork([bow, short]);
    const [route] = hoseRoutes(network, at(2.5, 100), [at(97.5, 100)]);
    const leg = Math.hypot(2.5, 100);
    expect(route!.lengthFt).toBeCloseTo(leg + 100 + leg, 0);
  });

  it('does not leave a bridge for the street under it', () => {
    const below = street([-500, 0], [500, 0]);
    const above = street([0, -500], [0, 500]);
    const link = street([500, 0], [500, 500], [0, 500]);
    const network = buildStreetNetwork([below, above, link]);
    const [route] = hoseRoutes(network, at(-100, 0), [at(0, -100)]);
    expect(route!.lengthFt).toBeCloseTo(600 + 500 + 500 + 600, feet);
  });

  it('closes a small gap and counts it', () => {
    const network = buildStreetNetwork([street([0, 0], [200, 0]), street([100, 8], [100, 300])]);
    const [route] = hoseRoutes(network, at(0, 0), [at(100, 300)]);
    expect(route!.lengthFt).toBeCloseTo(100 + 300, feet);
  });

  it('leaves out what no street leads to', () => {
    const network = buildStreetNetwork([street([0, 0], [200, 0]), street([0, 500], [200, 500])]);
    expect(hoseRoutes(network, at(0, 0), [at(100, 500)])).toEqual([]);
  });

  it('says so where the straight line is all there is', () => {
    const [fromAfar] = hoseRoutes(square, at(300, -1500), [at(300, 0)]);
    expect(fromAfar).toMatchObject({ alongStreets: false });
    expect(fromAfar!.lengthFt).toBeCloseTo(1500, 1);
    const [toAfar] = hoseRoutes(square, at(300, 0), [at(300, -1500)]);
    expect(toAfar).toMatchObject({ alongStreets: false });
    const [nowhere] = hoseRoutes(buildStreetNetwork([]), at(0, 0), [at(0, 70)]);
    expect(nowhere).toMatchObject({ alongStreets: false });
    expect(nowhere!.lengthFt).toBeCloseTo(70, feet);
  });

  it('is sorted, and bounded by length and by count', () => {
    const targets = [at(600, 0), at(100, 0), at(300, 310), at(0, 200)];
    const all = hoseRoutes(square, at(0, 0), targets);
    expect(all.map(({ index }) => index)).toEqual([1, 3, 0, 2]);
    const near = hoseRoutes(square, at(0, 0), targets, { maxFt: 599 });
    expect(near.map(({ index }) => index)).toEqual([1, 3]);
    const three = hoseRoutes(square, at(0, 0), targets, { count: 3 });
    expect(three).toEqual(all.slice(0, 3));
  });

  it('tells how much of the way no rig can drive', () => {
    const path = { ...street([100, 0], [100, 300]), footOnly: true };
    const network = buildStreetNetwork([street([0, 0], [200, 0]), path]);
    const [route] = hoseRoutes(network, at(0, 0), [at(100, 120)]);
    expect(route!.footOnlyFt).toBeCloseTo(120, feet);
  });

  it('refuses a length or a count that finds nothing', () => {
    expect(() => hoseRoutes(square, at(0, 0), [], { maxFt: 0 })).toThrow(/maxFt is 0.*above 0 ft/);
    expect(() => hoseRoutes(square, at(0, 0), [], { count: 0 })).toThrow(/count is 0.*1 or more/);
  });
});

interface Feature {
  geometry: { coordinates: unknown };
}
const features = (file: string): Feature[] =>
  JSON.parse(readFileSync(new URL(`../../test-data/${file}`, import.meta.url), 'utf8')).features;
/** © OpenStreetMap contributors, ODbL. */
const oldTown = features('old-town-streets.geojson').map(({ geometry }) => ({
  path: geometry.coordinates as LonLat[],
}));
const hydrants = features('old-town-hydrants.geojson').map(({ geometry }): Place => {
  const [longitude, latitude] = geometry.coordinates as LonLat;
  return { longitude, latitude };
});

describe('hose along the streets of a real old town', () => {
  const town = buildStreetNetwork(oldTown);

  it('agrees with relaxing every piece until nothing gets shorter', () => {
    // Bellman and Ford's method shares no code with the walk; ends are vertices, so nothing is cut.
    const { graph, component } = town;
    const start = component.indexOf(0);
    const place = { longitude: graph.longitude[start]!, latitude: graph.latitude[start]! };
    const shortest = new Array<number>(component.length).fill(Number.POSITIVE_INFINITY);
    shortest[start] = 0;
    for (let changed = true; changed; ) {
      changed = false;
      for (let piece = 0; piece < graph.from.length; piece += 1) {
        const [a, b, lengthFt] = [graph.from[piece]!, graph.to[piece]!, graph.lengthFt[piece]!];
        for (const [near, far] of [
          [a, b],
          [b, a],
        ] as const) {
          if (shortest[near]! + lengthFt < shortest[far]! - 1e-9) {
            shortest[far] = shortest[near]! + lengthFt;
            changed = true;
          }
        }
      }
    }
    const targets = Array.from(graph.longitude, (longitude, vertex) => ({
      longitude,
      latitude: graph.latitude[vertex]!,
    }));
    const routes = hoseRoutes(town, place, targets);
    expect(routes).toHaveLength(shortest.filter(Number.isFinite).length);
    expect(routes.length).toBeGreaterThan(1000);
    for (const { index, lengthFt } of routes) expect(lengthFt).toBeCloseTo(shortest[index]!, 5);
  });

  it('finds the same few as a search of everything', () => {
    for (const place of hydrants.slice(0, 10)) {
      const all = hoseRoutes(town, place, hydrants);
      expect(hoseRoutes(town, place, hydrants, { count: 7 })).toEqual(all.slice(0, 7));
      const within = all.filter(({ lengthFt }) => lengthFt <= 900);
      expect(hoseRoutes(town, place, hydrants, { maxFt: 900 })).toEqual(within);
    }
  });

  const anyPlace = fc
    .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
    .map(([x, y]): Place => ({ longitude: 11.276 + 0.014 * x, latitude: 49.507 + 0.0085 * y }));
  const hose = (a: Place, b: Place) => hoseRoutes(town, a, [b])[0]?.lengthFt;

  it('is as long as its path, never shorter than the crow, the same both ways', () => {
    fc.assert(
      fc.property(anyPlace, anyPlace, (a, b) => {
        const [route] = hoseRoutes(town, a, [b]);
        if (!route) return;
        expect(pathFt(route.path) / route.lengthFt).toBeCloseTo(1, 5);
        const crow = crowFt([a.longitude, a.latitude], [b.longitude, b.latitude]);
        expect(route.lengthFt).toBeGreaterThanOrEqual(crow * (1 - 1e-6));
        expect(hose(b, a)).toBeCloseTo(route.lengthFt, 6);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('is no longer than by way of a third place', () => {
    fc.assert(
      fc.property(anyPlace, anyPlace, anyPlace, (a, b, c) => {
        const [ac, ab, bc] = [hose(a, c), hose(a, b), hose(b, c)];
        if (ab === undefined || bc === undefined) return;
        expect(ac).toBeLessThanOrEqual(ab + bc + 1e-6);
      }),
      { seed: 2, numRuns: 200 },
    );
  });
});
