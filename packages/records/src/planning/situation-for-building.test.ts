import { chooseSupply } from '@plugside/fireground';
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
    expect(notices.map(({ code }) => code)).toEqual([
      'no-pump-test',
      'ports-assumed',
      'no-pump-test',
      'ports-assumed',
    ]);
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

  it('hands what is doubtful in a hydrant’s test to every way from it', () => {
    const near = request.hydrants[0]!;
    const weak = { ...near.test!, testedOn: '2015-01-01', staticPsi: 78, residualPsi: 74 };
    const { situation } = situationForBuilding({
      ...request,
      hydrants: [{ ...near, test: weak }],
      today: '2026-11-30',
    });
    const [way] = chooseSupply(situation!).ways.filter(({ sources }) => sources.includes('H1'));
    expect(way!.notices.map(({ text }) => text)).toEqual(
      expect.arrayContaining([expect.stringContaining('only 5.1 %')]),
    );
  });

  it('counts hose in supply beds only', () => {
    const { situation } = situationForBuilding(request);
    expect(situation!.rigs[0]!.hose).toEqual([{ hose: '5', lengthFt: 1000 }]);
  });

  it('takes the lift from the bank where the ground is known', () => {
    const elevationAt = (_: number, latitude: number) => 150 - 1000 * (latitude - 0.002) - 4;
    // Ground at the pond 2 ft below the scene's: 148 on the records' zero, 17 above the water.
    const { situation } = situationForBuilding({ ...request, elevationAt });
    expect(situation!.waters[0]).toMatchObject({ liftFt: 17, liftOrigin: { kind: 'estimated' } });
  });

  it('takes the lift on record before its access notes and the bank, and says where it comes from', () => {
    const [water] = request.waters;
    const access = 'From the south bank, lift 12 ft';
    const record = { ...water!.record, access, liftFt: 7.5 };
    const elevationAt = (_: number, latitude: number) => 150 - 1000 * (latitude - 0.002) - 4;
    const lifted = (given: typeof record) =>
      situationForBuilding({ ...request, waters: [{ ...water!, record: given }], elevationAt })
        .situation!;
    expect(lifted(record).waters[0]).toMatchObject({
      liftFt: 7.5,
      liftOrigin: { kind: 'department', text: 'On record' },
    });
    expect(lifted(record).fillPlaces.find(({ id }) => id === 'W1')).toMatchObject({ liftFt: 7.5 });
    const measured = { kind: 'measured' as const, text: 'Level, low water', date: '2026-08-30' };
    const liftFt = lifted({ ...record, origins: { liftFt: measured } }).waters[0]!.liftOrigin;
    expect(liftFt).toEqual({ ...measured, text: 'On record: Level, low water' });
    const listed = { kind: 'imported' as const, text: 'waters.csv' };
    expect(lifted({ ...record, origins: { liftFt: listed } }).waters[0]!.liftOrigin).toEqual({
      kind: 'department',
      text: 'On record: waters.csv',
    });
  });

  it('takes the lift from the access notes where the record has none, and hands them on', () => {
    const access = 'From the south bank, lift 12 ft; not in flood';
    const [water] = request.waters;
    const noted = { ...water!, record: { ...water!.record, access } };
    const elevationAt = (_: number, latitude: number) => 150 - 1000 * (latitude - 0.002) - 4;
    const { situation } = situationForBuilding({ ...request, waters: [noted], elevationAt });
    expect(situation!.waters[0]).toMatchObject({
      liftFt: 12,
      liftOrigin: { kind: 'department', text: 'Access notes on record: lift 12 ft' },
      access,
    });
    expect(situation!.fillPlaces.find(({ id }) => id === 'W1')).toMatchObject({
      liftFt: 12,
      access,
    });
  });

  it('keeps a hydrant out of service, marked, and never fills tenders from it', () => {
    const record = hydrant('H-7', { status: 'out of service', statusReason: 'broken stem' });
    const { situation } = situationForBuilding({
      ...request,
      hydrants: [{ ...request.hydrants[0]!, record }],
    });
    expect(situation!.hydrants[0]!.outOfService).toBe('broken stem');
    expect(situation!.fillPlaces.map(({ id }) => id)).not.toContain('H1');
  });

  it('leaves what is past hose to the tenders', () => {
    const far = { ...request.hydrants[0]!, route: { lengthFt: 7920, path } };
    const pond = { ...request.waters[0]!, route: { lengthFt: 10_560, path } };
    const { situation } = situationForBuilding({ ...request, hydrants: [far], waters: [pond] });
    expect([situation!.hydrants, situation!.waters]).toEqual([[], []]);
    // 7,920 ft are a mile and a half, 10,560 ft two miles; an engine drafts at the pond.
    expect(situation!.fillPlaces).toMatchObject([
      { id: 'H1', roadMi: 1.5 },
      { id: 'W1', roadMi: 2, kind: 'open water' },
    ]);
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

describe('hydrants that share a main', () => {
  const other = '01HV00000000000000000000H2';
  const gauged = '01HV00000000000000000000H3';
  const together = recordSchemas['flow-tests'].parse({
    ...test,
    hydrantId: gauged,
    testedOn: '2025-04-02',
    residualPsi: 40,
    flowing: ['H-7', 'H-8'].map((name) => ({
      hydrant: name,
      outletIn: 2.5,
      coefficient: 0.9,
      pitotPsi: 16,
    })),
  });
  const near = (name: string, id: string, given = {}) => ({
    record: { ...hydrant(name, given), id },
    test,
    route: { lengthFt: 900, path },
  });
  const ask = (tests: (typeof test)[]) =>
    situationForBuilding({
      ...request,
      hydrants: [
        near('H-7', hydrantId, { main: 'Mill Lane' }),
        near('H-8', other),
        { ...near('H-9', gauged, { elevationFt: 131 }), tests },
      ],
    }).situation!;

  it('carry the main that their records name', () => {
    expect(ask([]).hydrants.map(({ hydrant: { main } }) => main)).toEqual([
      'Mill Lane',
      undefined,
      undefined,
    ]);
    expect(ask([])).not.toHaveProperty('groupTests');
  });

  it('and the tests in which two of them flowed: by hand twice 29.84 · 0.9 · 2.5² · √16', () => {
    expect(ask([together, test]).groupTests).toEqual([
      {
        hydrants: ['H1', 'H2'],
        elevationFt: 131,
        staticPsi: 60,
        residualPsi: 40,
        testGpm: Math.round(2 * 29.84 * 0.9 * 6.25 * 4),
        testedOn: '2025-04-02',
      },
    ]);
  });

  it('an outlet without a name is of the hydrant gauged; one hydrant flowing is no test of several', () => {
    const own = { ...together, flowing: [{ ...together.flowing[0]!, hydrant: undefined }] };
    expect(ask([own])).not.toHaveProperty('groupTests');
    const both = { ...together, flowing: [together.flowing[0]!, own.flowing[0]!] };
    expect(ask([both]).groupTests?.[0]?.hydrants).toEqual(['H1', 'H3']);
  });
});
