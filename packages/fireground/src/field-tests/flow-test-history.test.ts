import { describe, expect, it } from 'vitest';
import { flowTestHistory, type HistoryEntry } from './flow-test-history.ts';

const at = (id: string, testedOn: string, staticPsi: number, residualPsi: number, gpm: number) =>
  ({
    id,
    testedOn,
    staticPsi,
    residualPsi,
    flowing: [],
    statedFlowGpm: gpm,
  }) satisfies HistoryEntry;

describe('three points of one day', () => {
  // NFPA 291 flow-test selection article, three-point test (industrialmonitordirect.com).
  const points = [
    at('a', '2023-06-01', 68, 50, 223),
    at('b', '2023-06-01', 68, 39, 416),
    at('c', '2023-06-01', 68, 13, 538),
  ];

  it('project 379, 546 and 500 gpm at 20 psi, worked by hand from the article’s readings', () => {
    const { tests } = flowTestHistory(points);
    const q20 = tests.map(({ result }) => Math.round(result.q20Gpm!));
    expect(q20).toEqual([379, 546, 500]);
  });

  it('are told to disagree by 44 %, and are read between the two around 20 psi', () => {
    const { days, notices } = flowTestHistory(points);
    expect(days).toHaveLength(1);
    expect(days[0]!.spreadShare).toBeCloseTo(0.44, 2);
    expect(days[0]!.basis).toBe('between steps');
    // On N1.85 paper by hand: 416^1.852 = 70,815 and 538^1.852 = 114,033; 19/26 of the way: 507.
    expect(Math.abs(days[0]!.flowGpm! - 507)).toBeLessThan(1.5);
    expect(notices.map(({ code }) => code)).toContain('points-disagree');
  });

  it('give plans the one that drew the main down most', () => {
    expect(flowTestHistory(points.toReversed()).used?.test.id).toBe('c');
  });

  it('are said to be out of order where more flow left more pressure', () => {
    const odd = [at('a', '2023-06-01', 68, 50, 423), at('b', '2023-06-01', 68, 39, 416)];
    expect(flowTestHistory(odd).days[0]).toMatchObject({ flowGpm: null, basis: null });
  });
});

describe('tests over the years', () => {
  const years = [
    at('n', '2020-05-01', 72, 50, 1000),
    at('o', '2010-05-01', 80, 60, 1178),
    at('m', '2015-05-01', 76, 55, 1090),
  ];

  it('stand oldest first, and plans use the newest', () => {
    const history = flowTestHistory(years);
    expect(history.tests.map(({ test }) => test.id)).toEqual(['o', 'm', 'n']);
    expect(history.used?.test.id).toBe('n');
    expect(history.usedBecause).toBe('newest');
  });

  it('follow the choice where there is one, and say that a newer one stands', () => {
    const history = flowTestHistory(years, { chosenId: 'm' });
    expect(history).toMatchObject({ usedBecause: 'chosen', used: { test: { id: 'm' } } });
    expect(history.notices.map(({ code }) => code)).toContain('newer-test');
  });

  it('fall back to the newest usable one where the chosen one is gone or useless', () => {
    const useless = at('x', '2022-05-01', 60, 70, 900);
    for (const chosenId of ['x', 'gone']) {
      const history = flowTestHistory([...years, useless], { chosenId });
      expect(history.used?.test.id).toBe('n');
      expect(history.notices.map(({ code }) => code)).toContain('chosen-unusable');
    }
  });

  it('give the slope of static: 8 psi in 10 years', () => {
    // Evenly spaced and on a line, so the slope is the plain difference.
    expect(flowTestHistory(years).trend?.staticPsiPerYear).toBeCloseTo(-0.8, 2);
  });

  it('say that a change is within what the gauges can tell', () => {
    // n·Q/d and n·Q·(1/a − 1/d) by hand for 80/64 psi and 1,000 gpm, a = 60, d = 16:
    // Q20 = 1000·(60/16)^0.54 = 2041.7; 0.54·2041.7 = 1102.5; 68.91 and −50.53: √(…) = 85.45.
    // For 80/63, d = 17: Q20 = 1000·(60/17)^0.54 = 1975.9; 1067.0; 62.76 and −44.98: 77.21.
    const drift = [at('a', '2024-05-01', 80, 64, 1000), at('b', '2025-05-01', 80, 63, 1000)];
    const { trend, notices } = flowTestHistory(drift);
    expect(trend!.q20GpmPerYear).toBeCloseTo(1975.9 - 2041.7, -0.5);
    expect(trend!.q20ErrorGpmPerYear / 2).toBeCloseTo(Math.hypot(85.45, 77.21), 0);
    expect(trend!.withinReadingError).toBe(true);
    expect(notices.map(({ code }) => code)).not.toContain('flow-fell');
  });

  it('leave a drop under 10 % out of the trend', () => {
    const drops = [
      at('a', '2022-05-01', 80, 60, 1100),
      at('b', '2024-05-01', 80, 60, 1100),
      at('c', '2026-05-01', 80, 77, 1100),
    ];
    const { trend } = flowTestHistory(drops);
    expect(trend).toMatchObject({ leftOut: 1, withinReadingError: true });
    expect(trend!.q20GpmPerYear).toBeCloseTo(0, 9);
  });

  it('ask about a flow that fell by a fifth and a static that moved by 10 psi', () => {
    const fell = [at('a', '2018-05-01', 80, 60, 1178), at('b', '2024-05-01', 68, 40, 900)];
    const codes = flowTestHistory(fell).notices.map(({ code }) => code);
    expect(codes).toEqual(['flow-fell', 'static-moved']);
    expect(flowTestHistory(years).notices.map(({ code }) => code)).not.toContain('static-moved');
  });

  it('tell no trend from one test, or from tests within a year', () => {
    expect(flowTestHistory(years.slice(0, 1)).trend).toBeNull();
    const close = [at('a', '2024-05-01', 80, 60, 1100), at('b', '2024-09-01', 78, 60, 1100)];
    expect(flowTestHistory(close).trend).toBeNull();
  });

  it('of none are empty', () => {
    expect(flowTestHistory([])).toMatchObject({ used: null, usedBecause: null, trend: null });
  });
});
