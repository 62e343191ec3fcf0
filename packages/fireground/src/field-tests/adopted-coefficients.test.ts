import { hoseFrictionPsi } from '@plugside/hydraulics';
import { describe, expect, it } from 'vitest';
import { coefficientFor } from '../catalogue/hose.ts';
import { adoptedCoefficients, type HoseTestEntry } from './adopted-coefficients.ts';

const test = (size: string, testedOn: string, c: number, adopted = true): HoseTestEntry => ({
  size,
  testedOn,
  adopted,
  points: [500, 800, 1100].map((flowGpm) => ({
    flowGpm,
    lengthFt: 300,
    lossPsi: hoseFrictionPsi(c, flowGpm, 300),
  })),
});

describe('adopted coefficients', () => {
  it('are the newest adopted test of each size, whatever the order', () => {
    const found = adoptedCoefficients([
      test('5', '2024-06-01', 0.065),
      test('5', '2019-06-01', 0.06),
      test('5', '2026-06-01', 0.07, false),
      test('4', '2023-06-01', 0.15),
    ]);
    expect(found['5']?.coefficient).toBeCloseTo(0.065, 9);
    expect(found['5']?.origin).toMatchObject({ kind: 'measured', date: '2024-06-01' });
    expect(found['4']?.coefficient).toBeCloseTo(0.15, 9);
  });

  it('are what a plan counts with', () => {
    const coefficients = adoptedCoefficients([test('5', '2024-06-01', 0.065)]);
    const used = coefficientFor({ department: { coefficients } }, { hose: '5' });
    expect(used.coefficient).toBeCloseTo(0.065, 9);
    expect(used.origin.kind).toBe('measured');
  });

  it('leave out tests of no known size, and tests that make no sense', () => {
    expect(adoptedCoefficients([test('7', '2024-06-01', 0.05)])).toEqual({});
    expect(adoptedCoefficients([test('5', '2024-06-01', 2)])).toEqual({});
  });
});
