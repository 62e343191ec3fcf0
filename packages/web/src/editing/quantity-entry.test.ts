import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EntryKind, readEntry, shownEntry, stepped } from './quantity-entry.ts';

const wide = { min: -1e6, max: 1e6 };

describe('typing a quantity', () => {
  it('takes a bare number in the unit shown beside the field', () => {
    expect(readEntry('900', 'length', 'us', wide)).toEqual({ ok: true, value: 900 });
    const metres = readEntry('100', 'length', 'si', wide);
    // 1 ft is 0.3048 m by definition (NIST SP 811, B.8).
    expect(metres.ok && metres.value).toBeCloseTo(100 / 0.3048, 9);
  });

  it('takes another unit when it is written, in either system', () => {
    for (const system of ['us', 'si'] as const) {
      const bar = readEntry('4 bar', 'pressure', system, wide);
      // 1 psi is 6.894757 kPa (NIST SP 811, B.8).
      expect(bar.ok && bar.value).toBeCloseTo(400 / 6.894757, 9);
    }
  });

  it('takes thousands with a comma and a typed minus', () => {
    expect(readEntry('1,060', 'flow', 'us', wide)).toEqual({ ok: true, value: 1060 });
    expect(readEntry('−15', 'length', 'us', wide)).toEqual({ ok: true, value: -15 });
  });

  it('refuses words, a wrong unit, and values out of range, saying what would do', () => {
    const words = readEntry('lots', 'flow', 'us', wide);
    expect(words.ok).toBe(false);
    const wrong = readEntry('4 ft', 'pressure', 'us', wide);
    expect(wrong.ok || wrong.message).toMatch(/psi/);
    const far = readEntry('900', 'pressure', 'us', { min: 0, max: 250 });
    expect(far.ok || far.message).toMatch(/0 and 250 psi/);
  });

  it('takes a share in per cent, with the sign or without', () => {
    const range = { min: 0, max: 2 };
    for (const text of ['15', '15%', '15 %', ' 15.0 % ']) {
      expect(readEntry(text, 'share', 'us', range)).toEqual({ ok: true, value: 0.15 });
    }
    expect(shownEntry(0.15, 'share', 'si')).toEqual({ number: '15', unit: '%' });
    expect(stepped(0.15, -1, 'share', 'us', range)).toBe(0.1);
    const far = readEntry('201', 'share', 'us', range);
    expect(far.ok || far.message).toMatch(/0 and 200 %/);
    expect(readEntry('%', 'share', 'us', range).ok).toBe(false);
  });

  it('reads back what it shows, to the digits shown', () => {
    const kinds: EntryKind[] = ['pressure', 'flow', 'length'];
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.constantFrom('us' as const, 'si' as const),
        fc.double({ min: 0, max: 5000, noNaN: true }),
        (kind, system, value) => {
          const first = shownEntry(value, kind, system).number;
          const read = readEntry(first, kind, system, wide);
          expect(read.ok && shownEntry(read.value, kind, system).number).toBe(first);
        },
      ),
    );
  });
});

describe('stepping a quantity', () => {
  it('goes one shown unit, and ten with the big step', () => {
    expect(stepped(62, 1, 'pressure', 'us', wide)).toBe(63);
    expect(stepped(62, -10, 'pressure', 'us', wide)).toBe(52);
  });

  it('lands on a round number from an odd one', () => {
    const step = { us: 25, si: 10 };
    expect(stepped(907, 1, 'length', 'us', { ...wide, step })).toBe(925);
    expect(stepped(907, -1, 'length', 'us', { ...wide, step })).toBe(900);
  });

  it('stays in range', () => {
    expect(stepped(249, 10, 'pressure', 'us', { min: 0, max: 250 })).toBe(250);
    expect(stepped(2, -10, 'count', 'us', { min: 1, max: 6 })).toBe(1);
  });

  it('comes back when it goes up and down again, in either system', () => {
    for (const system of ['us', 'si'] as const) {
      const start = stepped(60, 1, 'pressure', system, wide);
      const there = stepped(start, 3, 'pressure', system, wide);
      expect(stepped(there, -3, 'pressure', system, wide)).toBeCloseTo(start, 9);
    }
  });
});
