/** Fields that several kinds have. */
import { type FieldSpec, longText, parts, quantity, text } from './field.ts';

export const nameField = text('name', 'Name', 'As the department says it: H-114, Engine 7');

export const placeFields: readonly FieldSpec[] = [
  {
    field: 'latitude',
    label: 'Latitude',
    type: { is: 'degrees', positive: 'N', negative: 'S' },
    help: 'Degrees, WGS 84; south is negative',
  },
  {
    field: 'longitude',
    label: 'Longitude',
    type: { is: 'degrees', positive: 'E', negative: 'W' },
    help: 'Degrees, WGS 84; west is negative',
  },
];

export const elevationField = quantity('length')(
  'elevationFt',
  'Elevation',
  'Above the datum of the department’s survey',
);

export const lossField = (field: string, label: string, help: string): FieldSpec =>
  parts(quantity('pressure')('lossPsi', 'Loss'), quantity('flow')('atGpm', 'At a flow of'))(
    field,
    label,
    help,
  );

/** Last on every record. */
export const closingFields: readonly FieldSpec[] = [
  longText(3)('note', 'Note'),
  text('externalSource', 'List it came from', 'Kept so that importing the list again finds it'),
  text('externalId', 'Key in that list'),
];
