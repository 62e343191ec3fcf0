import { describe, expect, it } from 'vitest';
import { crowFt, feetPerDegree } from './ellipsoid.ts';
import { buildStreetNetwork } from './street-network.ts';
import { at, street } from './test-town.ts';

describe('how streets join', () => {
  it('a shared vertex joins, in the middle of a street too', () => {
    const through = street([0, 0], [100, 0], [200, 0]);
    const branch = street([100, 0], [100, 50]);
    const { componentSizes, graph } = buildStreetNetwork([through, branch]);
    expect(componentSizes).toEqual([4]);
    expect(graph.from.length).toBe(3);
  });

  it('a crossing without a shared vertex does not join: one is a bridge', () => {
    const below = street([-100, 0], [100, 0]);
    const above = street([0, -100], [0, 100]);
    expect(buildStreetNetwork([below, above]).componentSizes).toEqual([2, 2]);
  });

  // 3 m is 9.84 ft.
  it.each([
    [9.7, 1, 'joins'],
    [10, 2, 'does not join'],
  ])('an end that misses the middle of a street by %s ft: %s part(s), %s', (missFt, parts) => {
    const through = street([0, 0], [200, 0]);
    const short = street([100, missFt], [100, 300]);
    const network = buildStreetNetwork([through, short]);
    expect(network.componentSizes).toHaveLength(parts);
    expect(network.gapsClosed).toBe(parts === 1 ? 1 : 0);
  });

  it('an end that misses an end is joined once', () => {
    const network = buildStreetNetwork([street([0, 0], [100, 0]), street([105, 2], [300, 0])]);
    expect(network.componentSizes).toEqual([4]);
    expect(network.gapsClosed).toBe(1);
  });

  it('an end that overshoots the street it meets is joined to it', () => {
    const through = street([0, 0], [200, 0]);
    const over = street([100, -4], [100, 300]);
    expect(buildStreetNetwork([through, over]).componentSizes).toHaveLength(1);
  });

  it('several ends on one piece cut it in order', () => {
    const through = street([0, 0], [400, 0]);
    const ends = [300, 100, 200].map((x) => street([x, 5], [x, 100]));
    const network = buildStreetNetwork([through, ...ends]);
    expect(network.componentSizes).toHaveLength(1);
    const cut = [...network.graph.street].filter((number) => number === 0);
    expect(cut).toHaveLength(4);
  });

  it('the middle of a street that passes close by is no end: it is not joined', () => {
    const one = street([0, 0], [400, 0]);
    const other = street([0, 100], [200, 5], [400, 100]);
    expect(buildStreetNetwork([one, other]).componentSizes).toHaveLength(2);
  });

  it('the last step of a dead end is not joined to its own street', () => {
    const network = buildStreetNetwork([street([0, 0], [100, 0], [103, 0], [106, 3])]);
    expect(network.gapsClosed).toBe(0);
  });

  it('a repeated place makes no piece, and a street of one place no street', () => {
    const network = buildStreetNetwork([street([0, 0], [0, 0], [50, 0]), street([90, 9], [90, 9])]);
    expect(network.graph.from.length).toBe(1);
  });

  it('names the street whose place is not in degrees', () => {
    const metres = { name: 'High Street', path: [[4_400_000, 5_480_000] as const] };
    expect(() => buildStreetNetwork([metres])).toThrow(/"High Street".*4400000.*−180 to 180/);
    const empty = { path: [[Number.NaN, 0] as const] };
    expect(() => buildStreetNetwork([empty])).toThrow('Street number 1');
  });
});

describe('nearest point of a street', () => {
  it('is the foot of the perpendicular', () => {
    const network = buildStreetNetwork([street([0, 0], [200, 0]), street([0, 90], [200, 90])]);
    const { longitude, latitude } = at(50, 30);
    const point = network.nearestPoint(longitude, latitude)!;
    expect(point.street).toBe(0);
    expect(point.offFt).toBeCloseTo(30, 3);
    expect(point.fraction).toBeCloseTo(0.25, 6);
    expect(
      crowFt([point.longitude, point.latitude], [at(50, 0).longitude, at(50, 0).latitude]),
    ).toBeLessThan(0.01);
  });

  it('is the end where the perpendicular misses', () => {
    const network = buildStreetNetwork([street([0, 0], [200, 0])]);
    const { longitude, latitude } = at(240, 30);
    expect(network.nearestPoint(longitude, latitude)!.offFt).toBeCloseTo(50, 3);
  });

  it('there is none without streets', () => {
    expect(buildStreetNetwork([]).nearestPoint(0, 0)).toBeUndefined();
  });

  it('goes by true feet north and east, far from where the list begins', () => {
    // At 60° a degree east is about half a degree north. The list begins on the equator.
    const scale = feetPerDegree(60);
    const north = {
      path: [
        [10, 60 + 100 / scale.latitude],
        [10.001, 60 + 100 / scale.latitude],
      ] as const,
    };
    const east = {
      path: [
        [10 + 90 / scale.longitude, 59.999],
        [10 + 90 / scale.longitude, 60.001],
      ] as const,
    };
    const first = {
      path: [
        [10, 0],
        [10.001, 0],
      ] as const,
    };
    const point = buildStreetNetwork([first, north, east]).nearestPoint(10, 60)!;
    expect(point.street).toBe(2);
    expect(point.offFt).toBeCloseTo(90, 2);
  });

  it('works across 180°', () => {
    const network = buildStreetNetwork([
      {
        path: [
          [179.999, 0],
          [-179.999, 0],
        ],
      },
    ]);
    const point = network.nearestPoint(180, 0.0001)!;
    expect(point.fraction).toBeCloseTo(0.5, 9);
    expect(Math.abs(point.longitude)).toBeCloseTo(180, 9);
  });
});
