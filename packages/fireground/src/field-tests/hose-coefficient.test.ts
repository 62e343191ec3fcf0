import { hoseFrictionPsi } from '@plugside/hydraulics';
import { describe, expect, it } from 'vitest';
import { fitCoefficient, type HoseReading } from './hose-coefficient.ts';
import { studentT95 } from './student-t.ts';

/** Seeded uniform numbers in 0..1: mulberry32 by Tommy Ettinger (2017). */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normal numbers by Box and Muller (1958). */
function normal(next: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** Small beside the least loss (3 psi), so that no reading is refused as a gain. */
const NOISE_PSI = 0.5;
const flows = [400, 600, 800, 1000, 1200, 1400];
const readings = (coefficient: number, noisePsi: () => number): HoseReading[] =>
  flows.map((flowGpm) => ({
    flowGpm,
    lengthFt: 300,
    lossPsi: hoseFrictionPsi(coefficient, flowGpm, 300) + noisePsi(),
  }));
const exact = (coefficient: number) => readings(coefficient, () => 0);

/** Weighted least squares by the normal equations of any number of columns, Gauss elimination. */
function normalEquations(columns: number[][], y: number[]): number[] {
  const size = columns.length;
  const rows = columns.map((a) => [
    ...columns.map((b) => a.reduce((sum, value, at) => sum + value * b[at]!, 0)),
    a.reduce((sum, value, at) => sum + value * y[at]!, 0),
  ]);
  for (let pivot = 0; pivot < size; pivot++) {
    for (let row = pivot + 1; row < size; row++) {
      const factor = rows[row]![pivot]! / rows[pivot]![pivot]!;
      rows[row] = rows[row]!.map((value, at) => value - factor * rows[pivot]![at]!);
    }
  }
  const found: number[] = new Array(size).fill(0);
  for (let row = size - 1; row >= 0; row--) {
    const rest = found.reduce(
      (sum, value, at) => sum + (at > row ? value * rows[row]![at]! : 0),
      0,
    );
    found[row] = (rows[row]![size]! - rest) / rows[row]![row]!;
  }
  return found;
}

describe('the fit', () => {
  it('gives back a coefficient that the losses were made with', () => {
    const fit = fitCoefficient(exact(0.067), '5');
    expect(fit.coefficient).toBeCloseTo(0.067, 12);
    expect(fit.standardError).toBeCloseTo(0, 12);
  });

  it('agrees with the normal equations solved by elimination, with and without a second column', () => {
    const next = uniform(5);
    const points = readings(0.067, () => normal(next) * NOISE_PSI);
    const x = points.map(({ flowGpm, lengthFt }) => (flowGpm / 100) ** 2 * (lengthFt / 100));
    const y = points.map(({ lossPsi }) => lossPsi);
    expect(fitCoefficient(points).coefficient).toBeCloseTo(normalEquations([x], y)[0]!, 12);
    // Orthogonal to x, so it cannot change the first column's answer.
    const other = x.map((value, at) => (at % 2 === 0 ? 1 : -1) / value);
    expect(normalEquations([x, other], y)[0]).toBeCloseTo(fitCoefficient(points).coefficient!, 10);
  });

  it('leaves residuals that are square to what C multiplies, and no other C fits better', () => {
    const next = uniform(77);
    const fit = fitCoefficient(readings(0.2, () => normal(next) * 3));
    const loss = (c: number) =>
      fit.residuals.reduce(
        (sum, { flowGpm, lengthFt, lossPsi }) =>
          sum + (lossPsi - c * (flowGpm / 100) ** 2 * (lengthFt / 100)) ** 2,
        0,
      );
    const best = loss(fit.coefficient!);
    for (const step of [-1e-3, 1e-3]) expect(loss(fit.coefficient! + step)).toBeGreaterThan(best);
  });

  it('has the standard error of its scatter: σ/√Σx² over 2,000 seeded tests', () => {
    const next = uniform(1908);
    const found = Array.from(
      { length: 2000 },
      () => fitCoefficient(readings(0.067, () => normal(next) * NOISE_PSI)).coefficient!,
    );
    const mean = found.reduce((a, b) => a + b, 0) / found.length;
    const spread = Math.sqrt(
      found.reduce((sum, c) => sum + (c - mean) ** 2, 0) / (found.length - 1),
    );
    const sumSquares = flows.reduce((sum, q) => sum + ((q / 100) ** 2 * 3) ** 2, 0);
    // Theory: variance of the estimate is σ²/Σx². 2,000 draws tell it to about 2 % (1/√(2·2000)).
    expect(spread / (NOISE_PSI / Math.sqrt(sumSquares))).toBeGreaterThan(0.94);
    expect(spread / (NOISE_PSI / Math.sqrt(sumSquares))).toBeLessThan(1.06);
    expect(Math.abs(mean - 0.067)).toBeLessThan((4 * spread) / Math.sqrt(found.length));
  });

  it('has a 95 % range that holds the true value in 95 % of 2,000 seeded tests', () => {
    const next = uniform(95);
    let holds = 0;
    for (let run = 0; run < 2000; run++) {
      const { low, high } = fitCoefficient(readings(0.067, () => normal(next) * NOISE_PSI));
      if (low! <= 0.067 && 0.067 <= high!) holds++;
    }
    // Binomial: 0.95 ± 4·√(0.95·0.05/2000) = 0.931 to 0.969.
    expect(holds / 2000).toBeGreaterThan(0.931);
    expect(holds / 2000).toBeLessThan(0.969);
  });
});

describe('Student’s t', () => {
  it.each([1, 2, 3, 5, 10, 20, 30, 45, 90])(
    'leaves a twentieth outside with %i degrees of freedom, by integrating its density',
    (freedom) => {
      // ∫ of (1 + t²/ν)^(−(ν+1)/2) with t = √ν·tan θ becomes ∫ cos^(ν−1) θ, smooth and bounded.
      const area = (top: number) => {
        const steps = 20_000;
        let sum = 0;
        for (let at = 0; at < steps; at++) {
          sum += Math.cos(((at + 0.5) / steps) * top) ** (freedom - 1) * (top / steps);
        }
        return sum;
      };
      const inside = area(Math.atan(studentT95(freedom) / Math.sqrt(freedom))) / area(Math.PI / 2);
      expect(Math.abs(inside - 0.95)).toBeLessThan(2e-4);
    },
  );
});

describe('published losses', () => {
  it('of 5 in hose, 6 psi at 1,000 and 15 at 1,500 gpm per 100 ft, give 0.060 to 0.067: Working With Large-Diameter Hose Part 1, Fire Engineering', () => {
    const one = fitCoefficient([{ flowGpm: 1000, lossPsi: 6, lengthFt: 100 }], '5');
    expect(one.coefficient).toBeCloseTo(0.06, 9);
    expect(one.plusMinus).toBeNull();
    const both = fitCoefficient(
      [
        { flowGpm: 1000, lossPsi: 6, lengthFt: 100 },
        { flowGpm: 1500, lossPsi: 15, lengthFt: 100 },
      ],
      '5',
    );
    expect(both.coefficient).toBeGreaterThan(0.06);
    expect(both.coefficient).toBeLessThan(0.0667);
    expect(both.againstBook).toBeLessThan(0);
  });

  it('of a 3,550 ft lay of 5 in hose at 700 gpm and 100 psi give C 0.057: 3,550 ft relay pumping drill 2015', () => {
    // The source pumper alone at 100 psi gave about 700 gpm, so no more than 100 psi was lost.
    const fit = fitCoefficient([{ flowGpm: 700, lossPsi: 100, lengthFt: 3550 }], '5');
    expect(Math.abs(fit.coefficient! - 0.0575)).toBeLessThan(0.001);
  });

  it.each([
    ['2-1/2', 2, 500, 50],
    ['2-1/2', 2, 1000, 200],
    ['3', 0.8, 1000, 80],
    ['4', 0.2, 1000, 20],
  ] as const)(
    'of %s hose are C %d: %i gpm loses %i psi in 100 ft, Which Supply Line?, FireRescue1',
    (size, c, flowGpm, lossPsi) => {
      expect(fitCoefficient([{ flowGpm, lossPsi, lengthFt: 100 }], size).coefficient).toBeCloseTo(
        c,
        9,
      );
    },
  );
});

describe('nonsense', () => {
  it.each([
    ['nothing', []],
    ['no flow', [{ flowGpm: 0, lossPsi: 5, lengthFt: 100 }]],
    ['no length', [{ flowGpm: 500, lossPsi: 5, lengthFt: 0 }]],
    ['a gain', [{ flowGpm: 500, lossPsi: -5, lengthFt: 100 }]],
    ['no number', [{ flowGpm: Number.NaN, lossPsi: 5, lengthFt: 100 }]],
    ['no loss at all', [{ flowGpm: 500, lossPsi: 0, lengthFt: 100 }]],
  ])('is refused with the reason: %s', (_, points) => {
    const fit = fitCoefficient(points, '5');
    expect(fit.coefficient).toBeNull();
    expect(fit.notices[0]?.level).toBe('error');
  });

  it('is refused where the readings are of another hose', () => {
    // 2½ in hose (C 2) entered as 5 in (C 0.08).
    const fit = fitCoefficient(exact(2), '5');
    expect(fit.coefficient).toBeNull();
    expect(fit.notices.map(({ code }) => code)).toContain('not-this-hose');
    expect(fitCoefficient(exact(2), '2-1/2').coefficient).toBeCloseTo(2, 9);
  });

  it('is told where a height of 40 ft was left in', () => {
    const left = exact(0.067).map((one) => ({ ...one, lossPsi: one.lossPsi + 40 * 0.434 }));
    expect(fitCoefficient(left).notices.map(({ code }) => code)).toContain('not-square');
    expect(fitCoefficient(exact(0.067)).notices).toEqual([]);
  });

  it('is told where one reading stands apart', () => {
    const next = uniform(3);
    const slip = readings(0.067, () => normal(next)).map((one, at) =>
      at === 2 ? { ...one, lossPsi: one.lossPsi + 25 } : one,
    );
    const notice = fitCoefficient(slip).notices.find(({ code }) => code === 'stands-apart');
    expect(notice?.text).toContain('Reading 3');
  });
});
