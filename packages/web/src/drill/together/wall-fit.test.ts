import { describe, expect, it } from 'vitest';
import { nextFit, wallFits } from './wall-fit.ts';

/** Tries until it stays. */
function settled(highAt: (at: number) => number, roomPx: number): number {
  let at = 0;
  for (let next = nextFit(at, highAt(at), roomPx); next !== at; ) {
    at = next;
    next = nextFit(at, highAt(at), roomPx);
  }
  return at;
}

describe('a wall that is brought to fit', () => {
  it('is as large as may be where there is room', () => {
    expect(settled(() => 700, 800)).toBe(0);
  });

  it('goes no smaller than it must', () => {
    // 1,000 px high at its own size in room for 800: four fifths of it, and no less.
    const { shrink, most } = wallFits[settled(() => 1000, 800)]!;
    expect(shrink).toBe(0.8);
    expect(most).toBe(1);
  });

  it('leaves the words their size where a smaller drawing is enough', () => {
    const at = settled((tried) => 300 + 400 * wallFits[tried]!.most, 800);
    expect(wallFits[at]).toEqual({ most: 1.2, shrink: 1 });
  });

  it('ends at the smallest, and never grows from one to the next', () => {
    expect(settled(() => 1e5, 800)).toBe(wallFits.length - 1);
    wallFits.slice(1).forEach((fit, at) => {
      expect(fit.most * fit.shrink).toBeLessThan(wallFits[at]!.most * wallFits[at]!.shrink);
    });
  });
});
