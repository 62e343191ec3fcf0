/** Buildings' outlines, and keeping them off streets and off each other. */
import type { Point } from './ground.ts';

/** A rectangle that stands along a street. */
export interface Box {
  middle: Point;
  /** Unit vector along its front. */
  along: Point;
  /** Half of its front and half of its depth [ft]. */
  halfFrontFt: number;
  halfDepthFt: number;
}

/** Corners in order, the front first. */
export function cornersOf({ middle, along, halfFrontFt, halfDepthFt }: Box): Point[] {
  const [ax, ay] = along;
  const corner = (front: number, depth: number): Point => [
    middle[0] + front * halfFrontFt * ax - depth * halfDepthFt * ay,
    middle[1] + front * halfFrontFt * ay + depth * halfDepthFt * ax,
  ];
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** The outline with a piece cut out of a back corner: an L. Shares of front and depth, 0 to 1. */
export function withoutCorner(box: Box, front: number, depth: number): Point[] {
  const [ax, ay] = box.along;
  const at = (f: number, d: number): Point => [
    box.middle[0] + f * box.halfFrontFt * ax - d * box.halfDepthFt * ay,
    box.middle[1] + f * box.halfFrontFt * ay + d * box.halfDepthFt * ax,
  ];
  const [f, d] = [1 - 2 * front, 1 - 2 * depth];
  return [at(-1, -1), at(1, -1), at(1, d), at(f, d), at(f, 1), at(-1, 1)];
}

/** Whether two outlines come closer than a gap [ft], outlines being convex. */
export function tooClose(a: readonly Point[], b: readonly Point[], gapFt: number): boolean {
  return !separated(a, b, gapFt) && !separated(b, a, gapFt);
}

/** By the separating axes of the first one's sides. A segment has one side and its ends. */
function separated(a: readonly Point[], b: readonly Point[], gapFt: number): boolean {
  for (let i = 0; i < a.length; i += 1) {
    const [p, q] = [a[i]!, a[(i + 1) % a.length]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (length === 0) continue;
    const side: Point = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
    const axes: Point[] = [[side[1], -side[0]]];
    if (a.length === 2) axes.push(side);
    for (const axis of axes) {
      const [aLow, aHigh] = spread(a, axis);
      const [bLow, bHigh] = spread(b, axis);
      if (bLow - aHigh > gapFt || aLow - bHigh > gapFt) return true;
    }
  }
  return false;
}

function spread(points: readonly Point[], [x, y]: Point): [low: number, high: number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [px, py] of points) {
    const at = px * x + py * y;
    low = Math.min(low, at);
    high = Math.max(high, at);
  }
  return [low, high];
}

/** Outlines by the squares of ground that they touch. */
export class Nearby<T> {
  readonly #squares = new Map<string, T[]>();
  readonly #sizeFt: number;

  constructor(sizeFt = 300) {
    this.#sizeFt = sizeFt;
  }

  #keys(points: readonly Point[], marginFt: number): string[] {
    const [west, east] = spread(points, [1, 0]);
    const [south, north] = spread(points, [0, 1]);
    const square = (feet: number) => Math.floor(feet / this.#sizeFt);
    const keys: string[] = [];
    for (let x = square(west - marginFt); x <= square(east + marginFt); x += 1) {
      for (let y = square(south - marginFt); y <= square(north + marginFt); y += 1) {
        keys.push(`${x},${y}`);
      }
    }
    return keys;
  }

  add(points: readonly Point[], item: T): void {
    for (const key of this.#keys(points, 0)) {
      const here = this.#squares.get(key);
      if (here) here.push(item);
      else this.#squares.set(key, [item]);
    }
  }

  /** Items whose squares come within a margin [ft] of an outline; some more than once. */
  *near(points: readonly Point[], marginFt: number): Iterable<T> {
    for (const key of this.#keys(points, marginFt)) yield* this.#squares.get(key) ?? [];
  }
}
