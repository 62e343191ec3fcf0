import { describe, expect, it } from 'vitest';
import { flowTestResult } from './flow-test.ts';
import { flowTestHistory } from './flow-test-history.ts';
import { pumpCurve } from './pump-curve.ts';
import { isDatedAhead, latestTestDay } from './test-day.ts';

const test = (testedOn: string, residualPsi = 40) => ({
  id: testedOn,
  testedOn,
  staticPsi: 60,
  residualPsi,
  flowing: [],
  statedFlowGpm: 900,
});
const today = '2027-03-01';

describe('the day of a test', () => {
  it('is tomorrow at the latest, over the end of a month too', () => {
    expect(latestTestDay('2027-02-28')).toBe('2027-03-01');
    expect(isDatedAhead('2027-03-02', today)).toBe(false);
    expect(isDatedAhead('2027-03-03', today)).toBe(true);
  });

  it('is not measured by a clock that has stopped', () => {
    expect(isDatedAhead('2026-10-28', '1970-01-01')).toBe(false);
    expect(isDatedAhead('2030-05-06', '1970-01-01')).toBe(true);
  });

  it('of a flow test that is still to come gives no curve and is never due', () => {
    const result = flowTestResult(test('2030-05-06'), { today });
    expect(result).toMatchObject({ curve: null, q20Gpm: null, retestOn: null });
    expect(result.notices[0]).toMatchObject({ level: 'error', code: 'dated-ahead' });
    expect(result.notices[0]!.text).toContain('2030-05-06');
  });

  it('leaves such a test among the others, unused and told', () => {
    const history = flowTestHistory([test('2026-05-06'), test('2030-05-06')], { today });
    expect(history.tests).toHaveLength(2);
    expect(history.used?.test.id).toBe('2026-05-06');
    expect(history.notices.map(({ code }) => code)).toContain('newer-unusable');
  });

  it('is told of a hydrant that has no other test, too', () => {
    const history = flowTestHistory([test('2030-05-06')], { today });
    expect(history.used).toBeNull();
    expect(history.notices[0]).toMatchObject({ code: 'newer-unusable' });
    expect(history.notices[0]!.text).toContain('Correct its date');
  });

  it('of a pump test is treated alike', () => {
    const pump = (testedOn: string, netPsi: number) => ({
      testedOn,
      points: [{ flowGpm: 1000, netPsi }],
    });
    const curve = pumpCurve([pump('2026-03-01', 150), pump('2030-03-01', 90)], 1000, { today });
    expect(curve.test?.testedOn).toBe('2026-03-01');
    expect(curve.trend).toHaveLength(1);
    expect(curve.notices.map(({ code }) => code)).toContain('dated-ahead');
  });
});

describe('a test that cannot be used', () => {
  it('is due for nothing: it never counted', () => {
    expect(flowTestResult(test('2026-05-06', 70), { today }).retestOn).toBeNull();
    const { statedFlowGpm: _, ...withoutFlow } = test('2026-05-06');
    expect(flowTestResult(withoutFlow, { today }).retestOn).toBeNull();
  });
});
