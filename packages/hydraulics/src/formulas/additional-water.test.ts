import { describe, expect, test } from 'vitest';
import {
  extraVolumesByFirstDigit,
  extraVolumesByPercent,
  greatestLinesBySquaring,
  squaredDropPsi,
} from './additional-water.ts';
import { availableFlowGpm, dropPercent } from './hydrant-flow-test.ts';
import {
  additionalWaterFirstDigitRows,
  additionalWaterPercentRows,
  additionalWaterPercentRows2,
  additionalWaterSquaringRows,
} from './published/additional-water.ts';
import { misses, titled } from './published/published-row.ts';

describe('percentage rule', () => {
  test.each(titled(additionalWaterPercentRows))('%s', (_, row) => {
    const { staticPsi, residualPsi, flowGpm } = row.given;
    const extraMultiples = extraVolumesByPercent(staticPsi, residualPsi);
    const got = {
      dropPercent: dropPercent(staticPsi, residualPsi),
      extraMultiples,
      extraGpm: extraMultiples * flowGpm,
    };
    expect(misses(row, got)).toEqual([]);
  });

  test.each(titled(additionalWaterPercentRows2))('%s', (_, row) => {
    const { staticPsi, residualPsi } = row.given;
    const got = {
      dropPercent: dropPercent(staticPsi, residualPsi),
      extraMultiples: extraVolumesByPercent(staticPsi, residualPsi),
    };
    expect(misses(row, got)).toEqual([]);
  });

  test.each([
    [100, 90, 3],
    [100, 89.9, 2],
    [100, 89, 2],
    [100, 85, 2],
    [100, 84, 1],
    [100, 75, 1],
    [60, 54, 3],
    [70, 63, 3],
    [100, 74, 0],
  ])(
    'static %f, residual %f: %i (published: Tracking/estimating water supply on the fire ground; last step from memory)',
    (staticPsi, residualPsi, extra) => {
      expect(extraVolumesByPercent(staticPsi, residualPsi)).toBe(extra);
    },
  );

  test('promises more than the supply curve gives to 20 psi', () => {
    const at10 = availableFlowGpm({ staticPsi: 80, residualPsi: 72, testGpm: 1 }) - 1;
    expect(at10).toBeCloseTo(1.97, 2);
    expect(at10).toBeLessThan(extraVolumesByPercent(80, 72));
    const at25 = availableFlowGpm({ staticPsi: 80, residualPsi: 60, testGpm: 1 }) - 1;
    expect(at25).toBeCloseTo(0.81, 2);
    expect(at25).toBeLessThan(extraVolumesByPercent(80, 60));
  });
});

describe('first-digit rule', () => {
  test.each(titled(additionalWaterFirstDigitRows))('%s', (_, row) => {
    const { staticPsi, residualPsi } = row.given;
    const got = {
      dropPsi: staticPsi - residualPsi,
      extraMultiples: extraVolumesByFirstDigit(staticPsi, residualPsi),
    };
    expect(misses(row, got)).toEqual([]);
  });

  test.each([
    [65, 53, 2],
    [65, 47, 1],
    [65, 46, 0],
    [105, 95, 3],
  ])(
    'static %f, residual %f: %i (published: Tracking/estimating water supply on the fire ground; last step from memory)',
    (staticPsi, residualPsi, extra) => {
      expect(extraVolumesByFirstDigit(staticPsi, residualPsi)).toBe(extra);
    },
  );
});

describe('squaring rule', () => {
  test.each(titled(additionalWaterSquaringRows))('%s', (_, row) => {
    const { staticPsi, oneLineDropPsi, targetResidualPsi } = row.given;
    const got = {
      drop3LinesPsi: squaredDropPsi(oneLineDropPsi, 3),
      maxLines: greatestLinesBySquaring(staticPsi, oneLineDropPsi, targetResidualPsi),
    };
    expect(misses(row, got)).toEqual([]);
  });

  test('a line whose drop lands on the residual counts', () => {
    expect(greatestLinesBySquaring(65, 5)).toBe(3);
    expect(greatestLinesBySquaring(64.9, 5)).toBe(2);
  });
});

test('bad readings refuse', () => {
  expect(() => extraVolumesByPercent(60, 70)).toThrow(
    'Check whether static and residual are swapped',
  );
  expect(() => extraVolumesByFirstDigit(60, 70)).toThrow('residualPsi is 70');
  expect(() => greatestLinesBySquaring(60, 0)).toThrow('No drop: flow more water to judge by.');
  expect(() => greatestLinesBySquaring(15, 2)).toThrow('never shows the residual asked for');
});
