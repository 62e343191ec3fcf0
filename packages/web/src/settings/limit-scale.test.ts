import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitBar } from './limit-scale.ts';

describe('limit bar', () => {
  const any = fc.record({
    value: fc.double({ min: -50, max: 500, noNaN: true }),
    limit: fc.double({ min: 1, max: 400, noNaN: true }),
    sense: fc.constantFrom('min' as const, 'max' as const),
  });

  it('shows room exactly when the limit is kept', () => {
    fc.assert(
      fc.property(any, (check) => {
        const bar = limitBar(check);
        const kept = check.sense === 'min' ? check.value > check.limit : check.value < check.limit;
        if (Math.abs(check.value - check.limit) < 1e-6) return;
        expect(bar.roomTo - bar.roomFrom > 0).toBe(kept);
      }),
    );
  });

  it('puts a passed value on the hatched side', () => {
    const low = limitBar({ value: 12, limit: 20, sense: 'min' });
    expect(low.valueAt).toBeLessThan(low.outTo);
    const high = limitBar({ value: 200, limit: 185, sense: 'max' });
    expect(high.valueAt).toBeGreaterThan(high.outFrom);
  });

  it('stays inside the bar however far the value is', () => {
    fc.assert(
      fc.property(any, (check) => {
        for (const share of Object.values(limitBar(check))) {
          expect(share >= 0 && share <= 1).toBe(true);
        }
      }),
    );
  });
});
