import fc from 'fast-check';
import { expect, it } from 'vitest';
import { EDGE, graphHeight } from '../field-tests/graph-frame.ts';
import { tradeOffPicture } from './trade-off-picture.ts';
import { MARK_PX, NUMBER_HEIGHT_PX } from './trade-off-places.ts';

const DEMAND_GPM = 1000;
/** As wide as the picture is drawn on a phone, a tablet and a desk. */
const WIDTHS_PX = [350, 560, 780];

const figures = fc.record({
  mostGpm: fc.oneof(
    fc.integer({ min: 50, max: 1700 }),
    fc.integer({ min: DEMAND_GPM - 40, max: DEMAND_GPM + 40 }),
  ),
  fullAtMin: fc.double({ min: 3, max: 14, noNaN: true }),
});

function drawn(ways: readonly { mostGpm: number; fullAtMin: number }[], widthPx: number) {
  const heightPx = graphHeight(widthPx);
  const told = ways.map(({ mostGpm, fullAtMin }) => ({
    mostGpm,
    meetsDemand: mostGpm >= DEMAND_GPM,
    time: { fullAtMin },
  }));
  const words = 'needed 1,000 gpm';
  const choice = { ways: told, demandGpm: DEMAND_GPM };
  const picture = tradeOffPicture(choice, { widthPx, heightPx }, 'us', words);
  return { ...picture, heightPx, wordsPx: words.length * 6 };
}

/** Read off the axes with a ruler: between the marks of 0 and of another figure. */
function readOff(at: number, axis: { at(value: number): number }, value: number): number {
  return ((at - axis.at(0)) / (axis.at(value) - axis.at(0))) * value;
}

const apart = (
  one: { x: number; y: number },
  two: { x: number; y: number },
  x: number,
  y: number,
) => Math.abs(one.x - two.x) >= x - 1e-6 || Math.abs(one.y - two.y) >= y - 1e-6;

it('has each mark where its figures are and on its side of the needed line', () => {
  fc.assert(
    fc.property(
      fc.array(figures, { minLength: 1, maxLength: 30 }),
      fc.constantFrom(...WIDTHS_PX),
      (ways, widthPx) => {
        const { marks, x, y, demandY, heightPx } = drawn(ways, widthPx);
        ways.forEach(({ mostGpm, fullAtMin }, index) => {
          const mark = marks[index]!;
          expect(readOff(mark.y, y, 500)).toBeCloseTo(mostGpm, 3);
          expect(readOff(mark.x, x, 2)).toBeCloseTo(fullAtMin, 3);
          if (mostGpm >= DEMAND_GPM) expect(mark.y).toBeLessThanOrEqual(demandY);
          else expect(mark.y).toBeGreaterThan(demandY);
          expect(mark.y).toBeGreaterThanOrEqual(EDGE.top);
          expect(mark.y).toBeLessThanOrEqual(heightPx - EDGE.bottom);
        });
      },
    ),
  );
});

it('puts no number over another, a mark or the words of the demand, and no mark under the words', () => {
  fc.assert(
    fc.property(
      fc.array(figures, { minLength: 1, maxLength: 30 }),
      fc.constantFrom(...WIDTHS_PX),
      (ways, widthPx) => {
        const { marks, numbers, words, wordsPx } = drawn(ways, widthPx);
        numbers.forEach((number, index) => {
          for (const other of numbers.slice(0, index)) {
            expect(apart(number, other, 8, NUMBER_HEIGHT_PX)).toBe(true);
          }
          for (const mark of marks) {
            expect(apart(number, mark, 4 + MARK_PX, NUMBER_HEIGHT_PX / 2 + MARK_PX)).toBe(true);
          }
          expect(apart(number, words, 4 + wordsPx / 2, NUMBER_HEIGHT_PX)).toBe(true);
        });
        for (const mark of marks) {
          expect(apart(mark, words, MARK_PX + wordsPx / 2, MARK_PX + 8)).toBe(true);
        }
      },
    ),
  );
});

it('keeps numbers of ways that bring enough above the line, the others under it', () => {
  // As a hotel's ways stand: most near the demand, several at the same minute.
  const ways = [1243, 1157, 1060, 1031, 1004, 998, 990, 968, 961, 924, 883, 871, 712, 679].map(
    (mostGpm, index) => ({ mostGpm, fullAtMin: 5.2 + (index % 4) * 0.4 }),
  );
  for (const widthPx of WIDTHS_PX) {
    const { numbers, demandY } = drawn(ways, widthPx);
    numbers.forEach(({ y }, index) => {
      if (ways[index]!.mostGpm >= DEMAND_GPM) expect(y).toBeLessThan(demandY - 7);
      else expect(y).toBeGreaterThan(demandY + 7);
    });
  }
});

it('writes a number right beside its mark where nothing is near', () => {
  const ways = [
    { mostGpm: 1400, fullAtMin: 4 },
    { mostGpm: 600, fullAtMin: 12 },
  ];
  const { marks, numbers } = drawn(ways, 350);
  marks.forEach(({ x, y }, index) => {
    expect(Math.hypot(numbers[index]!.x - x, numbers[index]!.y - y)).toBeLessThan(16);
  });
});
