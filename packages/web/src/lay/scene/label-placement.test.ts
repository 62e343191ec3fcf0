import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LabelRequest, overlaps, placeLabels, rectsAlong } from './label-placement.ts';

const bounds = { x: 0, y: 0, width: 400, height: 200 };
const label = (id: string, x: number, y: number, priority = 1): LabelRequest => ({
  id,
  x,
  y,
  width: 60,
  height: 18,
  priority,
  sides: ['above', 'right', 'below', 'left', 'above right', 'below left'],
  gap: 6,
  reach: 45,
});

describe('label placement', () => {
  it('never lets two labels overlap, covers no figure and never leaves the drawing', () => {
    const point = fc.record({
      x: fc.integer({ min: 0, max: 400 }),
      y: fc.integer({ min: 0, max: 200 }),
      priority: fc.integer({ min: 0, max: 9 }),
    });
    const figure = { x: 150, y: 60, width: 90, height: 50 };
    fc.assert(
      fc.property(fc.array(point, { maxLength: 25 }), (points) => {
        const requests = points.map((p, i) => label(String(i), p.x, p.y, p.priority));
        const placed = placeLabels(requests, [figure], [], bounds);
        for (const [i, a] of placed.entries()) {
          expect(overlaps(a, figure)).toBe(false);
          expect(a.x >= 0 && a.y >= 0 && a.x + a.width <= 400 && a.y + a.height <= 200).toBe(true);
          for (const b of placed.slice(i + 1)) expect(overlaps(a, b)).toBe(false);
        }
      }),
    );
  });

  it('gives the place to the more important of two', () => {
    const near = { reach: 0, sides: ['above'] as const };
    const placed = placeLabels(
      [
        { ...label('minor', 100, 100, 1), ...near },
        { ...label('major', 102, 100, 5), ...near },
      ],
      [],
      [],
      bounds,
    );
    expect(placed.map((one) => one.id)).toEqual(['major']);
  });

  it('takes the first side that it is given when all are free', () => {
    const [placed] = placeLabels([label('a', 200, 100)], [], [], bounds);
    expect(placed!.y + placed!.height).toBeLessThan(100);
    expect(placed!.leader).toBe(false);
  });

  it('steps off a hose when there is room beside it', () => {
    const hose = rectsAlong(
      [
        [0, 84],
        [400, 84],
      ],
      6,
    );
    const [placed] = placeLabels([label('a', 200, 100)], [], hose, bounds);
    expect(hose.some((piece) => overlaps(placed!, piece))).toBe(false);
  });

  it('stands nearer to its own hose than to another', () => {
    const own: [number, number][] = [
      [60, 100],
      [340, 100],
    ];
    const other = rectsAlong(
      [
        [0, 70],
        [400, 70],
      ],
      4,
    );
    const [placed] = placeLabels([{ ...label('a', 200, 100), others: other }], [], other, bounds);
    const middle = placed!.y + placed!.height / 2;
    expect(Math.abs(middle - own[0]![1])).toBeLessThan(Math.abs(middle - 70));
  });

  it('draws a leader when it had to move away', () => {
    const crowd = [{ x: 150, y: 60, width: 100, height: 80 }];
    const [placed] = placeLabels([label('a', 200, 100)], crowd, [], bounds);
    expect(placed!.leader).toBe(true);
  });

  it('leaves a label out rather than put it on another', () => {
    const full = [{ ...bounds }];
    expect(placeLabels([label('a', 200, 100)], full, [], bounds)).toEqual([]);
  });
});
