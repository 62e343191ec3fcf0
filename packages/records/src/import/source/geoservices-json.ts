/**
 * Features as web map services of the "GeoServices REST Specification" (version 1.0, "Geometry objects")
 * write them: `attributes` in place of properties, a geometry by its members, and the coordinate system
 * as a number.
 */
import { ringArea } from '../place/shapes.ts';
import type { SourceGeometry } from './source.ts';

export interface ServiceFeature {
  attributes: Record<string, unknown>;
  geometry?: unknown;
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const isServiceFeature = (value: unknown): value is ServiceFeature =>
  isObject(value) && value.type === undefined && isObject(value.attributes);

/** `EPSG:3857`; the newer of two numbers is EPSG's. Undefined where none is stated. */
export function serviceReference(value: unknown): string | undefined {
  if (!isObject(value)) return undefined;
  const code = value.latestWkid ?? value.wkid;
  if (typeof code === 'number') return `EPSG:${code}`;
  return typeof value.wkt === 'string' ? value.wkt : undefined;
}

/** Undefined where the feature has none at all, null where it is blank or cannot be read. */
export function serviceGeometry(value: unknown): SourceGeometry | null | undefined {
  if (value === undefined) return undefined;
  if (!isObject(value)) return null;
  const { x, y, points, paths, rings } = value;
  if (typeof x === 'number' && typeof y === 'number') return { type: 'Point', coordinates: [x, y] };
  if (isLine(points)) return { type: 'MultiPoint', coordinates: points };
  if (isLines(paths)) return { type: 'MultiLineString', coordinates: paths };
  return isLines(rings) ? { type: 'MultiPolygon', coordinates: polygonsOf(rings) } : null;
}

/** Outer rings run with the clock, holes against it; a hole belongs to the ring before it. */
function polygonsOf(rings: number[][][]): number[][][][] {
  const polygons: number[][][][] = [];
  for (const ring of rings) {
    const last = polygons.at(-1);
    if (last && ringArea(ring) > 0) last.push(ring);
    else polygons.push([ring]);
  }
  return polygons;
}

const isPosition = (value: unknown): value is number[] =>
  Array.isArray(value) && value.length >= 2 && value.slice(0, 2).every(Number.isFinite);
const isLine = (value: unknown): value is number[][] =>
  Array.isArray(value) && value.length > 0 && value.every(isPosition);
const isLines = (value: unknown): value is number[][][] =>
  Array.isArray(value) && value.length > 0 && value.every(isLine);
