/** Which column means what. Plain data: it is shown, changed and sent back. */

/** The kinds that lists are imported into. */
export const importKinds = [
  'stations',
  'hydrants',
  'water-sources',
  'flow-tests',
  'rigs',
  'streets',
  'buildings',
] as const;
export type ImportKind = (typeof importKinds)[number];

export interface FieldMapping {
  /** A field of the record, or a part of one: `flowing[0].pitotPsi`. */
  field: string;
  /** Columns of the file. Several: see `join`. */
  columns: string[];
  /** Several columns: the first with a value, all with a space between, or each with its name. */
  join?: 'first' | 'space' | 'named';
  /** Unit of bare numbers; left out: the field's own. A unit written in the value goes first. */
  unit?: string;
  /** What separates decimals; the other one separates thousands. */
  decimal?: 'point' | 'comma';
  /** What a value in the file means, by its lower case; `*` for any other. */
  words?: Record<string, string | number | boolean | null>;
  /** 0 to 1: how sure the guess is. */
  confidence: number;
  /** Why it was guessed, as a sentence. */
  why: string;
}

export interface PlaceMapping {
  /** Take the geometry that the format has. */
  geometry: boolean;
  /** Columns for each coordinate, in the coordinate system of the file. */
  longitude?: string;
  latitude?: string;
  /** One column with both, or with a geometry as text (WKT). */
  point?: string;
  /** Order of two numbers in `point`. */
  pointOrder?: 'latitude first' | 'longitude first';
  /** `EPSG:4326` is degrees; others are converted. A definition (WKT, PROJ) works too. */
  crs: string;
  /** A row whose longitude and latitude seem exchanged: refuse it, or exchange them. */
  swapped: 'refuse' | 'exchange';
  /** A row far from the rest: refuse it, or take it. */
  farOff: 'refuse' | 'take';
  /** Middle of the file's places [longitude, latitude], against which rows are held. */
  near?: [number, number];
}

export interface RowFilter {
  column: string;
  /** Lower case; a row is taken where the column has one of them. `*`: anything but blank. */
  values: string[];
}

export interface Mapping {
  kind: ImportKind;
  /** Name of the list. With a row's id it is what a later import finds the record by. */
  sourceName: string;
  /** Column with the list's own id of each row; left out: a fixed code of name and place. */
  idColumn?: string;
  /** Column with the name of the list that a row first came from, where a file was exported here. */
  sourceColumn?: string;
  /** Column with the record's own id, where a file was exported here. */
  recordColumn?: string;
  fields: FieldMapping[];
  /** Left out for kinds without a place. */
  place?: PlaceMapping;
  /** Rows to take: any that fits one of these. Left out: all. */
  only?: RowFilter[];
  /** For dates such as 03/04/2024. */
  dateOrder?: 'day first' | 'month first';
  /** Columns that nothing is taken from. */
  unused: string[];
  /** What a person should look at, as sentences. */
  notices: string[];
}
