import type { Bytes } from './bytes.ts';
import { decode, type Encoding } from './encoding.ts';
import { isServiceFeature, serviceGeometry, serviceReference } from './geoservices-json.ts';
import { jsonPieces } from './json-features.ts';
import type { Cell, SourceCrs, SourceGeometry, SourceRow } from './source.ts';

/** A feature before its columns are known. */
export interface Feature {
  number: number;
  id?: string | number;
  properties: Record<string, Cell>;
  geometry?: SourceGeometry | null;
  broken?: { why: string; text: string };
}

const NESTING = ['Point', 'MultiPoint LineString', 'Polygon MultiLineString', 'MultiPolygon'];

/** Every feature of a file, one at a time; a broken one comes with its text. */
export async function* features(
  bytes: Bytes,
  encoding: Encoding,
  onCrs?: (crs: SourceCrs) => void,
): AsyncIterable<Feature> {
  let number = 0;
  for await (const piece of jsonPieces(decode(bytes, encoding))) {
    if (piece.is === 'broken') {
      number += 1;
      yield { number, properties: {}, broken: { why: piece.why, text: piece.text } };
      continue;
    }
    let value: unknown;
    try {
      value = JSON.parse(piece.text);
    } catch (error) {
      if (piece.is === 'collection') continue;
      number += 1;
      const why = error instanceof Error ? error.message : String(error);
      yield { number, properties: {}, broken: { why, text: piece.text.slice(0, 20_000) } };
      continue;
    }
    const crs = crsOf(value);
    if (crs) onCrs?.(crs);
    // A collection without features, whose members are no row.
    if (piece.is === 'collection' || isCollection(value)) continue;
    number += 1;
    yield featureOf(value, number);
  }
}

const isCollection = (value: unknown) =>
  isObject(value) && value.type === 'FeatureCollection' && !('properties' in value);

function featureOf(value: unknown, number: number): Feature {
  if (!isObject(value)) {
    const text = JSON.stringify(value)?.slice(0, 200) ?? '';
    return { number, properties: {}, broken: { why: 'it is no object', text } };
  }
  if (isServiceFeature(value)) {
    const geometry = serviceGeometry(value.geometry);
    const feature: Feature = { number, properties: cellsOf(value.attributes) };
    return geometry === undefined ? feature : { ...feature, geometry };
  }
  if (value.type !== 'Feature') {
    const geometry = geometryOf(value);
    // A bare geometry, or a plain object whose members are the columns.
    return geometry ? { number, properties: {}, geometry } : { number, properties: cellsOf(value) };
  }
  const feature: Feature = {
    number,
    properties: isObject(value.properties) ? cellsOf(value.properties) : {},
    geometry: isEmpty(value.geometry) ? null : (geometryOf(value.geometry) ?? null),
  };
  if (typeof value.id === 'string' || typeof value.id === 'number') feature.id = value.id;
  if (!isEmpty(value.geometry) && !feature.geometry) {
    const several = isObject(value.geometry) && value.geometry.type === 'GeometryCollection';
    feature.broken = {
      why: several
        ? 'its geometry is a collection of several shapes, and a record has one'
        : 'its geometry is none that GeoJSON has, or its coordinates are no numbers',
      text: JSON.stringify(value).slice(0, 20_000),
    };
  }
  return feature;
}

/** A row once the file's columns are known. */
export function rowOfFeature(feature: Feature, idColumn: string | undefined): SourceRow {
  const values: Record<string, Cell> = { ...feature.properties };
  if (idColumn !== undefined) values[idColumn] = feature.id ?? null;
  const row: SourceRow = { number: feature.number, values };
  if (feature.geometry !== undefined) row.geometry = feature.geometry;
  if (feature.broken) {
    row.raw = feature.broken.text;
    row.fault = {
      code: 'unreadable row',
      reason: `The feature cannot be read: ${feature.broken.why}.`,
      remedy: 'Mend the feature, or export the file again from where it came from.',
    };
  }
  return row;
}

function cellsOf(members: Record<string, unknown>): Record<string, Cell> {
  const cells: Record<string, Cell> = {};
  for (const [name, value] of Object.entries(members)) {
    cells[name] =
      value === null || ['string', 'number', 'boolean'].includes(typeof value)
        ? (value as Cell)
        : JSON.stringify(value);
  }
  return cells;
}

function geometryOf(value: unknown): SourceGeometry | undefined {
  if (!isObject(value) || typeof value.type !== 'string') return undefined;
  if (value.type === 'GeometryCollection' && Array.isArray(value.geometries)) {
    return value.geometries.length === 1 ? geometryOf(value.geometries[0]) : undefined;
  }
  const type = value.type;
  const depth = NESTING.findIndex((names) => names.split(' ').includes(type));
  if (depth < 0 || !isNested(value.coordinates, depth)) return undefined;
  return { type, coordinates: value.coordinates } as SourceGeometry;
}

/** No geometry, or one without coordinates, which may be taken for none (RFC 7946, section 3.1). */
function isEmpty(geometry: unknown): boolean {
  if (geometry == null) return true;
  if (!isObject(geometry)) return false;
  const { coordinates, geometries } = geometry;
  const values = Array.isArray(geometries) ? geometries : coordinates;
  return Array.isArray(values) && values.every((one) => one === null);
}

function isNested(value: unknown, depth: number): boolean {
  if (!Array.isArray(value)) return false;
  if (depth > 0) return value.length > 0 && value.every((one) => isNested(one, depth - 1));
  return value.length >= 2 && value.slice(0, 2).every((one) => Number.isFinite(one));
}

/** The `crs` member of the first edition of GeoJSON, which is still written for projected data. */
function crsOf(value: unknown): SourceCrs | undefined {
  const stated = serviceReference(member(value, 'spatialReference'));
  if (stated !== undefined) return { crs: stated, from: 'its spatialReference member' };
  const properties = member(member(value, 'crs'), 'properties');
  const number = member(properties, 'code');
  if (typeof number === 'number') return { crs: `EPSG:${number}`, from: 'its crs member' };
  const name = member(properties, 'name');
  if (typeof name !== 'string') return undefined;
  if (/CRS84/i.test(name)) return { crs: 'EPSG:4326', from: 'its crs member' };
  const code = /EPSG:(?::|[\d.]+:)?(\d+)$/i.exec(name)?.[1];
  return { crs: code ? `EPSG:${code}` : name, from: 'its crs member' };
}

const member = (value: unknown, name: string) => (isObject(value) ? value[name] : undefined);

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
