import { describe, expect, test } from 'vitest';
import { greatestReliefPsi, operatingPressurePsi, serviceTestPsi } from './hose-pressure.ts';
import { hoseReliefRows } from './published/hose.ts';
import { misses, titled } from './published/published-row.ts';

describe('what hose bears', () => {
  test.each(titled(hoseReliefRows))('%s', (_, row) => {
    const maxReliefPsi = greatestReliefPsi(row.given.serviceTestPsi);
    expect(misses(row, { maxReliefPsi })).toEqual([]);
  });

  test.each([
    [200, 185],
    [300, 275],
  ])(
    'service test %i psi, operating %i (published: Comparing Four- and Five-Inch LDH, Fire Apparatus, rounded up to 5 psi)',
    (test, operating) => {
      expect(Math.abs(operatingPressurePsi(test) - operating)).toBeLessThanOrEqual(5);
    },
  );

  test('service test turns operating pressure round', () => {
    expect(serviceTestPsi(operatingPressurePsi(300))).toBeCloseTo(300, 9);
  });

  test('refuses a pressure of 0', () => {
    expect(() => greatestReliefPsi(0)).toThrow('serviceTestPsi is 0');
  });
});
