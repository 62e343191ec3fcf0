import { describe, expect, test } from 'vitest';
import {
  pitotFlowGpm,
  pitotPressurePsi,
  pumperOutletFlowGpm,
  pumperOutletMultiplier,
} from './pitot.ts';
import { hydrantOutletFlowRows } from './published/flow-tests.ts';
import { misses, titled } from './published/published-row.ts';

describe('outlet flow by pitot', () => {
  test.each(titled(hydrantOutletFlowRows))('%s', (_, row) => {
    const { outletIn, coefficient, pitotPsi, k } = row.given;
    expect(misses(row, { flowGpm: pitotFlowGpm(outletIn, coefficient, pitotPsi, k) })).toEqual([]);
  });

  test('the reading for a flow turns the flow for a reading round', () => {
    expect(pitotPressurePsi(2.5, 0.8, pitotFlowGpm(2.5, 0.8, 28))).toBeCloseTo(28, 12);
  });
});

describe('pumper outlet', () => {
  test.each([
    [2, 0.97, 'from memory of NFPA 291'],
    [3, 0.92, 'from memory of NFPA 291'],
    [4, 0.89, 'from memory of NFPA 291'],
    [5, 0.86, 'from memory of NFPA 291'],
    [6, 0.84, 'from memory of NFPA 291'],
    [7, 0.83, 'published: engineers’ forum quoting NFPA 291'],
    [12, 0.83, 'published: engineers’ forum quoting NFPA 291'],
  ])('%f psi: %f (%s)', (psi, factor) => {
    expect(pumperOutletMultiplier(psi)).toBeCloseTo(factor, 12);
  });

  test('falls steadily between the whole psi', () => {
    let before = 1;
    for (let psi = 2; psi <= 8; psi += 0.1) {
      const factor = pumperOutletMultiplier(psi);
      expect(factor).toBeLessThanOrEqual(before);
      before = factor;
    }
    expect(pumperOutletMultiplier(2.5)).toBeCloseTo((0.97 + 0.92) / 2, 12);
  });

  test('multiplies the ordinary flow', () => {
    expect(pumperOutletFlowGpm(4.5, 0.9, 7)).toBeCloseTo(0.83 * pitotFlowGpm(4.5, 0.9, 7), 9);
  });
});

describe('input', () => {
  test.each([
    [() => pitotFlowGpm(2.5, 1.1, 20), 'coefficient is 1.1; allowed: 0 to 1'],
    [() => pitotFlowGpm(2.5, 0, 20), 'coefficient is 0'],
    [() => pitotFlowGpm(2.5, 0.9, -1), 'pitotPsi is -1'],
    [() => pumperOutletMultiplier(1), 'allowed: 2 psi or more on a pumper outlet'],
    [() => pumperOutletMultiplier(Number.NaN), 'pitotPsi is NaN'],
  ])('%s refuses', (call, message) => {
    expect(call).toThrow(message);
  });
});
