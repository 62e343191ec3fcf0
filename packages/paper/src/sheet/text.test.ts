import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Ink } from './ink.ts';
import { fitted, printable, widthOf, wrapped, wrappedTo } from './text.ts';

const ink = new Ink({ printedAt: new Date(0), title: 'Text', keepPages: true });
const style = { size: 12 };
const words = fc.array(fc.string({ minLength: 1, maxLength: 25 }), { minLength: 1, maxLength: 12 });
const text = words.map((some) => some.join(' '));
const width = fc.double({ min: 20, max: 400, noNaN: true });
/** Without what is left out on purpose: spaces at the ends of lines. */
const letters = (shown: string) => shown.replaceAll(' ', '');

describe('text in a width', () => {
  it('fitted is never wider', () => {
    fc.assert(
      fc.property(text, width, (given, widthPt) => {
        const found = fitted(ink, given, widthPt, style);
        expect(widthOf(ink, found.text, found.style)).toBeLessThanOrEqual(widthPt + 0.02);
        expect(found.style.size).toBeGreaterThanOrEqual(style.size * 0.7 - 1e-9);
      }),
    );
  });

  it('fitted is whole and at its size where there is room', () => {
    const found = fitted(ink, 'Engine 7', 400, style);
    expect(found).toEqual({ text: 'Engine 7', style });
  });

  it('wrapped is never wider, and loses no letter', () => {
    fc.assert(
      fc.property(text, width, (given, widthPt) => {
        const lines = wrapped(ink, given, widthPt, style);
        for (const line of lines) {
          // A single letter may be wider than the narrowest width.
          if ([...line].length > 1)
            expect(widthOf(ink, line, style)).toBeLessThanOrEqual(widthPt + 0.02);
        }
        expect(letters(lines.join(''))).toBe(letters(printable(ink, given)));
      }),
    );
  });

  it('wrapped to some lines is no more than those, and says with an ellipsis what it leaves out', () => {
    fc.assert(
      fc.property(text, width, fc.integer({ min: 1, max: 3 }), (given, widthPt, most) => {
        const { lines } = wrappedTo(ink, given, widthPt, style, most);
        expect(lines.length).toBeLessThanOrEqual(most);
        const whole = letters(lines.join('')) === letters(printable(ink, given));
        expect(whole || lines.at(-1)!.endsWith('…')).toBe(true);
      }),
    );
  });

  it('shows letters that the font has, and a mark for those that it lacks', () => {
    expect(printable(ink, 'Émile ½ ≤ ⅞\n“x”')).toBe('Émile ½ ≤ ⅞ “x”');
    expect(printable(ink, '消火栓 1')).toBe('??? 1');
  });
});

describe('figures', () => {
  it('are all of one width, so that columns line up', () => {
    for (const bold of [false, true]) {
      const widths = [...'0123456789'].map((digit) => widthOf(ink, digit, { size: 10, bold }));
      expect(new Set(widths.map((one) => one.toFixed(4))).size).toBe(1);
    }
  });
});
