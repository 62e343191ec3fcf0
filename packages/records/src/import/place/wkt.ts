/** Geometry as text: "well-known text" of OpenGIS Simple Features (OGC 06-103r4), two dimensions. */
import type { SourceGeometry } from '../source/source.ts';

const depths: Record<string, { type: SourceGeometry['type']; depth: number }> = {
  POINT: { type: 'Point', depth: 0 },
  MULTIPOINT: { type: 'MultiPoint', depth: 1 },
  LINESTRING: { type: 'LineString', depth: 1 },
  POLYGON: { type: 'Polygon', depth: 2 },
  MULTILINESTRING: { type: 'MultiLineString', depth: 2 },
  MULTIPOLYGON: { type: 'MultiPolygon', depth: 3 },
};

/** Before the text, as databases write it: the EPSG code of its coordinate system. */
const srid = /^\s*SRID\s*=\s*(\d+)\s*;/i;

/** The coordinate system that a text states, as `EPSG:2263`. */
export function sridOf(text: string): string | undefined {
  const code = srid.exec(text)?.[1];
  return code === undefined || Number(code) === 0 ? undefined : `EPSG:${code}`;
}

/** `POINT EMPTY` and its kin: a geometry without a place. */
export const isEmptyWkt = (text: string): boolean =>
  /^\s*(SRID=\d+;)?\s*[A-Z]+\s*(Z|M|ZM)?\s+EMPTY\s*$/i.test(text);

/**
 * A geometry from its text; further dimensions (`POINT Z`, `POINTZ`) are left out. A collection of one
 * is that one. Undefined where it is none.
 */
export function readWkt(text: string): SourceGeometry | undefined {
  const only = /^\s*(?:SRID=\d+;)?\s*GEOMETRYCOLLECTION\s*(?:Z|M|ZM)?\s*\((.*)\)\s*$/is.exec(text);
  if (only) return readWkt(only[1]!);
  const head = /^\s*(?:SRID=\d+;)?\s*([A-Z]+?)\s*(?:Z|M|ZM)?\s*\(/i.exec(text);
  const kind = head ? depths[head[1]!.toUpperCase()] : undefined;
  if (!kind) return undefined;
  const body = text.slice(head![0].length - 1).trim();
  // Each point becomes a pair in brackets, each bracket a list.
  let bad = false;
  const json = body
    .replace(/[^(),]+/g, (words) => {
      if (words.trim() === '') return '';
      const numbers = words.trim().split(/\s+/).map(Number);
      if (numbers.length < 2 || numbers.slice(0, 2).some((one) => !Number.isFinite(one)))
        bad = true;
      return `[${numbers[0]},${numbers[1]}]`;
    })
    .replaceAll('(', '[')
    .replaceAll(')', ']');
  if (bad) return undefined;
  let coordinates: unknown;
  try {
    coordinates = JSON.parse(json);
  } catch {
    return undefined;
  }
  if (kind.type === 'Point') coordinates = (coordinates as unknown[])[0];
  // MULTIPOINT may write each of its points in brackets of its own.
  if (kind.type === 'MultiPoint') {
    coordinates = (coordinates as unknown[]).map((one) =>
      Array.isArray(one) && Array.isArray(one[0]) ? one[0] : one,
    );
  }
  return isNested(coordinates, kind.depth)
    ? ({ type: kind.type, coordinates } as SourceGeometry)
    : undefined;
}

function isNested(value: unknown, depth: number): boolean {
  if (!Array.isArray(value) || value.length === 0) return false;
  return depth === 0
    ? value.length >= 2 && value.every((one) => typeof one === 'number')
    : value.every((one) => isNested(one, depth - 1));
}

/** A geometry as text, every digit kept. */
export function writeWkt(geometry: SourceGeometry): string {
  return `${geometry.type.toUpperCase()} ${geometry.type === 'Point' ? `(${position(geometry.coordinates)})` : list(geometry.coordinates)}`;
}

const position = (at: readonly number[]) => `${at[0]} ${at[1]}`;

function list(values: readonly unknown[]): string {
  const inside = values.map((value) =>
    Array.isArray(value) && typeof value[0] === 'number'
      ? position(value as number[])
      : list(value as unknown[]),
  );
  return `(${inside.join(', ')})`;
}
