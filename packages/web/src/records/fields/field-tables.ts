/** The fields of every kind, in the order in which they are shown and written. */
import type { Kind } from '@plugside/records/model';
import { buildingFields, planFields, settingFields, streetFields } from './district-fields.ts';
import type { FieldSpec } from './field.ts';
import {
  applianceFields,
  hoseFields,
  nozzleFields,
  rigFields,
  stationFields,
} from './fleet-fields.ts';
import {
  flowTestFields,
  hoseTestFields,
  hydrantFields,
  pumpTestFields,
  waterSourceFields,
} from './water-fields.ts';

export const fieldTables: Readonly<Record<Kind, readonly FieldSpec[]>> = {
  hydrants: hydrantFields,
  'flow-tests': flowTestFields,
  'water-sources': waterSourceFields,
  rigs: rigFields,
  'pump-tests': pumpTestFields,
  hose: hoseFields,
  'hose-tests': hoseTestFields,
  nozzles: nozzleFields,
  appliances: applianceFields,
  buildings: buildingFields,
  streets: streetFields,
  stations: stationFields,
  plans: planFields,
  settings: settingFields,
};

/** Kinds in the order shown: water first, then what moves it, then where it goes. */
export const shownKinds = Object.keys(fieldTables) as readonly Kind[];

/** A field's label; its bare name where no table has it. */
export function fieldLabel(kind: Kind, field: string): string {
  return fieldTables[kind].find((one) => one.field === field)?.label ?? field;
}
