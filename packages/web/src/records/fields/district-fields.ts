/** Buildings, streets, plans and settings. */
import {
  count,
  type FieldSpec,
  json,
  longText,
  path,
  quantity,
  record,
  records,
  rings,
  text,
  yesNo,
} from './field.ts';
import { closingFields, elevationField, nameField, placeFields } from './shared-fields.ts';

export const buildingFields: readonly FieldSpec[] = [
  { ...nameField, help: 'What crews call it' },
  text('address', 'Address'),
  quantity('flow')('neededGpm', 'Needed fire flow'),
  text('occupancy', 'Use', 'Dwelling, school, warehouse'),
  text('construction', 'Built'),
  count('storeys', 'Storeys'),
  quantity('area')('areaFt2', 'Ground floor'),
  count('exposures', 'Exposures', 'Buildings near enough to catch fire from it'),
  yesNo('sprinklered', 'Sprinklers'),
  yesNo('standpipe', 'Standpipe'),
  ...placeFields,
  elevationField,
  rings(
    'footprint',
    'Outline',
    'One corner a line: longitude, latitude; an empty line before each courtyard',
  ),
  ...closingFields,
];

export const streetFields: readonly FieldSpec[] = [
  { ...nameField, help: 'Leave empty where it has none' },
  text('class', 'Class', 'As its list has it: residential, track'),
  yesNo('footOnly', 'On foot only', 'A rig cannot drive it; hose may still be laid by hand'),
  path('path', 'Course', 'One place a line: longitude, latitude'),
  ...closingFields,
];

export const planFields: readonly FieldSpec[] = [
  { ...nameField, help: 'What the plan is for' },
  record('buildings')('buildingId', 'Building'),
  records('hydrants')('hydrantIds', 'Hydrants'),
  records('rigs')('rigIds', 'Rigs'),
  longText(14)('text', 'Plan file', 'The plan in writing (YAML); the Lay opens and draws it'),
  path('path', 'Lay on the map', 'One place a line: longitude, latitude'),
  ...closingFields,
];

export const settingFields: readonly FieldSpec[] = [
  { ...nameField, help: 'Programs look it up by this name' },
  json('value', 'Value', 'Text in quotes, a number, true or false, or a list or object (JSON)'),
  ...closingFields,
];
