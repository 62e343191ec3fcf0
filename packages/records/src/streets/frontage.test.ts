import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entries, frontageOf } from './frontage.ts';
import { hoseRoutes } from './hose-routes.ts';
import { routeVia } from './route-via.ts';
import { buildStreetNetwork } from './street-network.ts';
import { at, street } from './test-town.ts';

const feet = 2;
const named = (name: string, ...places: Parameters<typeof street>) => ({
  ...street(...places),
  name,
});
/** A road with no way off it for a mile, 100 ft south of the house; the house's own street, 140 ft north of it. */
const bypass = named('Bypass', [-5000, -100], [5000, -100]);
const own = named('Mill Street South', [0, 140], [1000, 140]);
const town = buildStreetNetwork([bypass, own]);
const house = at(300, 0);
const hydrant = at(500, 150);

describe('the streets that hose may take at a building', () => {
  it('are the nearest alone where nothing else is asked', () => {
    expect(entries(town, house, 1000).map(({ street: one }) => one)).toEqual([0]);
    expect(hoseRoutes(town, house, [hydrant])).toEqual([]);
  });

  it('are those hardly farther than the nearest: the hose is the shortest from any of them', () => {
    const [route] = hoseRoutes(town, house, [hydrant], { frontage: { besideFt: 60 } });
    // 140 north to Mill Street, 200 east along it, 10 to the hydrant.
    expect(route!.lengthFt).toBeCloseTo(140 + 200 + 10, feet);
    expect(route).toMatchObject({ placeStreet: 'Mill Street South', alongStreets: true });
    expect(route!.placeOffFt).toBeCloseTo(140, feet);
    expect(hoseRoutes(town, house, [hydrant], { frontage: { besideFt: 39 } })).toEqual([]);
  });

  it.each(['14 Mill Street South', '14 MILL ST. S, Quillmere', 'Barn, 14 Mill St South'])(
    'are the street of the address "%s", which others are nearer than',
    (address) => {
      const [route] = hoseRoutes(town, at(300, 20), [hydrant], { frontage: { address } });
      expect(route!.lengthFt).toBeCloseTo(120 + 200 + 10, feet);
    },
  );

  it('are no street of another name, and none beyond reach', () => {
    for (const address of ['14 Mill Street', '14 Mill Street North', '14 South Street']) {
      expect(hoseRoutes(town, house, [hydrant], { frontage: { address } })).toEqual([]);
    }
    const far = at(300, -400);
    expect(entries(town, far, 1000, { address: '14 Mill Street South' })).toHaveLength(1);
  });

  it('of two names in an address the longer is meant', () => {
    const short = named('Mill Street', [0, 130], [1000, 130]);
    const network = buildStreetNetwork([bypass, short, own]);
    const found = entries(network, house, 1000, { address: '14 Mill Street South' });
    expect(found.map((one) => network.streetName(one.street))).toEqual([
      'Bypass',
      'Mill Street South',
    ]);
  });

  it('come from a building’s address, else from its name', () => {
    expect(frontageOf({ address: '1 Ferry Road', name: 'Barn' }).address).toBe('1 Ferry Road');
    expect(frontageOf({ name: 'Barn, 1 Ferry Road' }).address).toBe('Barn, 1 Ferry Road');
    expect(frontageOf({ address: null, name: null }).address).toBeUndefined();
  });

  it('a lay dragged between hydrant and building takes the same street', () => {
    const frontage = { besideFt: 60 };
    const [route] = hoseRoutes(town, house, [hydrant], { frontage });
    const dragged = routeVia(town, [hydrant, { ...house, frontage }]);
    expect(dragged.alongStreets).toBe(true);
    expect(dragged.lengthFt).toBeCloseTo(route!.lengthFt, 6);
    expect(dragged.path).toEqual([...route!.path].reverse());
    const via = routeVia(town, [hydrant, at(450, 140), { ...house, frontage }]);
    expect(via.lengthFt).toBeCloseTo(route!.lengthFt, 6);
    expect(routeVia(town, [hydrant, house]).legs[0]!.kind).toBe('not joined');
  });
});

it('hose is the least of what each street alone gives, on any two streets', () => {
  // Each entry searched on its own and the least taken: the one walk from all must agree.
  const any = fc.integer({ min: -400, max: 400 });
  fc.assert(
    fc.property(any, any, any, any, any, any, (x, y, hx, hy, bend, cross) => {
      const lines = [
        named('First', [-500, 0], [bend, 0], [500, 0]),
        named('Second', [-500, 200], [cross, 200], [500, 200]),
        named('Link', [bend, 0], [cross, 200]),
      ];
      const network = buildStreetNetwork(lines);
      const [place, target] = [at(x, y), at(hx, hy)];
      const frontage = { besideFt: 150 };
      const starts = entries(network, place, 1000, frontage);
      const alone = starts.map((start) => {
        const [rest] = hoseRoutes(network, start, [target]);
        return start.offFt + rest!.lengthFt;
      });
      const [route] = hoseRoutes(network, place, [target], { frontage });
      expect(route!.lengthFt).toBeCloseTo(Math.min(...alone), 3);
    }),
    { seed: 3, numRuns: 200 },
  );
});
