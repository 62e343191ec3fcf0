import { describe, expect, test } from 'vitest';
import { QuantityError } from '../quantity-error.ts';
import {
  availableFlowGpm,
  dropPercent,
  LEAST_DROP_PERCENT,
  ratingResidualPsi,
  supplyCurvePsi,
  supplyMarginPsi,
} from './hydrant-flow-test.ts';
import { pitotFlowGpm } from './pitot.ts';
import {
  hydrantAvailableRows,
  hydrantMultiPointRows,
  hydrantTestFullRows,
  hydrantTestFullRows2,
  supplyAdequacyRows,
  supplyCurveRows,
} from './published/flow-tests.ts';
import { misses, titled } from './published/published-row.ts';

describe('available flow', () => {
  test.each(titled(hydrantTestFullRows))('%s', (_, row) => {
    const { staticPsi, residualPsi, pitotPsi, outletIn, coefficient, targetPsi } = row.given;
    const flowGpm = pitotFlowGpm(outletIn, coefficient, pitotPsi);
    const test = { staticPsi, residualPsi, testGpm: flowGpm };
    const availableGpm = availableFlowGpm(test, targetPsi);
    expect(misses(row, { flowGpm, availableGpm })).toEqual([]);
  });

  test.each(titled(hydrantTestFullRows2))('%s', (_, row) => {
    const { staticPsi, residualPsi, testFlowGpm, targetPsi } = row.given;
    const percent = dropPercent(staticPsi, residualPsi);
    const got = {
      availableGpm: availableFlowGpm({ staticPsi, residualPsi, testGpm: testFlowGpm }, targetPsi),
      dropPercent: percent,
      dropMeets10Percent: percent >= LEAST_DROP_PERCENT.newer,
    };
    expect(misses(row, got)).toEqual([]);
  });

  test.each(titled(hydrantAvailableRows))('%s', (_, row) => {
    const { staticPsi, residualPsi, testFlowGpm, targetPsi } = row.given;
    const test = { staticPsi, residualPsi, testGpm: testFlowGpm };
    expect(misses(row, { availableGpm: availableFlowGpm(test, targetPsi) })).toEqual([]);
  });

  test.each(titled(hydrantMultiPointRows))('%s', (_, row) => {
    const { staticPsi, points, targetPsi } = row.given;
    const [first, second, third] = points.map(([residualPsi, testGpm]) =>
      availableFlowGpm({ staticPsi, residualPsi: residualPsi!, testGpm: testGpm! }, targetPsi),
    );
    const got = {
      availableFrom1Gpm: first!,
      availableFrom2Gpm: second!,
      availableFrom3Gpm: third!,
    };
    expect(misses(row, got)).toEqual([]);
  });

  // Colorado Water Conservation Board document 69668: tests of 1975 with their own flow at 20 psi.
  // Three went below 20 psi, so they give less at 20 psi than they flowed.
  test.each([
    [53, 5, 331, 270],
    [50, 12, 453, 399],
    [54, 12, 405, 361],
    [53, 35, 691, 959],
    [50, 46, 309, 917],
  ])(
    'static %i, residual %i at %i gpm → %i gpm at 20 psi (published: flow tests of 1975 at a Colorado town)',
    (staticPsi, residualPsi, testGpm, printed) => {
      const got = availableFlowGpm({ staticPsi, residualPsi, testGpm });
      expect(Math.abs(got - printed)).toBeLessThanOrEqual(0.5);
    },
  );
});

describe('supply curve', () => {
  test.each(titled(supplyCurveRows))('%s', (_, row) => {
    const { staticPsi, residualPsi, testFlowGpm, flowGpm } = row.given;
    const test = { staticPsi, residualPsi, testGpm: testFlowGpm };
    expect(misses(row, { pressurePsi: supplyCurvePsi(test, flowGpm) })).toEqual([]);
  });

  test.each(titled(supplyAdequacyRows))('%s', (_, row) => {
    const { staticPsi, residualPsi, testFlowGpm, demandGpm, demandPsi } = row.given;
    const test = { staticPsi, residualPsi, testGpm: testFlowGpm };
    const adequate = supplyMarginPsi(test, demandGpm, demandPsi) >= 0;
    expect(misses(row, { adequate })).toEqual([]);
  });

  test('runs through static at no flow and residual at the test’s flow', () => {
    const flowTest = { staticPsi: 72, residualPsi: 51, testGpm: 640 };
    expect(supplyCurvePsi(flowTest, 0)).toBe(72);
    expect(supplyCurvePsi(flowTest, 640)).toBeCloseTo(51, 12);
  });

  test('and the available flow are one curve', () => {
    const flowTest = { staticPsi: 72, residualPsi: 51, testGpm: 640 };
    for (const residual of [0, 10, 20, 51, 70]) {
      expect(supplyCurvePsi(flowTest, availableFlowGpm(flowTest, residual))).toBeCloseTo(
        residual,
        9,
      );
    }
  });

  test('says by a negative pressure that the main cannot give the flow', () => {
    expect(supplyCurvePsi({ staticPsi: 50, residualPsi: 20, testGpm: 500 }, 2000)).toBeLessThan(0);
  });
});

describe('rating', () => {
  test('weak hydrants rate at half their static (published: Procedures for flow testing hydrants p. 4, FireHydrant.org)', () => {
    expect(ratingResidualPsi(80)).toBe(20);
    expect(ratingResidualPsi(40)).toBe(20);
    expect(ratingResidualPsi(30)).toBe(15);
  });
});

describe('input', () => {
  const good = { staticPsi: 60, residualPsi: 40, testGpm: 800 };
  test.each([
    [{ ...good, residualPsi: 60 }, 'residualPsi is 60; allowed: less than staticPsi (60 psi)'],
    [{ ...good, residualPsi: 70 }, 'check whether static and residual are swapped'],
    [{ ...good, testGpm: 0 }, 'testGpm is 0; allowed: more than 0 gpm'],
    [{ ...good, staticPsi: Number.NaN }, 'staticPsi is NaN'],
    [{ ...good, residualPsi: -3 }, 'residualPsi is -3'],
  ])('%o refuses', (flowTest, message) => {
    expect(() => availableFlowGpm(flowTest)).toThrow(message);
    expect(() => supplyCurvePsi(flowTest, 100)).toThrow(QuantityError);
  });

  test('a weak main asked for more residual than its static refuses with the remedy', () => {
    expect(() => availableFlowGpm({ staticPsi: 18, residualPsi: 10, testGpm: 300 })).toThrow(
      'a weak hydrant is rated at half its static',
    );
  });
});
