import { describe, expect, it } from 'vitest';
import type { DemoHydrant } from './hydrant-places.ts';
import { hangingOf, layoutOf } from './main-layout.ts';
import type { Stretch } from './town-map.ts';

const stretch = (from: number, to: number, lengthFt: number): Stretch => ({
  from,
  to,
  lengthFt,
  street: 0,
  line: [],
  zone: 'centre',
  main: { diameterIn: 8, roughness: 100 },
});
/** A square 0-1-2-3 with a dead end 1-4-5. */
const square = [stretch(0, 1, 400), stretch(1, 2, 400), stretch(2, 3, 400), stretch(3, 0, 400)];
const near = stretch(4, 1, 300);
const far = stretch(4, 5, 200);
const layout = layoutOf([...square, near, far]);
const hydrant = (on: Stretch, alongFt: number) => ({ stretch: on, alongFt }) as DemoHydrant;

describe('loops and dead ends of mains', () => {
  it('takes off dead ends to the loop', () => {
    expect(layout.looped).toEqual(square);
    expect([...layout.junctions].sort()).toEqual([0, 1, 2, 3]);
    expect(layout.towardsLoop.get(5)).toBe(far);
    expect(layout.towardsLoop.get(4)).toBe(near);
  });

  it('a hydrant on a loop hangs on the nearer node', () => {
    expect(hangingOf(layout, hydrant(square[1]!, 300))).toEqual({
      junction: 2,
      tail: [{ stretch: square[1], forward: false, lengthFt: 100 }],
    });
  });

  it('a hydrant on a dead end hangs on the loop by all that lies between', () => {
    const { junction, tail } = hangingOf(layout, hydrant(far, 150));
    expect(junction).toBe(1);
    expect(tail).toEqual([
      { stretch: far, forward: true, lengthFt: 150 },
      { stretch: near, forward: false, lengthFt: 300 },
    ]);
  });
});
