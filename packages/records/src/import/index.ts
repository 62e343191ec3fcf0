/** Lists from elsewhere: read, understood, brought in again without doubling. */

export { awayNotice, districtMiddle } from './district-middle.ts';
export { SeenKeys } from './duplicate-row.ts';
export type { FieldSpec, FieldType } from './mapping/field-spec.ts';
export { fieldsByKind } from './mapping/fields.ts';
export { guessKind } from './mapping/guess-kind.ts';
export { type GuessOptions, guessMapping } from './mapping/guess-mapping.ts';
export { refusedColumns } from './mapping/known-columns.ts';
export {
  type FieldMapping,
  type ImportKind,
  importKinds,
  type Mapping,
  type PlaceMapping,
  type RowFilter,
} from './mapping/mapping.ts';
export { type MendedRow, type MendedRows, mendedAgain, withMendedRows } from './mended-rows.ts';
export { type CoordinateSystem, type CrsRead, readCrs } from './place/crs.ts';
export { placeOf } from './place/place.ts';
export { readReferences } from './references.ts';
export type { ImportReport, KeptValue, NotedRow, Refusal } from './report.ts';
export { type RunImportOptions, runImport } from './run-import.ts';
export { type ReadSourceOptions, readSource } from './source/read-source.ts';
export {
  type Cell,
  type RefusalCode,
  type Source,
  type SourceFormat,
  type SourceGeometry,
  SourceRefusedError,
  type SourceRow,
} from './source/source.ts';
export { type UnderstandContext, type Understood, understand } from './understand.ts';
export { importUnits, unitsOf } from './values/units.ts';
