/** An outline while it is drawn: lines of places, each a ring or a course. */

/** [longitude, latitude] */
export type Position = readonly [number, number];

export interface Outline {
  /** Rings without their repeated end, or one course. */
  lines: readonly (readonly Position[])[];
  /** Each is a ring. */
  closed: boolean;
}

/** A point: which line it is in, and its place there. */
export interface PointAt {
  line: number;
  at: number;
}

/** About 1 cm: finer than anybody points at a map. */
const DIGITS = 7;

const rounded = ([longitude, latitude]: Position): Position => [
  Number(longitude.toFixed(DIGITS)),
  Number(latitude.toFixed(DIGITS)),
];

const withLine = (
  outline: Outline,
  line: number,
  change: (points: readonly Position[]) => readonly Position[],
): Outline => ({
  ...outline,
  lines: outline.lines.map((points, at) => (at === line ? change(points) : points)),
});

export const pointMoved = (outline: Outline, { line, at }: PointAt, to: Position): Outline =>
  withLine(outline, line, (points) => points.map((one, n) => (n === at ? rounded(to) : one)));

/** Put in before the point that stands there now. */
export const pointAdded = (outline: Outline, { line, at }: PointAt, place: Position): Outline =>
  outline.lines.length === 0
    ? { ...outline, lines: [[rounded(place)]] }
    : withLine(outline, line, (points) => [
        ...points.slice(0, at),
        rounded(place),
        ...points.slice(at),
      ]);

/** A line that has lost its last point is gone. */
export function pointRemoved(outline: Outline, { line, at }: PointAt): Outline {
  const left = withLine(outline, line, (points) => points.filter((_, n) => n !== at));
  return { ...left, lines: left.lines.filter((points) => points.length > 0) };
}

/** Where a point added at the end goes: to the course's end, or the first ring's. */
export const endOf = ({ lines }: Outline): PointAt => ({ line: 0, at: lines[0]?.length ?? 0 });

export interface MiddlePoint {
  /** Where a point put in here would stand. */
  before: PointAt;
  place: Position;
  /** The points that it lies between. */
  ends: readonly [Position, Position];
}

/** The middle of each stretch between two points. */
export function middlesOf({ lines, closed }: Outline): MiddlePoint[] {
  return lines.flatMap((points, line) =>
    points.flatMap((from, n) => {
      const to = points[n + 1] ?? (closed && points.length > 2 ? points[0] : undefined);
      if (!to) return [];
      const place: Position = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
      return [{ before: { line, at: n + 1 }, place, ends: [from, to] as const }];
    }),
  );
}

/** As the record has it. */
export function outlineOf(value: unknown, closed: boolean): Outline {
  if (!Array.isArray(value) || value.length === 0) return { lines: [], closed };
  if (!closed) return { lines: [value as Position[]], closed };
  return { lines: (value as Position[][]).map(opened), closed };
}

/** As the record takes it: rings end where they begin. */
export function outlineValue({ lines, closed }: Outline): unknown {
  if (!closed) return lines[0] ?? [];
  return lines.map((ring) => (ring[0] ? [...ring, ring[0]] : ring));
}

/** A ring without the end that repeats its beginning. */
export function opened(ring: readonly Position[]): readonly Position[] {
  const [first, last] = [ring[0], ring.at(-1)];
  const repeats = ring.length > 1 && first && last && first[0] === last[0] && first[1] === last[1];
  return repeats ? ring.slice(0, -1) : ring;
}
