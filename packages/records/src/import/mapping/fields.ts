import {
  buildingFields,
  stationFields,
  streetFields,
  waterSourceFields,
} from './district-fields.ts';
import type { FieldSpec } from './field-spec.ts';
import { flowTestFields } from './flow-test-fields.ts';
import { hydrantFields } from './hydrant-fields.ts';
import type { ImportKind } from './mapping.ts';
import { rigFields } from './rig-fields.ts';

/** Fields that a list of each kind can fill; the place is apart. */
export const fieldsByKind: Readonly<Record<ImportKind, readonly FieldSpec[]>> = {
  stations: stationFields,
  hydrants: hydrantFields,
  'water-sources': waterSourceFields,
  'flow-tests': flowTestFields,
  rigs: rigFields,
  streets: streetFields,
  buildings: buildingFields,
};

/** Where each value comes from, as our own export writes it: any kind may have it. */
export const originsField: FieldSpec = {
  field: 'origins',
  label: 'Origins',
  type: { is: 'json' },
  names: [],
};

export const hasPlace = (kind: ImportKind): boolean => kind !== 'flow-tests' && kind !== 'rigs';

export function fieldSpec(kind: ImportKind, field: string): FieldSpec | undefined {
  return [...fieldsByKind[kind], originsField].find((one) => one.field === field);
}
