import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readEntry } from '../editing/quantity-entry.ts';
import { readingText } from './reading-text.ts';

it('shows a gauge reading as it was typed, in either system', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('us' as const, 'si' as const),
      fc.integer({ min: 0, max: 30_000 }),
      (system, hundredths) => {
        const typed = String(hundredths / 100);
        const read = readEntry(typed, 'pressure', system, { min: 0, max: 1e6 });
        const shown = read.ok && readingText(read.value, 'pressure', system).replaceAll(',', '');
        expect(shown).toBe(typed);
      },
    ),
    { seed: 7 },
  );
});

it('keeps inches as fractions and whole numbers whole', () => {
  expect(readingText(2.5, 'diameter', 'us')).toBe('2½');
  expect(readingText(1000, 'flow', 'us')).toBe('1,000');
  expect(readingText(1700, 'count', 'si')).toBe('1,700');
});
