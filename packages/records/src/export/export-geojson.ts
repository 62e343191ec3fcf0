import type { SourceGeometry } from '../import/source/source.ts';
import type { Kind } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import { exportColumns, referredKind } from './export-columns.ts';
import { shapeOf } from './export-csv.ts';
import { namesById } from './names-by-id.ts';

const hidden = new Set(['id', 'version', 'createdAt', 'updatedAt', 'path', 'footprint']);

/**
 * Every record of a kind as a GeoJSON FeatureCollection (RFC 7946, WGS 84), a feature at a time: a
 * street's line, a building's footprint, else a point; kinds without a place have no geometry.
 * Properties have the fields' names, in inside units.
 */
export async function* exportGeoJson(store: RecordStore, kind: Kind): AsyncIterable<string> {
  const nameOf = await namesById(store, kind);
  const named = exportColumns(kind).filter((column) => referredKind[column]);
  yield '{"type":"FeatureCollection","features":[';
  let between = '\n';
  for await (const record of store.all(kind)) {
    const fields = record as unknown as Record<string, unknown>;
    const geometry = geometryOf(fields);
    const properties: Record<string, unknown> = {
      plugside_id: record.id,
      plugside_version: record.version,
    };
    for (const [field, value] of Object.entries(fields)) {
      if (hidden.has(field) || value === undefined) continue;
      // The point is the geometry; beside a footprint it is one more thing to say.
      if (geometry?.type === 'Point' && (field === 'longitude' || field === 'latitude')) continue;
      properties[field] = value;
    }
    for (const field of named) {
      const name = nameOf(field, fields[field]);
      if (name !== undefined) properties[field.replace(/Id$/, '')] = name;
    }
    yield between + JSON.stringify({ type: 'Feature', id: record.id, geometry, properties });
    between = ',\n';
  }
  yield '\n]}\n';
}

function geometryOf(fields: Readonly<Record<string, unknown>>): SourceGeometry | null {
  const shape = shapeOf('path', fields.path) ?? shapeOf('footprint', fields.footprint);
  if (shape) return shape;
  const { longitude, latitude } = fields;
  return typeof longitude === 'number' && typeof latitude === 'number'
    ? { type: 'Point', coordinates: [longitude, latitude] }
    : null;
}
