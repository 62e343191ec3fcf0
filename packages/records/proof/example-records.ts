/** One invented record of each kind with every field filled in, for tests of keeping and carrying records. */
import type { FieldsIn, Kind } from '@plugside/records/model';

/** Ids of what others refer to. */
export interface ExampleIds {
  station: string;
  hydrant: string;
  rig: string;
  building: string;
}

const origins = {
  name: { kind: 'imported', text: 'Invented list, row 4', date: '2026-03-01' },
  elevationFt: { kind: 'estimated', text: 'Read off a map — ±10 ft' },
} as const;
const key = { externalSource: 'Invented list', externalId: 'é-4/"a"' };
const shared = { note: 'First line\nsecond line, "quoted", 100 % — ½ in. 水', origins, ...key };
const place = { longitude: -84.10000000000001, latitude: 33.333333333333336, elevationFt: 0.1 };

/** In an order in which they can be written; ids come from `ids` as they become known. */
export const exampleRecords: { [K in Kind]: (ids: ExampleIds) => FieldsIn<K> } = {
  stations: () => ({ name: 'Station 7', ...place, ...shared }),
  hydrants: () => ({
    name: 'H-114',
    ...place,
    type: 'dry barrel',
    steamerIn: 4.5,
    sideOutlets: 0,
    sideOutletIn: 2.5,
    steamerLoss: { lossPsi: 2.2, atGpm: 1000 },
    sideLoss: { lossPsi: 0, atGpm: 250 },
    mainIn: 8,
    main: 'Mill Lane',
    mainFedFrom: 'Hill feeder',
    status: 'out of service',
    statusReason: 'Stem broken',
    owner: 'Town',
    ...shared,
  }),
  'water-sources': () => ({
    name: 'Mill pond',
    kind: 'pond',
    ...place,
    usableGal: 1e12,
    liftFt: 12.5,
    access: 'From the dam',
    ...shared,
  }),
  'flow-tests': ({ hydrant }) => ({
    hydrantId: hydrant,
    testedOn: '2024-02-29',
    staticPsi: 62.5,
    residualPsi: 41,
    flowing: [
      { hydrant: 'H-115', outletIn: 2.5, coefficient: 0.9, pitotPsi: 18 },
      { flowGpm: 0.30000000000000004 },
    ],
    statedFlowGpm: 1210,
    by: 'C shift',
    ...shared,
  }),
  rigs: ({ station }) => ({
    name: 'Engine 7',
    kind: 'aerial',
    ratedGpm: 1500,
    tankGal: 0,
    intakes: 0,
    discharges: 20,
    intakeReliefPsi: 150,
    assistValve: true,
    hose: [{ size: '5', lengthFt: 1000, where: 'supply bed' }],
    stationId: station,
    inService: false,
    ...shared,
  }),
  'pump-tests': ({ rig }) => ({
    rigId: rig,
    testedOn: '2026-05-06',
    points: [{ flowGpm: 1500, netPsi: 150, speedRpm: 1650.5 }],
    by: 'Shop',
    ...shared,
  }),
  hose: ({ rig }) => ({
    name: '5-031',
    size: '5',
    lengthFt: 100,
    inServiceOn: '2019-01-31',
    rigId: rig,
    limitPsi: 300,
    serviceTests: [{ testedOn: '2025-06-01', psi: 200, passed: false }],
    retiredOn: '2026-06-01',
    ...shared,
  }),
  'hose-tests': () => ({
    size: '1-3/4',
    testedOn: '2026-07-01',
    points: [{ flowGpm: 150, lossPsi: 35.1, lengthFt: 100 }],
    adopted: true,
    by: 'B shift',
    ...shared,
  }),
  nozzles: () => ({
    name: 'Crosslay 1',
    kind: 'selectable',
    use: 'master stream',
    ratedPsi: 100,
    tipIn: 0.9375,
    ratedGpm: 150,
    leastGpm: 95,
    greatestGpm: 200,
    settingsGpm: [95, 125, 150, 200],
    ...shared,
  }),
  appliances: () => ({
    name: 'Wye',
    kind: 'wye',
    loss: { lossPsi: 10, atGpm: 500 },
    suctionLoss: { lossPsi: 1, atGpm: 500 },
    dischargeLoss: { lossPsi: 2, atGpm: 500 },
    ...shared,
  }),
  streets: () => ({
    name: 'Quarry Lane',
    path: [
      [-84.1, 33.3],
      [-84.2, 33.4],
      [-84.15, 33.5],
    ],
    class: 'track',
    footOnly: true,
    ...shared,
  }),
  buildings: () => ({
    name: 'Cold store',
    address: '1 Quarry Lane',
    ...place,
    footprint: [
      [
        [-84.1, 33.3],
        [-84.1, 33.4],
        [-84.2, 33.4],
        [-84.1, 33.3],
      ],
    ],
    storeys: 2,
    areaFt2: 12345.678,
    construction: 'III',
    occupancy: 'storage',
    exposures: 0,
    sprinklered: false,
    standpipe: true,
    neededGpm: 2250,
    ...shared,
  }),
  plans: ({ building, hydrant, rig }) => ({
    name: 'Cold store, first alarm',
    text: 'plugside: 1\nname: |\n  two\n  lines\n',
    buildingId: building,
    hydrantIds: [hydrant],
    rigIds: [rig],
    path: [[-84.1, 33.3]],
    ...shared,
  }),
  settings: () => ({
    name: 'limits',
    value: { a: [1, null, true, 'x', { b: 0.1 }], nested: { none: null } },
    ...shared,
  }),
};
