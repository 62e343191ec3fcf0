import { describe, expect, it } from 'vitest';
import { quickEstimate } from './quick-estimate.ts';

const more = (staticPsi: number, residualPsi: number, flowGpm = 250) => {
  const found = quickEstimate({ staticPsi, residualPsi, flowGpm });
  return Object.fromEntries(found.rules.map((rule) => [rule.method, rule.moreLines]));
};

describe('the rules', () => {
  it('80 to 60 psi at 500 gpm is one more by percentage: Tracking/estimating water supply on the fire ground', () => {
    const found = quickEstimate({ staticPsi: 80, residualPsi: 60, flowGpm: 500 });
    expect(found.dropPercent).toBeCloseTo(25, 9);
    expect(found.rules[0]).toMatchObject({ method: 'percent', moreLines: 1, totalGpm: 1000 });
  });

  it('70 to 60 psi is two more by percentage: Engineer’s Test 2014 study cards', () => {
    expect(more(70, 60).percent).toBe(2);
  });

  it('65 to 59 psi is three more by the first digit: Tracking/estimating water supply on the fire ground', () => {
    expect(more(65, 59)['first digit']).toBe(3);
  });

  it('a 5 psi drop from 70 is three lines in all by squaring, from memory of driver/operator texts', () => {
    expect(more(70, 65).squaring).toBe(2);
  });
});

describe('the curve beside them', () => {
  it.each([
    // (60/20)^0.54 − 1 and (60/8)^0.54 − 1, by hand.
    [80, 60, 0.81, 0],
    [80, 72, 1.97, 1],
  ])('from %i to %i psi there are %d volumes more, %i whole lines', (s, r, volumes, lines) => {
    const found = quickEstimate({ staticPsi: s, residualPsi: r, flowGpm: 500 });
    expect(found.moreVolumes).toBeCloseTo(volumes, 2);
    expect(found.curve?.moreLines).toBe(lines);
    expect(found.curve!.leftPsi).toBeGreaterThanOrEqual(20);
  });

  it('is said where the percentage rule promises more than it', () => {
    const codes = quickEstimate({ staticPsi: 80, residualPsi: 72, flowGpm: 500 }).notices.map(
      ({ code }) => code,
    );
    expect(codes).toContain('percent-overstates');
    expect(codes).toContain('rule-of-thumb');
  });

  it('one line more than the curve’s whole lines would go under 20 psi', () => {
    for (const residualPsi of [78, 70, 60, 45, 30]) {
      const { q20Gpm, curve } = quickEstimate({ staticPsi: 80, residualPsi, flowGpm: 200 });
      expect(curve!.totalGpm).toBeLessThanOrEqual(Math.max(q20Gpm!, 200) + 1e-6);
      expect(curve!.totalGpm + 200).toBeGreaterThan(q20Gpm!);
    }
  });
});

it('refuses readings that tell nothing, each with its reason', () => {
  const code = (staticPsi: number, residualPsi: number, flowGpm: number) =>
    quickEstimate({ staticPsi, residualPsi, flowGpm }).notices[0]?.code;
  expect(code(60, 80, 250)).toBe('residual-above-static');
  expect(code(60, 60, 250)).toBe('no-drop');
  expect(code(60, 50, 0)).toBe('no-flow');
  expect(code(0, 0, 250)).toBe('no-static');
});

it('has no more lines for an intake under 20 psi already', () => {
  const found = quickEstimate({ staticPsi: 40, residualPsi: 15, flowGpm: 250 });
  expect(found.curve?.moreLines).toBe(0);
  expect(found.moreVolumes).toBeLessThan(0);
  expect(found.notices.map(({ code }) => code)).toContain('under-20');
});
