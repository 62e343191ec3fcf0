import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { type Quantity, quantities } from '../../units/quantities.ts';
import { writtenQuantity } from './written-quantity.ts';

it.each<[value: number, quantity: Quantity, text: string]>([
  // NIST SP 811, appendix B: 1 ft = 0.3048 m and 1 in = 25.4 mm, both exactly.
  [900, 'length', '274.32 m'],
  [35, 'length', '10.668 m'],
  [1.375, 'diameter', '34.925 mm'],
])('%d of a %s is written %s', (value, quantity, text) => {
  expect(writtenQuantity(value, quantity, 'si')).toBe(text);
});

it('is read back as the very same value in US units, to eleven digits in SI units', () => {
  const quantity = fc.constantFrom(...(Object.keys(quantities) as Quantity[]));
  fc.assert(
    fc.property(quantity, fc.double({ min: -500, max: 1e5, noNaN: true }), (of, given) => {
      const value = given + 0 === 0 ? 0 : given;
      expect(parseQuantity(writtenQuantity(value, of, 'us'), of)).toMatchObject({ value });
      const metric = parseQuantity(writtenQuantity(value, of, 'si'), of);
      // A temperature near the other scale's zero loses what the shift by 32 takes.
      const near = 1e-11 * (Math.abs(value) + 32);
      expect(metric.ok && Math.abs(metric.value - value)).toBeLessThanOrEqual(near);
    }),
    { numRuns: 500 },
  );
});
