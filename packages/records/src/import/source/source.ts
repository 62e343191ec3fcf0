/** What a file offers to an import: rows with named columns, and places where the format has them. */

/** A geometry as GeoJSON has it, in the file's own coordinates. */
export type SourceGeometry =
  | { type: 'Point'; coordinates: number[] }
  | { type: 'MultiPoint' | 'LineString'; coordinates: number[][] }
  | { type: 'MultiLineString' | 'Polygon'; coordinates: number[][][] }
  | { type: 'MultiPolygon'; coordinates: number[][][][] };

export type Cell = string | number | boolean | null;

/** What cannot be read in one row; the rest of the file goes on. */
export interface RowFault {
  code: RefusalCode;
  reason: string;
  remedy: string;
}

/** As a person wrote it: degrees WGS 84, in any way that a list may write them. */
export interface TypedPlace {
  longitude: string;
  latitude: string;
}

export interface SourceRow {
  /** CSV: line of the file, from 1. Otherwise the feature, from 1. */
  number: number;
  values: Readonly<Record<string, Cell>>;
  /** Left out where the format has none; null where this row's is blank. */
  geometry?: SourceGeometry | null;
  /** Stands in place of the geometry and of columns. */
  typedPlace?: TypedPlace;
  fault?: RowFault;
  /** The row as it stood in the file, where it is faulty. */
  raw?: string;
}

/** Why a row is refused, in a closed set for counting. */
export type RefusalCode =
  | 'unreadable row'
  | 'column count'
  | 'no place'
  | 'place out of range'
  | 'place swapped'
  | 'place far off'
  | 'place not converted'
  | 'wrong geometry'
  | 'value not understood'
  | 'value out of range'
  | 'date ambiguous'
  | 'not found'
  | 'missing value'
  | 'duplicate key';

/** Says where one of the file's coordinate systems was learnt. */
export interface SourceCrs {
  /** `EPSG:2240`, or the text of a definition (WKT). */
  crs: string;
  from: string;
}

export type SourceFormat = 'csv' | 'geojson' | 'shapefile';

/** A file that was looked through once: what it has, and a way to read it again from the start. */
export interface Source {
  /** The file's name, for people. */
  name: string;
  format: SourceFormat;
  /** As decoded: `UTF-8`, `UTF-16 LE`, `Windows-1252` … */
  encoding: string;
  /** CSV alone. */
  delimiter?: string;
  columns: readonly string[];
  hasGeometry: boolean;
  crs?: SourceCrs;
  /** Rows in the file, faulty ones too. */
  total: number;
  /** The first rows as they stand, then others from all over the file; at most 500. */
  sample: readonly SourceRow[];
  /** What was noticed while reading, as sentences. */
  notices: readonly string[];
  /** Every row from the start; may be asked for again. Memory does not grow with the file. */
  rows(): AsyncIterable<SourceRow>;
  /** Lets go of temporary files. */
  close(): Promise<void>;
}

/** The file as a whole cannot be read. The message says why, the remedy what to do. */
export class SourceRefusedError extends Error {
  readonly fileName: string;
  readonly remedy: string;

  constructor(fileName: string, reason: string, remedy: string) {
    super(`${fileName}: ${reason} ${remedy}`);
    this.name = 'SourceRefusedError';
    this.fileName = fileName;
    this.remedy = remedy;
  }
}
