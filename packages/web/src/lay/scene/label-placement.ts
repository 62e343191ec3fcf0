/** Places labels beside what they name so that no two overlap and none leaves the drawing. */

export interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

export type Side =
  | 'above'
  | 'below'
  | 'right'
  | 'left'
  | 'above right'
  | 'above left'
  | 'below right'
  | 'below left';

export interface LabelRequest {
  id: string;
  /** What the label names [px]. */
  x: number;
  y: number;
  /** Other points that it may stand at instead: elsewhere along the same hose. */
  alternates?: readonly (readonly [x: number, y: number])[];
  width: number;
  height: number;
  /** Higher first. */
  priority: number;
  /** Like figures that the label must not seem to name: no place nearer to one of them will do. */
  others?: readonly Rect[];
  /** Sides to try, best first. */
  sides: readonly Side[];
  /** Clear space between the point and the label [px]. */
  gap: number;
  /** Farthest the label may move away to find room [px]; 0 where it must be close or not at all. */
  reach: number;
}

export interface PlacedLabel extends Rect {
  id: string;
  /** The point that it stands at. */
  at: readonly [x: number, y: number];
  /** Moved away: draw a line from the label to its point. */
  leader: boolean;
}

const OFFSETS: Record<Side, readonly [number, number]> = {
  above: [0, -1],
  below: [0, 1],
  right: [1, 0],
  left: [-1, 0],
  'above right': [1, -1],
  'above left': [-1, -1],
  'below right': [1, 1],
  'below left': [-1, 1],
};
const STEP_PX = 9;

/** True where two rectangles share more than an edge. */
export function overlaps(a: Rect, b: Rect): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

function inside(a: Rect, bounds: Rect): boolean {
  return (
    a.x >= bounds.x &&
    a.y >= bounds.y &&
    a.x + a.width <= bounds.x + bounds.width &&
    a.y + a.height <= bounds.y + bounds.height
  );
}

function at(
  request: LabelRequest,
  [x, y]: readonly [number, number],
  side: Side,
  away: number,
): Rect {
  const [dx, dy] = OFFSETS[side];
  const diagonal = dx !== 0 && dy !== 0;
  const gap = request.gap + away;
  const sideways = diagonal ? gap * 0.7 : gap;
  return {
    x: x + (dx === 0 ? -request.width / 2 : dx > 0 ? sideways : -sideways - request.width),
    y: y + (dy === 0 ? -request.height / 2 : dy > 0 ? sideways : -sideways - request.height),
    width: request.width,
    height: request.height,
  };
}

function apart(a: Rect, b: Rect): number {
  const dx = Math.max(a.x - (b.x + b.width), b.x - (a.x + a.width), 0);
  const dy = Math.max(a.y - (b.y + b.height), b.y - (a.y + a.height), 0);
  return Math.hypot(dx, dy);
}

/** True where a label would stand closer to another figure than to its own. */
function misleads(rect: Rect, [x, y]: readonly [number, number], others: readonly Rect[]): boolean {
  const own = apart(rect, { x, y, width: 0, height: 0 });
  return others.some((other) => apart(rect, other) < own - 1);
}

/**
 * Greedy, the most important first. A label that finds no free place within its reach is left
 * out: a drawing with one number fewer reads, one with two on top of each other does not.
 * @param obstacles what no label may cover: figures, other text
 * @param soft what labels avoid where they can: hose, lines of the profile
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  obstacles: readonly Rect[],
  soft: readonly Rect[],
  bounds: Rect,
): PlacedLabel[] {
  const taken: Rect[] = [...obstacles];
  const placed: PlacedLabel[] = [];
  const order = [...requests].sort((a, b) => b.priority - a.priority);
  for (const request of order) {
    const points = [[request.x, request.y] as const, ...(request.alternates ?? [])];
    let best: { rect: Rect; at: readonly [number, number]; cost: number; away: number } | null =
      null;
    for (const [which, point] of points.entries()) {
      for (let away = 0; away <= request.reach; away += STEP_PX) {
        for (const [rank, side] of request.sides.entries()) {
          const rect = at(request, point, side, away);
          if (!inside(rect, bounds) || taken.some((other) => overlaps(rect, other))) continue;
          if (request.others && misleads(rect, point, request.others)) continue;
          const crossed = soft.filter((other) => overlaps(rect, other)).length;
          const cost = crossed * 30 + away * 1.5 + rank * 3 + which * 4;
          if (!best || cost < best.cost) best = { rect, at: point, cost, away };
        }
      }
    }
    if (!best) continue;
    taken.push(best.rect);
    placed.push({ id: request.id, ...best.rect, at: best.at, leader: best.away > STEP_PX });
  }
  return placed;
}

/** Covers a polyline with small rectangles, for `soft`. */
export function rectsAlong(
  points: readonly (readonly [x: number, y: number])[],
  thickness: number,
): Rect[] {
  const rects: Rect[] = [];
  for (let i = 1; i < points.length; i++) {
    const [x0, y0] = points[i - 1]!;
    const [x1, y1] = points[i]!;
    const pieces = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / 14));
    for (let piece = 0; piece < pieces; piece++) {
      const [a, b] = [piece / pieces, (piece + 1) / pieces];
      const xs = [x0 + (x1 - x0) * a, x0 + (x1 - x0) * b];
      const ys = [y0 + (y1 - y0) * a, y0 + (y1 - y0) * b];
      rects.push({
        x: Math.min(...xs) - thickness / 2,
        y: Math.min(...ys) - thickness / 2,
        width: Math.abs(xs[1]! - xs[0]!) + thickness,
        height: Math.abs(ys[1]! - ys[0]!) + thickness,
      });
    }
  }
  return rects;
}
