import type { Kind } from '../../model/index.ts';
import type { Measure } from '../values/units.ts';

/** Columns whose name asks the contrary ("out of service": yes or no), and what yes and no mean there. */
export interface Contrary {
  /** Of the name in lower case with single spaces. */
  name: RegExp;
  yes: string | boolean;
  no: string | boolean;
}

export type FieldType =
  | { is: 'text' }
  | {
      is: 'measure';
      of: Measure;
      /** Lists write 0 for "not known". */
      zeroIsBlank?: boolean;
      /** Less than this, in the inside unit, is a value in another unit. */
      least?: number;
    }
  | { is: 'number' }
  | {
      is: 'count';
      /** Lists write 0 for "not known". */
      zeroIsBlank?: boolean;
      /** A part, such as half a storey, counts as one more. */
      partsCount?: boolean;
    }
  | { is: 'yes-no'; contrary?: Contrary }
  | { is: 'date' }
  | {
      is: 'choice';
      words: Readonly<Record<string, string>>;
      contrary?: Contrary;
    }
  | { is: 'reference'; to: Kind }
  /** Lists and objects, as JSON: our own export. */
  | { is: 'json' };

/** A field that a list can fill, and the names it goes by. */
export interface FieldSpec {
  /** The record's field, or a part of one. */
  field: string;
  label: string;
  type: FieldType;
  /** In lower case with single spaces; units at the end are told apart by themselves. */
  names: readonly string[];
  /** A column with one of these words in its name is something else. */
  not?: RegExp;
  /** Where the name is one of OpenStreetMap's keys: the unit its bare numbers have there. */
  unitByName?: Readonly<Record<string, string>>;
}

export const text = (
  field: string,
  label: string,
  names: readonly string[],
  not?: RegExp,
): FieldSpec => ({
  field,
  label,
  type: { is: 'text' },
  names,
  ...(not && { not }),
});

export const measure = (
  field: string,
  label: string,
  of: Measure,
  names: readonly string[],
  more: {
    not?: RegExp;
    zeroIsBlank?: boolean;
    least?: number;
    unitByName?: Record<string, string>;
  } = {},
): FieldSpec => ({
  field,
  label,
  type: {
    is: 'measure',
    of,
    ...(more.zeroIsBlank && { zeroIsBlank: true }),
    ...(more.least !== undefined && { least: more.least }),
  },
  names,
  ...(more.not && { not: more.not }),
  ...(more.unitByName && { unitByName: more.unitByName }),
});

export const choice = (
  field: string,
  label: string,
  names: readonly string[],
  words: Readonly<Record<string, string>>,
): FieldSpec => ({ field, label, type: { is: 'choice', words }, names });

/** A few words each: `words('in service', 'active yes')` → each of them means "in service". */
export function words(...rows: readonly (readonly [means: string, ...said: string[]])[]) {
  const table: Record<string, string> = {};
  for (const [means, ...said] of rows) for (const one of [means, ...said]) table[one] = means;
  return table;
}

export const noteField = text('note', 'Note', [
  'note',
  'notes',
  'comment',
  'comments',
  'remark',
  'remarks',
  'description',
  'bemerkung',
]);

export const elevationField = measure(
  'elevationFt',
  'Elevation',
  'length',
  [
    'elevation',
    'elev',
    'ele',
    'ground elevation',
    'ground elev',
    'altitude',
    'height above sea level',
    'surface elevation',
    'z',
    'hoehe',
    'höhe',
  ],
  { unitByName: { ele: 'm', hoehe: 'm', höhe: 'm' } },
);

/** Names of columns that hold a list's own id, the most lasting first. */
export const idNames = [
  'external id',
  'id',
  'facility id',
  'facilityid',
  'asset id',
  'assetid',
  'global id',
  'globalid',
  'guid',
  'uuid',
  'hydrant id',
  'hydrantid',
  'hyd id',
  'hydid',
  'unit id',
  'building id',
  'bldg id',
  'street id',
  'segment id',
  'seg id',
  'test id',
  'station id',
  'osm id',
  '@id',
  'full id',
  'hydrant no',
  'hydrant number',
  'hyd no',
  'asset number',
  'feature id',
  'feature id',
  'key',
  'object id',
  'objectid',
  'fid',
  'gid',
  'ogc fid',
];
