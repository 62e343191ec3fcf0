import { describe, expect, it } from 'vitest';
import { departmentLimits } from './department-limits.ts';

describe('a department’s own limits', () => {
  it('are those of its setting', () => {
    const value = { leastDischargePsi: 60, mainResidualPsi: 25 };
    const district = { name: 'district', value: { name: 'Quillmere' } };
    expect(departmentLimits([district, { name: 'limits', value }])).toEqual(value);
    expect(departmentLimits([district])).toEqual({});
    expect(departmentLimits([])).toEqual({});
  });

  it.each([
    [{ leastPsi: 60 }, /has "leastPsi"; allowed: mainResidualPsi,/],
    [{ leastDischargePsi: -1 }, /leastDischargePsi -1; allowed: a number from 0/],
    [{ leastDischargePsi: '60' }, /leastDischargePsi "60"; allowed/],
    [60, /is 60; allowed: names and numbers/],
  ])('refuse what no limit can be: %j', (value, words) => {
    expect(() => departmentLimits([{ name: 'limits', value }])).toThrow(words);
  });
});
