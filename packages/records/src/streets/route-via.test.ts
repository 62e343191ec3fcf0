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
    expect(over.turnBacks).toHaveLength(1);
    expect(over.turnBacks[0]!.point).toBe(1);
    expect(over.turnBacks[0]!.backFt).toBeCloseTo(100, feet);
    expect(over.turnBacks[0]!.offStreetFt).toBeCloseTo(100, feet);
  });

  it('says where it goes up a street and comes back down', () => {
    // Past the corner at 300 and 120 ft up the cross street, then on along the first one.
    const past = routeVia(square, [at(0, 0), at(300, 120), at(600, 0)]);
    expect(past.lengthFt).toBeCloseTo(600 + 2 * 120, feet);
    expect(past.turnBacks[0]!.backFt).toBeCloseTo(120, feet);
    expect(past.turnBacks[0]!.offStreetFt).toBe(0);
    // Beyond its end on the same piece of street, and back to it.
    const beyond = routeVia(square, [at(20, 0), at(250, 0), at(100, 0)]);
    expect(beyond.lengthFt).toBeCloseTo(230 + 150, feet);
    expect(beyond.turnBacks[0]!.backFt).toBeCloseTo(150, feet);
  });

  it('says nothing where it goes on another way', () => {
    const round = routeVia(square, [at(0, 0), at(150, 300), at(600, 0)]);
    expect(round.turnBacks).toEqual([]);
    const slip = routeVia(square, [at(0, 0), at(150, 59), at(300, 0)]);
    expect(slip.lengthFt).toBeCloseTo(300, feet);
    expect(slip.turnBacks).toEqual([]);
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
