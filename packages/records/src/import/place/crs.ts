/** Coordinate systems: from an EPSG code or a definition to degrees WGS 84, or a reason why not. */
import { createRequire } from 'node:module';
import proj4 from 'proj4';
import { crsRemedy } from './place-notices.ts';

export interface CoordinateSystem {
  /** For people: `EPSG:2240 NAD83 / Georgia West (ftUS)`. */
  name: string;
  /** True where coordinates are degrees already. */
  degrees: boolean;
  /** [longitude, latitude] WGS 84; not finite where the point has none. */
  toWgs84(x: number, y: number): [number, number];
  /** The other way round. */
  fromWgs84(longitude: number, latitude: number): [number, number];
  /** Where it is meant to be used [west, south, east, north], where known. */
  area?: readonly [number, number, number, number];
}

export type CrsRead =
  | { ok: true; system: CoordinateSystem }
  | { ok: false; reason: string; remedy: string };

interface EpsgEntry {
  code: string;
  name: string;
  kind: string;
  wkt: string | null;
  proj4: string | null;
  bbox: readonly [north: number, west: number, south: number, east: number] | null;
}

let table: Record<string, EpsgEntry> | undefined;

/** The published table of codes; 12 MB, so read when first asked for. */
function epsg(code: string): EpsgEntry | undefined {
  table ??= createRequire(import.meta.url)('epsg-index/all.json') as Record<string, EpsgEntry>;
  return table[code];
}

const known = new Map<string, CrsRead>();

/** What most lists are in, known without the table. */
const wgs84: CoordinateSystem = {
  name: 'EPSG:4326 WGS 84',
  degrees: true,
  toWgs84: (x, y) => [x, y],
  fromWgs84: (longitude, latitude) => [longitude, latitude],
};

/**
 * @param crs `EPSG:2240`, `2240`, or a definition as WKT (a .prj file) or PROJ text
 * @returns a reason and a remedy where it is not known, or needs a shift grid that is not at hand:
 *   places would be wrong by up to some hundred metres without it
 */
export function readCrs(crs: string): CrsRead {
  const key = crs.trim();
  let read = known.get(key);
  if (!read) {
    read = readNew(key);
    if (known.size < 200) known.set(key, read);
  }
  return read;
}

function readNew(crs: string): CrsRead {
  if (/^(EPSG:{1,2})?4326$/i.test(crs)) return { ok: true, system: wgs84 };
  const code = /^(?:EPSG:{1,2})?\s*(\d{4,6})$/i.exec(crs)?.[1] ?? webMercator(crs);
  if (code === undefined) {
    if (!/^\s*(\+|[A-Z]+CS\s*\[|[A-Z]+CRS\s*\[)/i.test(crs)) {
      return no(`"${crs.slice(0, 60)}" names no coordinate system that is known.`);
    }
    const name = /\[\s*"([^"]+)"/.exec(crs)?.[1] ?? crs.slice(0, 60);
    return fromDefinitions(name, [crs]);
  }
  const entry = epsg(code);
  if (!entry) return no(`EPSG:${code} is in no list that is known.`);
  const named = `EPSG:${code} ${entry.name}`;
  if (!/PROJCRS|GEOGCRS|GEOG3DCRS|COMPOUNDCRS/.test(entry.kind)) {
    return no(`${named} is no system of places on a map.`);
  }
  const definitions = [entry.proj4?.replace(germanGrid, germanShift), entry.wkt].filter(
    (one) => typeof one === 'string',
  );
  const read = fromDefinitions(named, definitions);
  if (read.ok && entry.bbox) {
    const [north, west, south, east] = entry.bbox;
    read.system.area = [west, south, east, north];
  }
  return read;
}

/**
 * Germany's old survey (DHDN) is listed with a grid file; seven numbers bring it within 3 m (EPSG
 * transformation 1777, "DHDN to WGS 84 (2)", from memory).
 */
const germanGrid = /\+nadgrids=BETA2007\.gsb/i;
const germanShift = '+towgs84=598.1,73.7,418.2,0.202,0.045,-2.455,6.7';

/** Codes that were in use for the web's map projection before it had its own. */
function webMercator(crs: string): string | undefined {
  return /^(EPSG:)?(102100|102113|900913)$/i.test(crs) ? '3857' : undefined;
}

function fromDefinitions(name: string, definitions: readonly string[]): CrsRead {
  let last = `${name} has no definition that can be computed.`;
  for (const definition of definitions) {
    const read = fromDefinition(name, definition);
    if (typeof read !== 'string') return { ok: true, system: read };
    last = read;
  }
  return no(last);
}

/** Kinds of datum shift in proj4. */
const SHIFT_BY_GRID = 3;
const SHIFTS_BY_NUMBERS = [1, 2];

function fromDefinition(name: string, definition: string): CoordinateSystem | string {
  try {
    const projection = proj4.Proj(definition) as unknown as {
      projName?: string;
      a?: number;
      b?: number;
      from_greenwich?: number;
      datum?: { datum_type?: number; datum_params?: readonly (number | string)[] };
    };
    const shift = projection.datum?.datum_type ?? 0;
    if (shift === SHIFT_BY_GRID) return `${name} needs a shift grid that is not at hand.`;
    // WGS 84 and GRS 80 differ by a tenth of a millimetre; a sphere of that radius is the web's map.
    const modern = Math.abs((projection.a ?? 0) - 6_378_137) < 0.01;
    if (!modern && !SHIFTS_BY_NUMBERS.includes(shift)) {
      return `${name} rests on an older survey, and its shift to WGS 84 is not at hand.`;
    }
    const degrees = projection.projName === 'longlat';
    const numbers = projection.datum?.datum_params ?? [];
    const shifted = SHIFTS_BY_NUMBERS.includes(shift) && numbers.some((one) => Number(one) !== 0);
    if (degrees && modern && !shifted && !projection.from_greenwich) {
      return { ...wgs84, name };
    }
    const converter = proj4(definition, 'WGS84');
    // One point, so that a definition that loads but cannot be computed is found out here.
    converter.forward(degrees ? [0, 0] : [500_000, 500_000]);
    return {
      name,
      degrees,
      toWgs84(x, y) {
        try {
          const [longitude = Number.NaN, latitude = Number.NaN] = converter.forward([x, y]);
          return [rounded(longitude), rounded(latitude)];
        } catch {
          return [Number.NaN, Number.NaN];
        }
      },
      fromWgs84(longitude, latitude) {
        try {
          const [x = Number.NaN, y = Number.NaN] = converter.inverse([longitude, latitude]);
          return [x, y];
        } catch {
          return [Number.NaN, Number.NaN];
        }
      },
    };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return `${name} cannot be computed (${why.slice(0, 120)}).`;
  }
}

/** To a billionth of a degree, a tenth of a millimetre: what is past it is the arithmetic's own. */
const rounded = (angle: number) => Math.round(angle * 1e9) / 1e9;

const no = (reason: string): CrsRead => ({ ok: false, reason, remedy: crsRemedy });
