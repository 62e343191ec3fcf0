/** Keeps labels apart and inside a rectangle of the page. Places in points. */
import type { Point } from './ink.ts';

export interface Frame {
  x: number;
  y: number;
  width: number;
  height: number;
}

export type Box = readonly [left: number, top: number, right: number, bottom: number];

/** How far apart points are that stand for a line. */
const STEP = 3;

export class Labels {
  readonly #taken: Box[] = [];
  readonly #lines: Point[] = [];
  readonly #frame: Frame;

  constructor(frame: Frame) {
    this.#frame = frame;
  }

  /** A place that no label covers. */
  block(box: Box): void {
    this.#taken.push(box);
  }

  /** Lines that labels keep off where they can. */
  keepOff(points: readonly Point[]): void {
    for (const [at, to] of points.slice(1).entries()) {
      const from = points[at]!;
      const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / STEP));
      for (let step = 0; step <= steps; step += 1) {
        const x = from[0] + (step / steps) * (to[0] - from[0]);
        const y = from[1] + (step / steps) * (to[1] - from[1]);
        this.#lines.push([x, y]);
      }
    }
  }

  /** Whether a box is off every line. */
  isOff([left, top, right, bottom]: Box): boolean {
    return this.#lines.every(
      ([x, y]) => x < left - 1 || x > right + 1 || y < top - 1 || y > bottom + 1,
    );
  }

  /** Takes a box up where it is inside and free. */
  take(box: Box): boolean {
    const { x, y, width, height } = this.#frame;
    const [left, top, right, bottom] = box;
    if (left < x + 2 || top < y + 2 || right > x + width - 2 || bottom > y + height - 2) {
      return false;
    }
    const apart = this.#taken.every(
      (other) => right < other[0] || left > other[2] || bottom < other[1] || top > other[3],
    );
    if (apart) this.#taken.push(box);
    return apart;
  }
}
