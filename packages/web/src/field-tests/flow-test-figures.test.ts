import { flowTestHistory } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { flowFigures } from './flow-test-figures.ts';

const at = (testedOn: string, staticPsi: number, residualPsi: number, statedFlowGpm: number) => ({
  testedOn,
  staticPsi,
  residualPsi,
  flowing: [],
  statedFlowGpm,
});

const drawn = (tests: ReturnType<typeof at>[], system: 'us' | 'si' = 'us') => {
  const history = flowTestHistory(tests);
  return flowFigures(history.tests, history.used, system, 700, 400);
};

describe('the paper', () => {
  it('keeps static, test and rated flow on one straight line: Water-supply analysis, slide 16', () => {
    const { main, rated } = drawn([at('2024-05-01', 86, 42, 789)]);
    const [[x0, y0], [x1, y1]] = [main!.measured[0]!, main!.measured[1]!];
    const [x2, y2] = rated!;
    expect((y2 - y0) / (x2 - x0)).toBeCloseTo((y1 - y0) / (x1 - x0), 9);
    expect(main!.projected.at(-1)).toEqual(rated);
  });

  it('draws no projection for a test that went below its rating, and its mark before the test', () => {
    const { main, rated } = drawn([at('1975-09-30', 53, 5, 331)]);
    expect(main!.projected).toEqual([]);
    expect(rated![0]).toBeLessThan(main!.dots[0]![0]);
  });

  it('puts the rating of a weak hydrant at half its static, not at 20 psi', () => {
    const { y, ratingY } = drawn([at('2024-05-01', 30, 25, 400)]);
    expect(ratingY).toBeCloseTo(y.at(15), 9);
  });

  it('is the same drawing in either system, with round marks in each', () => {
    const us = drawn([at('2024-05-01', 86, 42, 789)]);
    const si = drawn([at('2024-05-01', 86, 42, 789)], 'si');
    expect(si.rated).toEqual(us.rated);
    expect(si.main!.measured).toEqual(us.main!.measured);
    expect(si.x.ticks.map(({ text }) => text)).not.toEqual(us.x.ticks.map(({ text }) => text));
    // 3.785411784 L to the US gallon (NIST SP 811).
    for (const { value, text } of si.x.ticks) {
      expect(value * 3.785411784).toBeCloseTo(Number(text.replaceAll(',', '')), 3);
    }
  });

  it('joins the points of one day, and keeps other years behind', () => {
    const figures = drawn([
      at('2023-06-01', 68, 50, 223),
      at('2023-06-01', 68, 39, 416),
      at('2023-06-01', 68, 13, 538),
      at('2015-06-01', 70, 30, 600),
    ]);
    expect(figures.main!.dots).toHaveLength(3);
    expect(figures.main!.steps).toHaveLength(4);
    expect(figures.others.map(({ test }) => test.test.testedOn)).toEqual(['2015-06-01']);
  });

  it('stands empty without a usable test', () => {
    const { main, rated } = drawn([at('2024-05-01', 40, 60, 500)]);
    expect(main).toBeNull();
    expect(rated).toBeNull();
  });
});
