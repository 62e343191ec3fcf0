import { describe, expect, test } from 'vitest';
import { axisTicks, roundStep } from './ticks.ts';

describe('axis', () => {
  test('counts in 1, 2 or 5 times a power of ten', () => {
    for (let range = 0.3; range < 1e4; range *= 1.37) {
      const step = roundStep(range, 6);
      const digit = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
      expect([1, 2, 5].some((each) => Math.abs(each - digit) < 1e-9)).toBe(true);
      expect(range / step).toBeLessThanOrEqual(6);
    }
  });

  test('covers what it shows, in psi', () => {
    expect(axisTicks(0, 190, 1, 6)).toEqual([0, 50, 100, 150, 200]);
    expect(axisTicks(-7, 120, 1, 6)[0]).toBe(-50);
  });

  test('counts in whole bar where bar is shown', () => {
    const ticks = axisTicks(0, 190, 14.5038, 6);
    expect(ticks.map((psi) => psi / 14.5038)).toEqual([0, 5, 10, 15]);
  });
});
