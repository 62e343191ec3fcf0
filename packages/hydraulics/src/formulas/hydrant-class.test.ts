import { describe, expect, test } from 'vitest';
import { hydrantClass } from './hydrant-class.ts';
import { hydrantClassRows } from './published/flow-tests.ts';
import { misses, titled } from './published/published-row.ts';

describe('hydrant class', () => {
  test.each(titled(hydrantClassRows))('%s', (_, row) => {
    const { name, colour } = hydrantClass(row.given.availableGpm);
    expect(misses(row, { nfpaClass: name, color: colour })).toEqual([]);
  });

  test.each([
    [1500, 'AA', 'light blue'],
    [1499.9, 'A', 'green'],
    [1000, 'A', 'green'],
    [999, 'B', 'orange'],
    [500, 'B', 'orange'],
    [499, 'C', 'red'],
    [0, 'C', 'red'],
  ])(
    '%f gpm: %s, %s (published: Rural pressurized fire hydrant part 2, Firehouse)',
    (gpm, name, colour) => {
      expect(hydrantClass(gpm)).toMatchObject({ name, colour });
    },
  );

  test('refuses a negative flow', () => {
    expect(() => hydrantClass(-1)).toThrow('availableGpm is -1');
  });
});
