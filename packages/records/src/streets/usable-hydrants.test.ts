import { describe, expect, it } from 'vitest';
import { buildStreetNetwork } from './street-network.ts';
import { at, grid } from './test-town.ts';
import { usableHydrants } from './usable-hydrants.ts';

const square = buildStreetNetwork(grid(2, 300));
const hydrants = [
  { name: 'far', ...at(600, 0) },
  { name: 'dry', status: 'out of service', ...at(100, 0) },
  { name: 'near', status: 'in service', ...at(0, 200) },
  { name: 'mid', ...at(300, 0) },
] as const;
const names = (routes: { target: { name: string } }[]) => routes.map(({ target }) => target.name);

describe('hydrants by hose length', () => {
  it('come nearest first, those out of service marked in their place', () => {
    const found = usableHydrants(square, hydrants, at(0, 0));
    expect(names(found)).toEqual(['dry', 'near', 'mid', 'far']);
    expect(found.map(({ usable }) => usable)).toEqual([false, true, true, true]);
  });

  it('a count is of those that can be used', () => {
    expect(names(usableHydrants(square, hydrants, at(0, 0), { count: 2 }))).toEqual([
      'dry',
      'near',
      'mid',
    ]);
    expect(names(usableHydrants(square, hydrants, at(0, 0), { count: 9 }))).toHaveLength(4);
  });

  it('a street walked the long way is not near: order is by hose, not by the crow', () => {
    const [first, second] = usableHydrants(
      square,
      [
        { name: 'behind the block', ...at(150, 290) },
        { name: 'down the street', ...at(450, 0) },
      ],
      at(150, 10),
    );
    expect(first!.target.name).toBe('down the street');
    expect(second!.lengthFt).toBeCloseTo(10 + 150 + 300 + 150 + 10, 2);
  });
});
