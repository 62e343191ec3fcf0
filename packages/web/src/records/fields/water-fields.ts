/** Hydrants, their tests, and static water. */
import {
  bare,
  choice,
  count,
  date,
  type FieldSpec,
  quantity,
  record,
  rows,
  text,
} from './field.ts';
import {
  closingFields,
  elevationField,
  lossField,
  nameField,
  placeFields,
} from './shared-fields.ts';

const diameter = quantity('diameter');
const pressure = quantity('pressure');
const flow = quantity('flow');

export const hydrantFields: readonly FieldSpec[] = [
  nameField,
  choice()('status', 'Status'),
  text('statusReason', 'Why out of service'),
  text('type', 'Type', 'Dry barrel, wet barrel, wall, underground'),
  diameter('mainIn', 'Main', 'Size of the main that feeds it'),
  text(
    'main',
    'Which main',
    'One name for hydrants that one feeder or dead end supplies: they draw on each other',
  ),
  text(
    'mainFedFrom',
    'Main is fed from',
    'The main it hangs on, or the tank, works or wells: mains fed from different things add up',
  ),
  diameter('steamerIn', 'Large outlet', 'Leave empty where it has none'),
  count('sideOutlets', 'Side outlets'),
  diameter('sideOutletIn', 'Size of side outlets'),
  lossField(
    'steamerLoss',
    'Loss to the large outlet',
    'From the main to the outlet, as measured; empty: common practice stands in',
  ),
  lossField(
    'sideLoss',
    'Loss to a side outlet',
    'With its gate valve; empty: common practice stands in',
  ),
  text('owner', 'Owner', 'Who maintains it'),
  ...placeFields,
  elevationField,
  { ...record('flow-tests')('planTestId', 'Test that plans use'), elsewhere: true },
  ...closingFields,
];

export const flowTestFields: readonly FieldSpec[] = [
  record('hydrants')('hydrantId', 'Hydrant gauged'),
  date('testedOn', 'Tested on'),
  pressure('staticPsi', 'Static'),
  pressure('residualPsi', 'Residual'),
  rows(
    'outlet',
    text('hydrant', 'Hydrant flowing'),
    diameter('outletIn', 'Outlet'),
    bare('coefficient', 'Outlet coefficient'),
    pressure('pitotPsi', 'Pitot'),
    flow('flowGpm', 'Flow by meter'),
  )('flowing', 'Flowing outlets'),
  flow('statedFlowGpm', 'Total as stated'),
  text('by', 'Tested by'),
  ...closingFields,
];

export const waterSourceFields: readonly FieldSpec[] = [
  nameField,
  choice()('kind', 'Kind'),
  quantity('volume')('usableGal', 'Usable water', 'What a strainer can reach in a dry summer'),
  quantity('length')('liftFt', 'Lift', 'From the water at its lowest to the pump’s intake'),
  text('access', 'Access', 'How near a rig gets, and in which season'),
  ...placeFields,
  { ...elevationField, label: 'Water’s surface', help: 'Elevation of the surface' },
  ...closingFields,
];

export const pumpTestFields: readonly FieldSpec[] = [
  record('rigs')('rigId', 'Rig'),
  date('testedOn', 'Tested on'),
  rows(
    'reading',
    flow('flowGpm', 'Flow'),
    pressure('netPsi', 'Net pressure'),
    count('speedRpm', 'Speed, rpm'),
  )('points', 'Readings'),
  text('by', 'Tested by'),
  ...closingFields,
];

export const hoseTestFields: readonly FieldSpec[] = [
  { field: 'size', label: 'Hose', type: { is: 'hose-size' } },
  date('testedOn', 'Tested on'),
  rows(
    'reading',
    flow('flowGpm', 'Flow'),
    pressure('lossPsi', 'Loss'),
    quantity('length')('lengthFt', 'Length'),
  )('points', 'Readings'),
  { field: 'adopted', label: 'Plans use its coefficient', type: { is: 'yes-no' } },
  text('by', 'Tested by'),
  ...closingFields,
];
