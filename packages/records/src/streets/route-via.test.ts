import { describe, expect, it } from 'vitest';
import { pathFt } from './ellipsoid.ts';
import { hoseRoutes } from './hose-routes.ts';
import { routeVia } from './route-via.ts';
import { buildStreetNetwork } from './street-network.ts';
import { at, grid, street } from './test-town.ts';

const square = buildStreetNetwork(grid(2, 300));
const feet = 2;

describe('a lay dragged through places', () => {
  it('through its ends alone is the shortest', () => {
    const [a, b] = [at(20, 40), at(600, 450)];
    const [shortest] = hoseRoutes(square, a, [b]);
    const route = routeVia(square, [a, b]);
    expect(route.lengthFt).toBeCloseTo(shortest!.lengthFt, 6);
    expect(route.path).toEqual(shortest!.path);
  });

  it('follows the street that it is dragged onto', () => {
    const over = routeVia(square, [at(0, 0), at(150, 310), at(600, 0)]);
    // Up, along the next street and down again; the 10 ft are a slip of the hand.
    expect(over.lengthFt).toBeCloseTo(1200, feet);
    expect(over.alongStreets).toBe(true);
    expect(pathFt(over.path)).toBeCloseTo(over.lengthFt, 3);
  });

  it('goes to a place well off the street, and back', () => {
    const over = routeVia(square, [at(0, 0), at(150, 100), at(300, 0)]);
    expect(over.lengthFt).toBeCloseTo(300 + 2 * 100, feet);
  });

  it('crosses a yard where asked', () => {
    const yard = routeVia(square, [at(0, 0), { ...at(300, 300), straight: true }, at(600, 300)]);
    expect(yard.lengthFt).toBeCloseTo(Math.hypot(300, 300) + 300, feet);
    expect(yard.legs.map(({ kind }) => kind)).toEqual(['straight', 'along streets']);
    expect(yard.alongStreets).toBe(false);
  });

  it('says why a leg is straight', () => {
    const apart = buildStreetNetwork([street([0, 0], [200, 0]), street([0, 500], [200, 500])]);
    const jump = routeVia(apart, [at(0, 0), at(0, 500)]);
    expect(jump.legs[0]!.kind).toBe('not joined');
    expect(jump.lengthFt).toBeCloseTo(500, feet);
    expect(routeVia(apart, [at(0, 0), at(0, 9000)]).legs[0]!.kind).toBe('off the network');
  });

  it('refuses a single place', () => {
    expect(() => routeVia(square, [at(0, 0)])).toThrow(/1 places.*at least 2/);
  });
});
