/** A point for a shape: where it is on a list. */
import type { SourceGeometry } from '../source/source.ts';

type Position = readonly number[];

/** The parts of a geometry that are lines. */
export function linesOf(geometry: SourceGeometry): number[][][] {
  if (geometry.type === 'LineString') return [geometry.coordinates];
  if (geometry.type === 'MultiLineString') return geometry.coordinates;
  return [];
}

/** The polygons of a geometry, each a list of rings. */
export function polygonsOf(geometry: SourceGeometry): number[][][][] {
  if (geometry.type === 'Polygon') return [geometry.coordinates];
  if (geometry.type === 'MultiPolygon') return geometry.coordinates;
  return [];
}

/** The polygon with the largest outer ring. */
export function largest(polygons: readonly number[][][][]): number[][][] | undefined {
  return [...polygons].sort(
    (a, b) => Math.abs(ringArea(b[0] ?? [])) - Math.abs(ringArea(a[0] ?? [])),
  )[0];
}

/** Twice signed; in the coordinates' own unit squared. */
export function ringArea(ring: readonly Position[]): number {
  let sum = 0;
  for (let at = 0; at < ring.length; at += 1) {
    const [x0 = 0, y0 = 0] = ring[at]!;
    const [x1 = 0, y1 = 0] = ring[(at + 1) % ring.length]!;
    // From the ring's first point, so that far coordinates lose no digits.
    const [ox = 0, oy = 0] = ring[0]!;
    sum += (x0 - ox) * (y1 - oy) - (x1 - ox) * (y0 - oy);
  }
  return sum / 2;
}

/** One point for any geometry: itself, the middle of a line's length, a point inside a polygon. */
export function pointOf(geometry: SourceGeometry): [number, number] | undefined {
  if (geometry.type === 'Point') return pair(geometry.coordinates);
  if (geometry.type === 'MultiPoint')
    return geometry.coordinates[0] && pair(geometry.coordinates[0]);
  const lines = linesOf(geometry);
  if (lines.length > 0) {
    const longest = [...lines].sort((a, b) => lengthOf(b) - lengthOf(a))[0]!;
    return middleOf(longest);
  }
  const polygon = largest(polygonsOf(geometry));
  return polygon && insideOf(polygon);
}

const pair = (at: Position): [number, number] => [at[0]!, at[1]!];

function lengthOf(line: readonly Position[]): number {
  let sum = 0;
  for (let at = 1; at < line.length; at += 1) sum += span(line[at - 1]!, line[at]!);
  return sum;
}

const span = (a: Position, b: Position) => Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!);

function middleOf(line: readonly Position[]): [number, number] | undefined {
  if (line.length === 0) return undefined;
  let left = lengthOf(line) / 2;
  for (let at = 1; at < line.length; at += 1) {
    const length = span(line[at - 1]!, line[at]!);
    if (length >= left && length > 0) {
      const share = left / length;
      const [a, b] = [line[at - 1]!, line[at]!];
      return [a[0]! + share * (b[0]! - a[0]!), a[1]! + share * (b[1]! - a[1]!)];
    }
    left -= length;
  }
  return pair(line[0]!);
}

/** On the height of the outer ring's middle: the middle of the widest stretch inside. */
function insideOf(rings: readonly (readonly Position[])[]): [number, number] | undefined {
  const outer = rings[0];
  if (!outer || outer.length === 0) return undefined;
  const ys = outer.map((at) => at[1]!);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  for (const share of [0.5, 0.47, 0.31, 0.71, 0.13, 0.89]) {
    const y = low + share * (high - low);
    const xs = rings.flatMap((ring) => crossings(ring, y)).sort((a, b) => a - b);
    let best: [number, number] | undefined;
    for (let at = 0; at + 1 < xs.length; at += 2) {
      if (!best || xs[at + 1]! - xs[at]! > best[1] - best[0]) best = [xs[at]!, xs[at + 1]!];
    }
    if (best && best[1] > best[0]) return [(best[0] + best[1]) / 2, y];
  }
  return pair(outer[0]!);
}

function crossings(ring: readonly Position[], y: number): number[] {
  const found: number[] = [];
  for (let at = 0; at < ring.length; at += 1) {
    const [x0 = 0, y0 = 0] = ring[at]!;
    const [x1 = 0, y1 = 0] = ring[(at + 1) % ring.length]!;
    if (y0 > y !== y1 > y) found.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
  }
  return found;
}

/** The same geometry with every position put through `convert`. */
export function mapPositions(
  geometry: SourceGeometry,
  convert: (x: number, y: number) => [number, number],
): SourceGeometry {
  const walk = (value: unknown): unknown =>
    Array.isArray(value) && typeof value[0] === 'number'
      ? convert(value[0] as number, value[1] as number)
      : (value as unknown[]).map(walk);
  return { ...geometry, coordinates: walk(geometry.coordinates) } as SourceGeometry;
}
