/** Stations, rigs, and what rigs carry. */
import {
  choice,
  count,
  date,
  type FieldSpec,
  hoseSize,
  numbers,
  quantity,
  record,
  rows,
  text,
  yesNo,
} from './field.ts';
import {
  closingFields,
  elevationField,
  lossField,
  nameField,
  placeFields,
} from './shared-fields.ts';

const pressure = quantity('pressure');
const flow = quantity('flow');
const length = quantity('length');

export const stationFields: readonly FieldSpec[] = [
  nameField,
  ...placeFields,
  elevationField,
  ...closingFields,
];

export const rigFields: readonly FieldSpec[] = [
  nameField,
  choice()('kind', 'Kind'),
  record('stations')('stationId', 'Station'),
  yesNo('inService', 'In service'),
  flow('ratedGpm', 'Rated capacity', 'As on its plate, at the rated net pressure'),
  quantity('volume')('tankGal', 'Tank'),
  count('intakes', 'Intakes'),
  count('discharges', 'Discharges'),
  pressure('intakeReliefPsi', 'Intake relief', 'What its intake relief valve is set to'),
  yesNo('assistValve', 'Carries a hydrant assist valve'),
  rows(
    'load',
    hoseSize('size', 'Size'),
    length('lengthFt', 'Length'),
    text('where', 'Where'),
  )('hose', 'Hose carried', 'By bed: supply bed, crosslay, rack'),
  ...closingFields,
];

export const hoseFields: readonly FieldSpec[] = [
  { ...nameField, help: 'Its own marking' },
  hoseSize('size', 'Size'),
  length('lengthFt', 'Length'),
  record('rigs')('rigId', 'Carried on'),
  pressure('limitPsi', 'Marked limit', 'Service test or operating pressure on its marking'),
  date('inServiceOn', 'In service since'),
  date('retiredOn', 'Retired on'),
  rows(
    'test',
    date('testedOn', 'Tested on'),
    pressure('psi', 'Held at'),
    yesNo('passed', 'Passed'),
  )('serviceTests', 'Service tests'),
  ...closingFields,
];

export const nozzleFields: readonly FieldSpec[] = [
  nameField,
  choice({
    'smooth-bore': 'smooth bore',
    fog: 'fog, fixed',
    selectable: 'fog, selectable gallonage',
    automatic: 'fog, automatic',
  })('kind', 'Kind'),
  choice()('use', 'Use'),
  pressure('ratedPsi', 'Rated pressure'),
  quantity('diameter')('tipIn', 'Tip', 'For a smooth bore'),
  flow('ratedGpm', 'Rated flow', 'For fixed fog'),
  flow('leastGpm', 'Least flow', 'For an automatic'),
  flow('greatestGpm', 'Greatest flow', 'For an automatic'),
  numbers('flow')('settingsGpm', 'Settings', 'Flows it can be set to, with commas between'),
  ...closingFields,
];

export const applianceFields: readonly FieldSpec[] = [
  nameField,
  choice({ 'assist-valve': 'hydrant assist valve' })('kind', 'Kind'),
  lossField('loss', 'Loss', 'Through the body; hydrant to supply for an assist valve'),
  lossField('suctionLoss', 'Loss to pump suction', 'Assist valve: hydrant to the booster'),
  lossField('dischargeLoss', 'Loss from pump discharge', 'Assist valve: booster to supply'),
  ...closingFields,
];
