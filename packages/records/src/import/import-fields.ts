/** What a list's columns can be taken for, and in which units: plain data, so that a browser can show it. */

export { unitInName } from './mapping/column-name.ts';
export type { FieldSpec, FieldType } from './mapping/field-spec.ts';
export { fieldSpec, fieldsByKind, hasPlace } from './mapping/fields.ts';
export { refusedColumns } from './mapping/known-columns.ts';
export {
  type FieldMapping,
  type ImportKind,
  importKinds,
  type Mapping,
  type PlaceMapping,
} from './mapping/mapping.ts';
export { missingFieldNotice, requiredFields } from './mapping/required-fields.ts';
export { crsRemedy, noPlaceNotice, projectionNotice } from './place/place-notices.ts';
export type { ImportReport, KeptValue, NotedRow, Refusal } from './report.ts';
export type { RefusalCode } from './source/source.ts';
export { type Measure, unitsOf } from './values/units.ts';
