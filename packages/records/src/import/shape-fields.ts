import type { ImportKind, PlaceMapping } from './mapping/mapping.ts';
import { readCoordinate } from './place/coordinate-text.ts';
import type { Place, PlaceFault } from './place/place.ts';
import { largest, linesOf, polygonsOf } from './place/shapes.ts';
import type { SourceRow } from './source/source.ts';

export interface ShapeFields {
  fields: Record<string, unknown>;
  /** The same for each further line of a street in pieces. */
  more: Record<string, unknown>[];
  remarks: string[];
}

/** The fields that a place fills: a point for most, a path for streets, a footprint for buildings. */
export function shapeFields(
  kind: ImportKind,
  place: Place,
  row: SourceRow,
  mapping: PlaceMapping,
): ShapeFields | PlaceFault {
  const { longitude, latitude, geometry } = place;
  if (kind === 'streets') {
    const paths = linesOf(geometry)
      .map(path)
      .filter((one) => one.length >= 2);
    if (paths.length === 0) {
      return {
        code: 'wrong geometry',
        value: geometry.type,
        reason: 'A street needs a line of at least two points.',
        remedy: 'Export the street lines, not points or areas.',
      };
    }
    const [first, ...rest] = paths;
    return { fields: { path: first }, more: rest.map((one) => ({ path: one })), remarks: [] };
  }
  if (kind !== 'buildings') {
    const several = geometry.type === 'MultiPoint' && geometry.coordinates.length > 1;
    const remarks = several ? ['A place of several points: the first was taken.'] : [];
    return { fields: { longitude, latitude }, more: [], remarks };
  }
  const polygons = polygonsOf(geometry);
  const polygon = largest(polygons);
  const footprint = polygon?.map(closed).filter((ring) => ring.length >= 4);
  const remarks = polygons.length > 1 ? ['A building of several parts: the largest was kept.'] : [];
  const stated = polygon && statedPoint(row, mapping);
  return {
    fields: {
      longitude: stated?.[0] ?? longitude,
      latitude: stated?.[1] ?? latitude,
      ...(footprint && footprint.length > 0 && { footprint }),
    },
    more: [],
    remarks,
  };
}

/** Columns with a building's point beside its footprint, in degrees. */
function statedPoint(row: SourceRow, mapping: PlaceMapping): [number, number] | undefined {
  const cell = (column: string | undefined) =>
    column === undefined ? '' : String(row.values[column] ?? '');
  const longitude = readCoordinate(cell(mapping.longitude), 'longitude');
  const latitude = readCoordinate(cell(mapping.latitude), 'latitude');
  if (longitude === undefined || latitude === undefined) return undefined;
  return Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90 ? [longitude, latitude] : undefined;
}

const path = (line: readonly (readonly number[])[]) => line.map(([x, y]) => [x!, y!]);

/** GeoJSON's rings end where they begin; some writers leave that out. */
function closed(ring: readonly (readonly number[])[]): number[][] {
  const points = path(ring);
  const [first, last] = [points[0], points.at(-1)];
  if (first && last && (first[0] !== last[0] || first[1] !== last[1])) points.push([...first]);
  return points;
}
