import { readCoordinate } from '../place/coordinate-text.ts';
import { readCrs } from '../place/crs.ts';
import { distanceKm, FAR_OFF_KM, placeOf } from '../place/place.ts';
import { noPlaceNotice, projectionNotice } from '../place/place-notices.ts';
import type { Source, SourceRow } from '../source/source.ts';
import { isBlank } from '../values/blank.ts';
import { plainName } from './column-name.ts';
import type { PlaceMapping } from './mapping.ts';

/** The likelier first; degrees before projected ones. */
const longitudeNames = [
  'longitude',
  'lon',
  'long',
  'lng',
  'gps longitude',
  'gps lon',
  'longitude wgs84',
  'wgs84 lon',
  'lon dd',
  'long dd',
  'dec long',
  'laengengrad',
  'längengrad',
  'laenge',
  'lon wgs84',
  'longitud',
  'x lon',
  'x',
  'point x',
  'x coord',
  'xcoord',
  'coord x',
  'x coordinate',
  'easting',
  'east',
  'rechtswert',
  'ostwert',
];
const latitudeNames = [
  'latitude',
  'lat',
  'lat',
  'lat',
  'gps latitude',
  'gps lat',
  'latitude wgs84',
  'wgs84 lat',
  'lat dd',
  'lat dd',
  'dec lat',
  'breitengrad',
  'breitengrad',
  'breite',
  'lat wgs84',
  'latitud',
  'y lat',
  'y',
  'point y',
  'y coord',
  'ycoord',
  'coord y',
  'y coordinate',
  'northing',
  'north',
  'hochwert',
  'nordwert',
];
const pointNames = [
  'path',
  'footprint',
  'wkt',
  'geometry wkt',
  'wkt geom',
  'geometry',
  'geom',
  'the geom',
  'shape',
  'location',
  'location 1',
  'coordinates',
  'coordinate',
  'coords',
  'lat lon',
  'lat long',
  'latlon',
  'latlong',
  'latlng',
  'lat lng',
  'latitude longitude',
  'lon lat',
  'gps',
  'gps coordinates',
  'geolocation',
  'georeference',
  'geocoded column',
  'geo point 2d',
  'geo point',
  'geopoint',
  'geo shape',
  'position',
  'point',
  'refused geometry',
];

export interface PlaceGuess {
  place: PlaceMapping;
  columns: string[];
  notices: string[];
}

/**
 * @param district middle of what the department has already [longitude, latitude]
 */
export function guessPlace(source: Source, district?: readonly [number, number]): PlaceGuess {
  const notices: string[] = [];
  const byName = new Map(source.columns.map((column) => [plainName(column), column]));
  let [longitude, latitude]: (string | undefined)[] = [];
  for (const [at, name] of longitudeNames.entries()) {
    const [x, y] = [byName.get(name), byName.get(latitudeNames[at]!)];
    if (x === undefined || y === undefined) continue;
    if (readable(source.sample, x, 'longitude') && readable(source.sample, y, 'latitude')) {
      [longitude, latitude] = [x, y];
      break;
    }
  }
  if (longitude === undefined) [longitude, latitude] = pairByName(source) ?? [];
  const crs = statedCrs(source);
  const place: PlaceMapping = {
    geometry: source.hasGeometry,
    ...(longitude !== undefined && { longitude }),
    ...(latitude !== undefined && { latitude }),
    crs: crs ?? 'EPSG:4326',
    swapped: 'refuse',
    farOff: 'refuse',
  };
  const points = [
    ...pointNames.flatMap((name) => byName.get(name) ?? []),
    ...source.columns.filter((column) => pointWords.test(letters(column))),
  ];
  const orderOf = (column: string) =>
    /lon.*lat/.test(letters(column)) ? ('longitude first' as const) : undefined;
  const point = points.find((column) => {
    const pointOrder = orderOf(column);
    return holdsPlaces(source.sample, {
      ...place,
      point: column,
      ...(pointOrder && { pointOrder }),
    });
  });
  if (point !== undefined) {
    place.point = point;
    const pointOrder = orderOf(point);
    if (pointOrder) place.pointOrder = pointOrder;
  }
  const read = readCrs(place.crs);
  if (!read.ok) notices.push(`${read.reason} ${read.remedy}`);
  else if (crs === undefined && projected(source.sample, place)) {
    notices.push(projectionNotice);
  }
  if (!place.geometry && point === undefined && longitude === undefined) {
    notices.push(noPlaceNotice);
  }
  const near = middleOf(source.sample, place);
  if (near) place.near = exchangedFrom(near, district) ?? near;
  if (near && district && signLost(near, district)) {
    notices.push(
      'The places lie on the other side of the world; with the other sign of their longitude they would be beside what is on record. Mend the file, or leave it so if it is meant.',
    );
  }
  const columns = [longitude, latitude, point].filter((one) => one !== undefined);
  return { place, columns, notices };
}

/** A name's letters alone. */
const letters = (column: string) => column.toLowerCase().replace(/[^a-z]/g, '');

/** Part of the name of a column with both coordinates; its values tell whether it has them. */
const pointWords =
  /lat(itude)?(and)?(lon|lng)|(lon|long|lng|longitude)(and)?lat|coord|location|position|gps/;

/**
 * Two columns whose names are alike but for "lat" in the one and "lon" in the other: `GPS_Lat` and
 * `GPS_Long`, `Latitude (DD)` and `Longitude (DD)`.
 */
function pairByName({ columns, sample }: Source): [string, string] | undefined {
  const rest = (column: string, axis: RegExp) => {
    const name = letters(column).replace(axis, '#');
    return name.includes('#') ? name.replace(/^[xy]#/, '#').replace(/#[nsew]$/, '#') : undefined;
  };
  for (const latitude of columns) {
    const name = rest(latitude, /lat(itude)?/);
    if (name === undefined) continue;
    const longitude = columns.find(
      (one) => one !== latitude && rest(one, /lon(g(itude)?)?|lng/) === name,
    );
    if (longitude === undefined) continue;
    if (readable(sample, longitude, 'longitude') && readable(sample, latitude, 'latitude')) {
      return [longitude, latitude];
    }
  }
  return undefined;
}

/** What a file of refused rows says of the coordinates in it, else what the format says. */
function statedCrs(source: Source): string | undefined {
  const stated = source.sample[0]?.values.refused_crs;
  return typeof stated === 'string' && stated !== '' ? stated : source.crs?.crs;
}

function readable(sample: readonly SourceRow[], column: string, axis: 'longitude' | 'latitude') {
  const values = sample
    .map((row) => row.values[column] ?? null)
    .filter((one) => !isBlank(one, false));
  const good = values.filter((value) => readCoordinate(String(value), axis) !== undefined);
  return good.length > 0 && good.length >= values.length / 2;
}

function holdsPlaces(sample: readonly SourceRow[], place: PlaceMapping): boolean {
  const filled = sample.filter((row) => !isBlank(row.values[place.point!] ?? null, false));
  const good = filled.filter((row) => {
    const found = placeOf(
      { ...row, geometry: null },
      { ...place, geometry: false, crs: 'EPSG:4326' },
    );
    return !('code' in found) || found.code.startsWith('place');
  });
  return good.length > 0 && good.length >= filled.length / 2;
}

function projected(sample: readonly SourceRow[], place: PlaceMapping): boolean {
  const faults = sample.map((row) => placeOf(row, place)).filter((one) => 'code' in one);
  return faults.filter((one) => one.reason.includes('projection')).length > sample.length / 2;
}

/** By the median of each coordinate, so that a few wrong ones do not move it. */
function middleOf(sample: readonly SourceRow[], place: PlaceMapping): [number, number] | undefined {
  const found = sample.flatMap((row) => {
    const one = placeOf(row, place);
    return 'code' in one ? [] : [one];
  });
  if (found.length < 3) return undefined;
  const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1]!;
  return [
    median(found.map(({ longitude }) => longitude)),
    median(found.map(({ latitude }) => latitude)),
  ];
}

/** Lists of the west that leave the minus out. */
const signLost = (
  [longitude, latitude]: readonly [number, number],
  district: readonly [number, number],
) =>
  distanceKm(district, [longitude, latitude]) > FAR_OFF_KM &&
  distanceKm(district, [-longitude, latitude]) < FAR_OFF_KM / 3;

/** The district's middle, where the whole file fits it only with its coordinates exchanged. */
function exchangedFrom(
  [longitude, latitude]: [number, number],
  district: readonly [number, number] | undefined,
): [number, number] | undefined {
  if (!district || distanceKm(district, [longitude, latitude]) <= FAR_OFF_KM) return undefined;
  const fitsExchanged =
    Math.abs(longitude) <= 90 && distanceKm(district, [latitude, longitude]) < FAR_OFF_KM / 3;
  return fitsExchanged ? [district[0], district[1]] : undefined;
}
