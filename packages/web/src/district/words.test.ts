import { describe, expect, it } from 'vitest';
import { unitsIn } from '../editing/use-units.ts';
import { agoWords, riseWords } from './words.ts';

describe('how long ago a test was', () => {
  it('counts whole months by the calendar', () => {
    expect(agoWords('2026-11-01', '2026-11-25')).toBe('this month');
    expect(agoWords('2026-10-25', '2026-11-25')).toBe('1 month ago');
    expect(agoWords('2026-10-26', '2026-11-25')).toBe('this month');
    expect(agoWords('2025-01-31', '2026-11-25')).toBe('21 months ago');
  });

  it('counts years from two on', () => {
    expect(agoWords('2024-11-25', '2026-11-25')).toBe('2 years ago');
    expect(agoWords('2024-11-26', '2026-11-25')).toBe('23 months ago');
    expect(agoWords('2016-11-26', '2026-11-25')).toBe('9 years ago');
  });
});

describe('the rise of a lay', () => {
  it('says which way, and when it is not known', () => {
    const units = unitsIn('us');
    expect(riseWords(12, units)).toBe('up 12 ft');
    expect(riseWords(-8, units)).toBe('down 8 ft');
    expect(riseWords(0.2, units)).toBe('level');
    expect(riseWords(null, units)).toBe('rise not known');
  });
});
