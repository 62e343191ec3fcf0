import { describe, expect, test } from 'vitest';
import { standpipeConnectionPsi } from './fixed-systems.ts';
import { standpipePressureRows } from './published/discharge-pressure.ts';
import { misses, titled } from './published/published-row.ts';

describe('standpipe connection', () => {
  test.each(titled(standpipePressureRows))('%s', (_, row) => {
    const { floors, basePsi, psiPerFloor } = row.given;
    const connectionPsi = standpipeConnectionPsi(floors, basePsi, psiPerFloor);
    expect(misses(row, { connectionPsi })).toEqual([]);
  });

  test.each([
    [9, 195],
    [10, 200],
    [25, 200],
  ])('%i floors: %i psi (published: Sprinkler/standpipe connection pressures)', (floors, psi) => {
    expect(standpipeConnectionPsi(floors)).toBe(psi);
  });

  test('refuses half a floor', () => {
    expect(() => standpipeConnectionPsi(2.5)).toThrow('floors is 2.5; allowed: a whole number');
  });
});
