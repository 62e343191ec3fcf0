/** Curves of hose: as an SVG path to draw and as points to keep labels off. */

export type Point = readonly [x: number, y: number];

export interface HoseCurve {
  d: string;
  points: Point[];
}

const round = (value: number) => Math.round(value * 10) / 10;

function cubicAt(p: readonly [Point, Point, Point, Point], t: number): Point {
  const u = 1 - t;
  const mix = (axis: 0 | 1) =>
    u * u * u * p[0][axis] +
    3 * u * u * t * p[1][axis] +
    3 * u * t * t * p[2][axis] +
    t * t * t * p[3][axis];
  return [mix(0), mix(1)];
}

/**
 * A hose from one port to another, leaving each along its direction.
 * @param fromOut unit vector out of the first port
 * @param toOut unit vector out of the second port
 * @param slack how far it goes straight before it bends, as a share of the distance
 */
export function hoseBetween(
  from: Point,
  fromOut: Point,
  to: Point,
  toOut: Point,
  slack = 0.45,
): HoseCurve {
  const reach = Math.max(14, Math.hypot(to[0] - from[0], to[1] - from[1]) * slack);
  const c1: Point = [from[0] + fromOut[0] * reach, from[1] + fromOut[1] * reach];
  const c2: Point = [to[0] + toOut[0] * reach, to[1] + toOut[1] * reach];
  const points = Array.from({ length: 17 }, (_, i) => cubicAt([from, c1, c2, to], i / 16));
  const d = `M${round(from[0])} ${round(from[1])}C${round(c1[0])} ${round(c1[1])} ${round(c2[0])} ${round(c2[1])} ${round(to[0])} ${round(to[1])}`;
  return { d, points };
}

/** Straight pieces through points, as ground lies. */
export function polyline(points: readonly Point[]): HoseCurve {
  const d = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
  return { d, points: [...points] };
}

/** One curve after the other; the second must begin where the first ends. */
export function joined(first: HoseCurve, second: HoseCurve): HoseCurve {
  return {
    d: first.d + second.d.replace(/^M/, 'L'),
    points: [...first.points, ...second.points.slice(1)],
  };
}

/** The point a share of the way along, and which way the curve runs there [degrees]. */
export function alongCurve(points: readonly Point[], share: number): { at: Point; angle: number } {
  const lengths = points
    .slice(1)
    .map((p, i) => Math.hypot(p[0] - points[i]![0], p[1] - points[i]![1]));
  let left = lengths.reduce((sum, length) => sum + length, 0) * share;
  for (const [i, length] of lengths.entries()) {
    if (left <= length || i === lengths.length - 1) {
      const [a, b] = [points[i]!, points[i + 1]!];
      const t = length === 0 ? 0 : Math.min(left / length, 1);
      return {
        at: [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t],
        angle: (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI,
      };
    }
    left -= length;
  }
  return { at: points[0] ?? [0, 0], angle: 0 };
}
