import { describe, expect, test } from 'vitest';
import { crosses, type LabelWish, overlaps, type Point, placeLabels } from './place-labels.ts';

const frame = { left: 0, top: 0, right: 600, bottom: 300 };

/** Numbers from 0 to 1, the same on every run. */
function seeded(seed: number) {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

describe('labels', () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'never cover each other or leave the frame, seed %i',
    (seed) => {
      const random = seeded(seed);
      const points: Point[] = Array.from({ length: 14 }, () => ({
        x: random() * 600,
        y: random() * 300,
      }));
      const wishes: LabelWish[] = points.map((point, index) => ({
        ...point,
        text: `Engine ${index + 1} intake ${Math.round(random() * 200)} psi`,
        optional: index % 3 === 0,
      }));
      const strokes = points
        .slice(1)
        .map((point, index): [Point, Point] => [points[index]!, point]);
      const { placed, left } = placeLabels(wishes, { frame, fontSize: 12, strokes });
      expect(placed.length).toBeGreaterThan(0);
      for (const [index, { box, wish, leader }] of placed.entries()) {
        expect(box.left).toBeGreaterThanOrEqual(frame.left);
        expect(box.right).toBeLessThanOrEqual(frame.right);
        for (const other of placed.slice(index + 1)) {
          expect(overlaps(box, other.box), `${wish.text} on ${other.wish.text}`).toBe(false);
        }
        for (const other of placed) {
          if (leader && other.wish !== wish) expect(crosses(leader, other.box)).toBe(false);
        }
      }
      // Every label that is not optional is either drawn or handed back.
      const needed = wishes.filter(({ optional }) => !optional);
      const kept = [...placed.map(({ wish }) => wish), ...left];
      expect(needed.every((wish) => kept.includes(wish))).toBe(true);
    },
  );

  test('hand back what has no room at all, and drop what is optional', () => {
    const tight = { left: 0, top: 0, right: 60, bottom: 20 };
    const long = { x: 30, y: 10, text: 'Attack engine discharge 150 psi' };
    const { placed, left } = placeLabels([long, { ...long, optional: true }], {
      frame: tight,
      fontSize: 12,
      strokes: [],
    });
    expect(placed).toEqual([]);
    expect(left).toEqual([long]);
  });

  test('stand clear of a stroke where there is room', () => {
    const stroke: [Point, Point] = [
      { x: 0, y: 150 },
      { x: 600, y: 150 },
    ];
    const { placed } = placeLabels([{ x: 300, y: 150, text: 'Hydrant main 62 psi' }], {
      frame,
      fontSize: 12,
      strokes: [stroke],
    });
    expect(crosses(stroke, placed[0]!.box)).toBe(false);
  });
});

describe('a stroke through a box', () => {
  const box = { left: 10, top: 10, right: 20, bottom: 20 };
  test.each([
    ['across', { x: 0, y: 15 }, { x: 30, y: 15 }, true],
    ['on the slant', { x: 5, y: 12 }, { x: 15, y: 25 }, true],
    ['past a corner', { x: 0, y: 12 }, { x: 12, y: 0 }, false],
    ['short of it', { x: 0, y: 15 }, { x: 9, y: 15 }, false],
    ['upright beside it', { x: 25, y: 0 }, { x: 25, y: 30 }, false],
    ['within it', { x: 12, y: 12 }, { x: 13, y: 13 }, true],
  ] as const)('%s', (_, a, b, through) => {
    expect(crosses([a, b], box)).toBe(through);
    expect(crosses([b, a], box)).toBe(through);
  });
});
