import { describe, expect, it } from 'vitest';
import { recordSchemas } from '../model/index.ts';
import { arrivalMin, travelMin, turnoutMin } from './arrivals.ts';
import { heightsFrom } from './heights.ts';
import { type SituationRequest, situationForBuilding } from './situation-for-building.ts';

const hydrantId = '01HV00000000000000000000H1';
const building = recordSchemas.buildings.parse({
  name: 'Cooperage',
  longitude: -30,
  latitude: 0.002,
  elevationFt: 150,
  neededGpm: 1200,
});
const hydrant = (name: string, given = {}) => ({
  ...recordSchemas.hydrants.parse({
    name,
    longitude: -30,
    latitude: 0,
    elevationFt: 120,
    steamerIn: 4.5,
    ...given,
  }),
  id: hydrantId,
});
// Worked example of the flow-test slides: 29.84 · 0.9 · 2.5² · √16 = 671 gpm (Water-supply analysis).
const test = recordSchemas['flow-tests'].parse({
  hydrantId,
  testedOn: '2026-05-04',
  staticPsi: 60,
  residualPsi: 45,
  flowing: [{ hydrant: 'H-8', outletIn: 2.5, coefficient: 0.9, pitotPsi: 16 }],
});
const path = [
  [-30, 0.002],
  [-30, 0],
] as const;
const rig = (name: string, arrivesMin: number, given = {}) => ({
  rig: {
    ...recordSchemas.rigs.parse({
      name,
      ratedGpm: 1500,
      hose: [
        { size: '5', lengthFt: 1000, where: 'supply bed' },
        { size: '1-3/4', lengthFt: 400, where: 'crosslays' },
        { size: '2-1/2', lengthFt: 250, where: 'preconnect' },
      ],
      ...given,
    }),
    id: '01HV00000000000000000000R1',
  },
  arrivesMin,
});
const request: SituationRequest = {
  building,
  hydrants: [{ record: hydrant('H-7'), test, route: { lengthFt: 812.4, path } }],
  waters: [
    {
      record: {
        ...recordSchemas['water-sources'].parse({
          name: 'Mill pond',
          kind: 'pond',
          longitude: -30,
          latitude: 0.004,
          elevationFt: 131,
          usableGal: 90_000,
        }),
        id: '01HV00000000000000000000W1',
      },
      route: { lengthFt: 700, path: [...path].reverse() },
    },
  ],
  rigs: [rig('Engine 1', 4), rig('Tender 2', 9, { kind: 'tender', tankGal: 3000 })],
};

describe('the situation at a building', () => {
  it('is what the records hold, under short ids', () => {
    const { situation, recordIds, notices } = situationForBuilding(request);
    expect(notices.map(({ code }) => code)).toEqual(['no-pump-test', 'no-pump-test']);
    expect(situation).toMatchObject({
      title: 'Cooperage',
      demandGpm: 1200,
      invented: false,
      scene: { elevationFt: 150 },
    });
    expect(situation!.hydrants[0]).toMatchObject({
      hydrant: { id: 'H1', name: 'H-7', elevationFt: 120, staticPsi: 60, testGpm: 671 },
      steamer: true,
      lengthFt: 812,
    });
    expect(situation!.waters[0]).toMatchObject({
      draft: { id: 'W1', waterElevationFt: 131 },
      liftFt: 10,
      usableGal: 90_000,
    });
    expect(recordIds.H1).toBe(hydrantId);
  });

  it('counts hose in supply beds only', () => {
    const { situation } = situationForBuilding(request);
    expect(situation!.rigs[0]!.hose).toEqual([{ hose: '5', lengthFt: 1000 }]);
  });

  it('takes the lift from the bank where the ground is known', () => {
    const elevationAt = (_: number, latitude: number) => 150 - 1000 * (latitude - 0.002) - 4;
    // Ground at the pond 2 ft below the scene's: 148 on the records' zero, 17 above the water.
    const { situation } = situationForBuilding({ ...request, elevationAt });
    expect(situation!.waters[0]!.liftFt).toBe(17);
  });

  it('keeps a hydrant out of service, marked, and never fills tenders from it', () => {
    const record = hydrant('H-7', { status: 'out of service', statusReason: 'broken stem' });
    const { situation } = situationForBuilding({
      ...request,
      hydrants: [{ ...request.hydrants[0]!, record }],
    });
    expect(situation!.hydrants[0]!.outOfService).toBe('broken stem');
    expect(situation!.fillPlaces).toEqual([]);
  });

  it('leaves what is past hose to the tenders', () => {
    const far = { ...request.hydrants[0]!, route: { lengthFt: 7920, path } };
    const { situation } = situationForBuilding({ ...request, hydrants: [far] });
    expect(situation!.hydrants).toEqual([]);
    // 7,920 ft are a mile and a half.
    expect(situation!.fillPlaces).toMatchObject([{ id: 'H1', roadMi: 1.5 }]);
  });

  it('is none without demand or engine, and says so', () => {
    const bare = { ...building, neededGpm: undefined };
    const none = situationForBuilding({ ...request, building: bare, rigs: request.rigs.slice(1) });
    expect(none.situation).toBeUndefined();
    expect(none.notices.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['no-demand', 'no-rigs']),
    );
    expect(situationForBuilding({ ...request, building: bare, demandGpm: 900 }).situation).toEqual(
      expect.objectContaining({ demandGpm: 900 }),
    );
  });
});

describe('heights on one zero', () => {
  const scene = { longitude: 0, latitude: 1 };
  const other = { longitude: 0, latitude: 2 };
  it('takes the records where both have one', () => {
    const given = heightsFrom(
      { ...scene, elevationFt: 100 },
      [{ ...other, elevationFt: 80 }],
      () => 7,
    );
    expect(given).toEqual({ sceneFt: 100, othersFt: [80], known: [true] });
  });
  it('puts the model’s difference on the scene’s zero where one lacks a record', () => {
    const model = (_: number, latitude: number) => 500 + 10 * latitude;
    const given = heightsFrom({ ...scene, elevationFt: 100 }, [other], model);
    expect(given).toEqual({ sceneFt: 100, othersFt: [110], known: [true] });
  });
  it('is level where nothing tells', () => {
    expect(heightsFrom(scene, [{ ...other, elevationFt: 80 }])).toEqual({
      sceneFt: 0,
      othersFt: [0],
      known: [false],
    });
  });
});

describe('arrival', () => {
  // "Water Shuttle Operations", Firehouse: 3 miles take 0.65 + 1.7 · 3 = 5.75 min.
  it('follows the published travel time', () => {
    expect(travelMin(3 * 5280)).toBeCloseTo(5.75, 10);
  });
  it('adds the turnout', () => {
    expect(arrivalMin(0)).toBeCloseTo(0.65 + turnoutMin, 10);
    expect(() => arrivalMin(-1)).toThrow(/roadFt is -1/);
  });
});
