/** For tests: whether outlines meet, by another method than the one that places them. */
import type { LonLat } from '../streets/ellipsoid.ts';

/** Whether any side of one line or ring crosses a side of the other. */
export function crosses(a: readonly LonLat[], b: readonly LonLat[]): boolean {
  for (let i = 1; i < a.length; i += 1) {
    for (let j = 1; j < b.length; j += 1) {
      const [p, q, r, s] = [a[i - 1]!, a[i]!, b[j - 1]!, b[j]!];
      if (turn(p, q, r) * turn(p, q, s) < 0 && turn(r, s, p) * turn(r, s, q) < 0) return true;
    }
  }
  return false;
}

function turn(p: LonLat, q: LonLat, r: LonLat): number {
  return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
}

/** Whether a closed ring holds a place, by counting the sides that a ray to the east crosses. */
export function holds(ring: readonly LonLat[], [x, y]: LonLat): boolean {
  let inside = false;
  for (let i = 1; i < ring.length; i += 1) {
    const [[ax, ay], [bx, by]] = [ring[i - 1]!, ring[i]!];
    if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside;
  }
  return inside;
}
