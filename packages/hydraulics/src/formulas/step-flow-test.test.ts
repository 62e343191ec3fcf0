import { describe, expect, test } from 'vitest';
import { hydrantMultiPointRows } from './published/flow-tests.ts';
import { misses, titled } from './published/published-row.ts';
import { stepFlowAt } from './step-flow-test.ts';

const steps = [
  { residualPsi: 50, testGpm: 223 },
  { residualPsi: 39, testGpm: 416 },
  { residualPsi: 13, testGpm: 538 },
];

describe('test by steps', () => {
  test.each(titled(hydrantMultiPointRows))('%s', (_, row) => {
    const { staticPsi, points, targetPsi } = row.given;
    const given = points.map(([residualPsi, testGpm]) => ({
      residualPsi: residualPsi!,
      testGpm: testGpm!,
    }));
    const [first, second, third] = stepFlowAt(staticPsi, given, targetPsi).projectedGpm;
    const got = {
      availableFrom1Gpm: first!,
      availableFrom2Gpm: second!,
      availableFrom3Gpm: third!,
    };
    expect(misses(row, got)).toEqual([]);
  });

  test('reads between the two steps around the residual, whatever the order given', () => {
    for (const given of [steps, [...steps].reverse()]) {
      const { flowGpm, basis } = stepFlowAt(68, given, 20);
      expect(basis).toBe('between steps');
      expect(flowGpm).toBeGreaterThan(416);
      expect(flowGpm).toBeLessThan(538);
    }
  });

  test('runs through every step', () => {
    for (const step of steps) {
      expect(stepFlowAt(68, steps, step.residualPsi).flowGpm).toBeCloseTo(step.testGpm, 9);
    }
    expect(stepFlowAt(68, steps, 68).flowGpm).toBe(0);
  });

  test('projects past the last step and says so', () => {
    const { flowGpm, basis, projectedGpm } = stepFlowAt(68, steps.slice(0, 2), 20);
    expect(basis).toBe('projected');
    expect(flowGpm).toBe(projectedGpm[1]);
  });

  test('refuses steps that do not fall', () => {
    const rising = [steps[0]!, { residualPsi: 55, testGpm: 416 }];
    expect(() => stepFlowAt(68, rising)).toThrow('more flow must leave less pressure');
    expect(() => stepFlowAt(68, [])).toThrow('one step or more');
  });
});
