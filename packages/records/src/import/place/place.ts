/** Where a row's record is: from its geometry or its columns to degrees WGS 84, or why not. */
import type { PlaceMapping } from '../mapping/mapping.ts';
import type { RefusalCode, SourceGeometry, SourceRow, TypedPlace } from '../source/source.ts';
import { isBlank } from '../values/blank.ts';
import { readCoordinate, readPair } from './coordinate-text.ts';
import { type CoordinateSystem, readCrs } from './crs.ts';
import { mapPositions, pointOf } from './shapes.ts';
import { isEmptyWkt, readWkt, sridOf } from './wkt.ts';

export interface Place {
  longitude: number;
  latitude: number;
  /** In degrees WGS 84. */
  geometry: SourceGeometry;
  column?: string;
}

export interface PlaceFault {
  code: RefusalCode;
  column?: string;
  value?: string;
  reason: string;
  remedy: string;
}

/** A row farther than this from the middle of the rest is far off [km]. */
export const FAR_OFF_KM = 300;

/**
 * The place of a row. Never throws.
 * @param own the row is a record of ours: 0, 0 and a place without towns are meant
 */
export function placeOf(row: SourceRow, mapping: PlaceMapping, own = false): Place | PlaceFault {
  if (row.typedPlace) return typedPlace(row.typedPlace, mapping);
  const read = readCrs(mapping.crs);
  if (!read.ok) {
    return { code: 'place not converted', reason: read.reason, remedy: read.remedy };
  }
  const raw = rawGeometry(row, mapping);
  if ('code' in raw) return raw;
  // A text that states its own system is in that.
  if (raw.crs !== undefined) {
    const stated = readCrs(raw.crs);
    if (!stated.ok) {
      return { code: 'place not converted', reason: stated.reason, remedy: stated.remedy };
    }
    return placed(raw, stated.system, mapping, own);
  }
  // Columns beside a blank geometry are of another kind than it: degrees, if anything.
  const degrees = mapping.geometry && raw.from !== 'geometry';
  const found = degrees ? readCrs('EPSG:4326') : read;
  if (!found.ok) return { code: 'place not converted', reason: found.reason, remedy: found.remedy };
  return placed(raw, found.system, mapping, own);
}

interface Raw {
  geometry: SourceGeometry;
  from: 'geometry' | 'columns';
  column?: string;
  value?: string;
  /** Stated by the place itself. */
  crs?: string;
}

function rawGeometry(row: SourceRow, mapping: PlaceMapping): Raw | PlaceFault {
  if (mapping.geometry && row.geometry) return { geometry: row.geometry, from: 'geometry' };
  const cell = (column: string | undefined) => {
    const value = column === undefined ? null : (row.values[column] ?? null);
    return isBlank(value, false) ? undefined : String(value);
  };
  const point = cell(mapping.point);
  if (point !== undefined && !isEmptyWkt(point)) return fromPoint(point, mapping);
  const { longitude: x, latitude: y } = mapping;
  const [east, north] = [cell(x), cell(y)];
  if (east === undefined || north === undefined) {
    const half = east !== undefined || north !== undefined;
    const column = east === undefined ? x : y;
    if (!mapping.geometry && mapping.point === undefined && x === undefined && y === undefined) {
      return {
        code: 'no place',
        reason: 'No column of the file is taken for a place.',
        remedy:
          'Choose the columns with longitude and latitude. Where the rows have none, they may be of another kind, such as flow tests: choose that kind.',
      };
    }
    return {
      code: 'no place',
      ...(column !== undefined && { column }),
      reason: half
        ? 'One of the two coordinates is blank.'
        : 'The row has no place: its geometry or coordinates are blank.',
      remedy: 'Fill in longitude and latitude, or enter the record on the map.',
    };
  }
  return fromTexts(east, north, x, y);
}

/** Two coordinates as texts, and the columns that they stand in. */
function fromTexts(
  east: string,
  north: string,
  x: string | undefined,
  y: string | undefined,
): Raw | PlaceFault {
  const longitude = readCoordinate(east, 'longitude');
  const latitude = readCoordinate(north, 'latitude');
  if (longitude === undefined || latitude === undefined) {
    const column = longitude === undefined ? x : y;
    return {
      code: 'value not understood',
      ...(column !== undefined && { column }),
      value: longitude === undefined ? east : north,
      reason: 'It is no coordinate that is understood.',
      remedy: "Write degrees such as -84.38576, or degrees and minutes such as 49°31.6'N.",
    };
  }
  return {
    geometry: { type: 'Point', coordinates: [longitude, latitude] },
    from: 'columns',
    value: `${east}, ${north}`,
    ...(x !== undefined && { column: x }),
  };
}

/** What origins and refusals call it. */
const BY_HAND = 'place entered by hand';

/** Degrees WGS 84 whatever the file is in; nothing in them is exchanged by itself. */
function typedPlace({ longitude, latitude }: TypedPlace, mapping: PlaceMapping) {
  const found = readCrs('EPSG:4326');
  if (!found.ok) {
    return { code: 'place not converted' as const, reason: found.reason, remedy: found.remedy };
  }
  const [east, north] = [longitude.trim(), latitude.trim()];
  if (east === '' || north === '') {
    return {
      code: 'no place' as const,
      column: BY_HAND,
      reason: 'One of the two coordinates is blank.',
      remedy: 'Fill in longitude and latitude.',
    };
  }
  const raw = fromTexts(east, north, BY_HAND, BY_HAND);
  return 'code' in raw ? raw : placed(raw, found.system, { ...mapping, swapped: 'refuse' }, false);
}

function fromPoint(text: string, mapping: PlaceMapping): Raw | PlaceFault {
  const at = { column: mapping.point!, value: text };
  const wkt = readWkt(text) ?? geojsonText(text);
  const crs = sridOf(text);
  if (wkt) return { geometry: wkt, from: 'columns', ...at, ...(crs !== undefined && { crs }) };
  const pair = readPair(text);
  const order = mapping.pointOrder ?? 'latitude first';
  const [first, second] = pair ?? ['', ''];
  const [north, east] = order === 'latitude first' ? [first, second] : [second, first];
  const longitude = readCoordinate(east, 'longitude');
  const latitude = readCoordinate(north, 'latitude');
  if (longitude === undefined || latitude === undefined) {
    return {
      code: 'value not understood',
      ...at,
      reason: 'It is no place that is understood.',
      remedy: 'Write two numbers, such as 49.52726, 11.26391, or POINT (11.26391 49.52726).',
    };
  }
  return {
    geometry: { type: 'Point', coordinates: [longitude, latitude] },
    from: 'columns',
    ...at,
  };
}

function geojsonText(text: string): SourceGeometry | undefined {
  if (!text.startsWith('{')) return undefined;
  try {
    const value = JSON.parse(text) as SourceGeometry | { latitude?: unknown; longitude?: unknown };
    if (!('type' in value)) {
      const { latitude, longitude } = value as { latitude?: unknown; longitude?: unknown };
      const [x, y] = [Number(longitude ?? Number.NaN), Number(latitude ?? Number.NaN)];
      const isPlace = Number.isFinite(x) && Number.isFinite(y);
      return isPlace ? { type: 'Point', coordinates: [x, y] } : undefined;
    }
    return pointOf(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

function placed(
  raw: Raw,
  system: CoordinateSystem,
  mapping: PlaceMapping,
  own: boolean,
  exchange = false,
): Place | PlaceFault {
  const source = pointOf(raw.geometry);
  const at = {
    ...(raw.column !== undefined && { column: raw.column }),
    value: raw.value ?? source?.join(', ') ?? '',
  };
  if (!source?.every(Number.isFinite)) {
    return {
      code: 'no place',
      ...at,
      reason: 'Its geometry is empty.',
      remedy: 'Draw it again, or leave it out.',
    };
  }
  if (!own && source[0] === 0 && source[1] === 0) {
    return {
      code: 'no place',
      ...at,
      reason: 'The place is 0, 0, which lists write for "not known".',
      remedy: 'Fill in longitude and latitude.',
    };
  }
  const fault = exchange
    ? undefined
    : system.degrees
      ? degreesFault(source, mapping, own)
      : projectedFault(source, system);
  if (fault === 'exchange') return placed(raw, system, mapping, own, true);
  if (fault) return { ...fault, ...at };
  const convert = (x: number, y: number) =>
    exchange ? system.toWgs84(y, x) : system.toWgs84(x, y);
  const geometry = mapPositions(raw.geometry, convert);
  const [longitude, latitude] = pointOf(geometry) ?? [Number.NaN, Number.NaN];
  const finite = (geometry.coordinates.flat(3) as number[]).every(Number.isFinite);
  if (!finite || Math.abs(longitude) > 180 || Math.abs(latitude) > 90) {
    return {
      code: 'place out of range',
      ...at,
      reason: `The place has no longitude and latitude by ${system.name}.`,
      remedy: 'Check the coordinate system of the file.',
    };
  }
  const place: Place = { longitude, latitude, geometry };
  if (raw.column !== undefined) place.column = raw.column;
  const far = farFault(place, mapping);
  if (far === 'exchange') return exchange ? place : placed(raw, system, mapping, own, true);
  return far ? { ...far, ...at } : place;
}

function degreesFault([x, y]: [number, number], mapping: PlaceMapping, own: boolean) {
  if (Math.abs(x) <= 180 && Math.abs(y) <= 90) {
    // South of 60° S there is no town (Antarctic Treaty, article VI): a longitude in the latitude's place.
    if (own || y > -60 || Math.abs(x) > 75) return undefined;
    return mapping.swapped === 'exchange' ? ('exchange' as const) : swapped;
  }
  if (Math.abs(x) <= 90 && Math.abs(y) <= 180) {
    return mapping.swapped === 'exchange' ? ('exchange' as const) : swapped;
  }
  const large = Math.abs(x) > 1000 || Math.abs(y) > 1000;
  return {
    code: 'place out of range' as const,
    reason: large
      ? 'These are no degrees but coordinates of a map projection.'
      : 'Longitude lies between −180 and 180, latitude between −90 and 90.',
    remedy: large
      ? 'Say which coordinate system the file is in, by its EPSG code.'
      : 'Correct the coordinates.',
  };
}

const swapped = {
  code: 'place swapped' as const,
  reason: 'Longitude and latitude seem to be exchanged.',
  remedy: 'Exchange them in the file, or say that they are exchanged.',
};

function projectedFault([x, y]: [number, number], { name, area, toWgs84 }: CoordinateSystem) {
  if (Math.abs(x) <= 180 && Math.abs(y) <= 90) {
    return {
      code: 'place out of range' as const,
      reason: `These are degrees, not coordinates of ${name}.`,
      remedy: 'Say that the file is in degrees (EPSG:4326).',
    };
  }
  if (!area) return undefined;
  const [longitude, latitude] = toWgs84(x, y);
  const [west, south, east, north] = area;
  const margin = 3;
  const wraps = west > east;
  const inside =
    latitude >= south - margin &&
    latitude <= north + margin &&
    (wraps || (longitude >= west - margin && longitude <= east + margin));
  return inside
    ? undefined
    : {
        code: 'place out of range' as const,
        reason: `The place lies outside the area of ${name}.`,
        remedy: 'Check the coordinate system and its unit (feet or metres).',
      };
}

function farFault({ longitude, latitude }: Place, { near, farOff, swapped: rule }: PlaceMapping) {
  if (!near) return undefined;
  const away = distanceKm(near, [longitude, latitude]);
  if (away <= FAR_OFF_KM) return undefined;
  const exchanged =
    Math.abs(longitude) <= 90 && distanceKm(near, [latitude, longitude]) < FAR_OFF_KM / 3;
  if (exchanged) return rule === 'exchange' ? ('exchange' as const) : swapped;
  if (farOff === 'take') return undefined;
  const turned = distanceKm(near, [-longitude, latitude]) < FAR_OFF_KM / 3;
  return {
    code: 'place far off' as const,
    reason: `The place is ${Math.round(away)} km from the rest${turned ? '; with the other sign of its longitude it would be among them' : ''}.`,
    remedy: 'Correct its coordinates, or say that places far off are meant.',
  };
}

/** Great circle on a sphere of 6371 km: near enough to tell a county from an ocean. */
export function distanceKm(
  [lon1, lat1]: readonly [number, number],
  [lon2, lat2]: readonly [number, number],
): number {
  const rad = Math.PI / 180;
  const dLat = (lat2 - lat1) * rad;
  const dLon = (lon2 - lon1) * rad;
  const h =
    Math.sin(dLat / 2) ** 2 + Math.cos(lat1 * rad) * Math.cos(lat2 * rad) * Math.sin(dLon / 2) ** 2;
  return 2 * 6371 * Math.asin(Math.min(1, Math.sqrt(h)));
}
