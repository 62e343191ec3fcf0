import { supplyCurvePsi } from '@plugside/hydraulics';
import { describe, expect, it } from 'vitest';
import { exponentPaper } from './exponent-paper.ts';

describe('N1.85 paper', () => {
  const paper = exponentPaper(1500, [40, 640]);

  it('makes a supply curve a straight line: Water-supply analysis, slide 16', () => {
    const test = { staticPsi: 86, residualPsi: 42, testGpm: 789 };
    const slope = (supplyCurvePsi(test, 789) - 86) / (paper.x(789) - paper.x(0));
    for (const flow of [100, 500, 982, 1200]) {
      const onLine = 86 + slope * (paper.x(flow) - paper.x(0));
      expect(supplyCurvePsi(test, flow)).toBeCloseTo(onLine, 9);
    }
  });

  it('puts half the flow at 27.7 % of the way: 0.5 to the power 1.85 is 0.277', () => {
    expect((paper.x(750) - 40) / 600).toBeCloseTo(0.277, 3);
  });

  it('reads a place back as its flow', () => {
    for (const flow of [0, 1, 250, 1500]) expect(paper.flowAt(paper.x(flow))).toBeCloseTo(flow, 6);
  });

  it('marks round flows no closer than asked, in either system', () => {
    for (const perGpm of [1, 3.785411784]) {
      const ticks = paper.ticks(40, perGpm);
      expect(ticks.length).toBeGreaterThan(4);
      for (const [at, { flowGpm, shown }] of ticks.entries()) {
        expect(shown % 50).toBe(0);
        expect(flowGpm * perGpm).toBeCloseTo(shown, 9);
        if (at > 0) {
          expect(paper.x(flowGpm) - paper.x(ticks[at - 1]!.flowGpm)).toBeGreaterThanOrEqual(
            40 - 1e-9,
          );
        }
      }
    }
  });

  it('refuses an axis without flow', () => {
    expect(() => exponentPaper(0, [0, 1])).toThrow(/mostGpm is 0; allowed: more than 0 gpm/);
  });
});
