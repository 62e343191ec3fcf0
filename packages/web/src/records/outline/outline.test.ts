import { describe, expect, it } from 'vitest';
import {
  endOf,
  middlesOf,
  outlineOf,
  outlineValue,
  type Position,
  pointAdded,
  pointMoved,
  pointRemoved,
} from './outline.ts';

const SQUARE: Position[] = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
];
const ring = [...SQUARE, SQUARE[0]!];

describe('an outline', () => {
  it('comes from a record and goes back as it was', () => {
    const hole = ring.map(([x, y]) => [x / 4 + 0.5, y / 4 + 0.5]);
    expect(outlineValue(outlineOf([ring, hole], true))).toEqual([ring, hole]);
    expect(outlineValue(outlineOf(SQUARE, false))).toEqual(SQUARE);
    expect(outlineOf(undefined, true).lines).toEqual([]);
  });

  it('has a middle point on each stretch, the closing one of a ring too', () => {
    const places = (closed: boolean) =>
      middlesOf(outlineOf(closed ? [ring] : SQUARE, closed)).map(({ place }) => place);
    expect(places(true)).toEqual([
      [1, 0],
      [2, 1],
      [1, 2],
      [0, 1],
    ]);
    expect(places(false)).toEqual([
      [1, 0],
      [2, 1],
      [1, 2],
    ]);
    expect(middlesOf({ lines: [SQUARE.slice(0, 2)], closed: true })).toHaveLength(1);
  });

  it('takes a point in where its middle point was, moves it and lets it go', () => {
    const before = outlineOf([ring], true);
    const { before: spot, place } = middlesOf(before).at(-1)!;
    const added = pointAdded(before, spot, place);
    expect(outlineValue(added)).toEqual([[...SQUARE, [0, 1], SQUARE[0]]]);
    const moved = pointMoved(added, spot, [-1.00000004, 1]);
    expect(moved.lines[0]?.at(-1)).toEqual([-1, 1]);
    expect(pointRemoved(moved, spot)).toEqual(before);
    // The corner that a ring begins at moves its end with it.
    const corner = pointMoved(before, { line: 0, at: 0 }, [-1, -1]);
    expect(outlineValue(corner)).toEqual([[[-1, -1], ...SQUARE.slice(1), [-1, -1]]]);
  });

  it('is begun with nothing, and gone with its last point', () => {
    let drawn = outlineOf(undefined, false);
    for (const place of SQUARE) drawn = pointAdded(drawn, endOf(drawn), place);
    expect(outlineValue(drawn)).toEqual(SQUARE);
    for (const _ of SQUARE) drawn = pointRemoved(drawn, { line: 0, at: 0 });
    expect(drawn.lines).toEqual([]);
  });
});
