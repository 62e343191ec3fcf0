import {
  checkPlan,
  chooseSupply,
  mostWater,
  type Plan,
  readPlan,
  writePlan,
} from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { recordSchemas } from '../model/index.ts';
import { departmentCoefficients } from './department-coefficients.ts';
import { type BuildingPlanRequest, planForBuilding } from './plan-for-building.ts';
import { situationForBuilding } from './situation-for-building.ts';

const hydrantId = '01HV00000000000000000000H1';
const rigId = '01HV00000000000000000000R1';
const place = { longitude: -30, latitude: 0 };
const hydrant = recordSchemas.hydrants.parse({
  name: 'H-7',
  ...place,
  elevationFt: 120,
  steamerIn: 4.5,
  steamerLoss: { lossPsi: 7, atGpm: 1000 },
});
// Worked example of the flow-test slides: 29.84 · 0.9 · 2.5² · √16 = 671 gpm (Water-supply analysis).
const test = recordSchemas['flow-tests'].parse({
  hydrantId,
  testedOn: '2026-05-04',
  staticPsi: 60,
  residualPsi: 45,
  flowing: [{ hydrant: 'H-8', outletIn: 2.5, coefficient: 0.9, pitotPsi: 16 }],
});
const engine = (name: string, lengthFt: number, given = {}) =>
  recordSchemas.rigs.parse({
    name,
    ratedGpm: 1500,
    hose: [{ size: '5', lengthFt, where: 'supply bed' }],
    ...given,
  });
const request: BuildingPlanRequest = {
  building: {
    name: 'Cooperage',
    longitude: -30,
    latitude: 0.002,
    elevationFt: 150,
    neededGpm: 1200,
  },
  hydrant,
  test,
  attack: { rig: engine('Engine 1', 1000) },
  route: {
    lengthFt: 812.4,
    path: [
      [-30, 0.002],
      [-30, 0],
    ],
  },
};
const codes = (given: BuildingPlanRequest) =>
  planForBuilding(given).notices.map(({ code }) => code);

describe('a plan from records', () => {
  it('is a forward lay with what is on record', () => {
    const { plan, riseFt, streetFt, hose: laid } = planForBuilding(request);
    expect(streetFt).toBe(812);
    expect(laid).toMatchObject({ laidFt: 900, sections: { count: 9, sectionFt: 100 } });
    expect(checkPlan(plan!)).toEqual([]);
    expect(riseFt).toBe(30);
    expect(plan).toMatchObject({ scene: 'A1', demandGpm: 1200, invented: false });
    expect(plan!.hydrants[0]).toMatchObject({
      name: 'H-7',
      elevationFt: 120,
      staticPsi: 60,
      residualPsi: 45,
      steamerLoss: { lossPsi: 7, atGpm: 1000 },
      testedOn: '2026-05-04',
    });
    expect(plan!.hydrants[0]!.testGpm).toBe(671);
    expect(plan!.lines.find(({ id }) => id === 'lay')).toMatchObject({ hose: '5', lengthFt: 900 });
    expect(plan!.rigs).toHaveLength(1);
    expect(plan!.rigs[0]).toMatchObject({ name: 'Engine 1', elevationFt: 150 });
  });

  it('lays as much hose over a street as ways to supply do, and loses as much in it', () => {
    const layOf = ({ lines }: Plan) => lines.find(({ from }) => from === 'H1.steamer')!;
    // 5 in and larger in sections of 100 ft, 3 in in sections of 50 (common practice, no source).
    const cases: [size: string, aboardFt: number, streetFt: number, laidFt: number][] = [
      ['5', 1000, 812.4, 900],
      ['5', 1000, 900, 900],
      ['5', 850, 812.4, 850],
      ['3', 1000, 812.4, 850],
    ];
    for (const [size, aboardFt, streetFt, laidFt] of cases) {
      const rig = engine('Engine 1', 0, { hose: [{ size, lengthFt: aboardFt }] });
      const route = { ...request.route, lengthFt: streetFt, path: request.route.path! };
      const { plan } = planForBuilding({ ...request, attack: { rig }, route });
      const { situation } = situationForBuilding({
        building: recordSchemas.buildings.parse(request.building),
        hydrants: [{ record: { ...hydrant, id: hydrantId }, test, route }],
        waters: [],
        rigs: [{ rig: { ...rig, id: rigId }, arrivesMin: 4 }],
      });
      const way = chooseSupply(situation!).ways.find(({ kind }) => kind === 'direct lay')!;
      expect(layOf(plan!).lengthFt, `${size} in over ${streetFt} ft`).toBe(laidFt);
      expect(layOf(way.plan!).lengthFt).toBe(laidFt);
      const [alone, chosen] = [plan!, way.plan!].map((one) => {
        const at500 = mostWater({ ...one, demandGpm: 500 }).state.lines;
        const line = at500.find(({ id }) => id === layOf(one).id)!;
        return line.frictionPsi / line.flowGpm ** 2;
      });
      expect(alone).toBeCloseTo(chosen!, 9);
    }
  });

  it('lays whole sections of two rigs, and of what is missing', () => {
    const over = (streetFt: number, first: number, second: number) =>
      planForBuilding({
        ...request,
        attack: { rig: engine('Engine 1', first) },
        booster: { rig: engine('Engine 2', second) },
        route: { ...request.route, lengthFt: streetFt },
      }).hose;
    // 450 ft of the first, then 4 whole sections of the second.
    expect(over(812, 450, 600)).toMatchObject({ laidFt: 850, shortFt: 0 });
    expect(over(812, 450, 600)).not.toHaveProperty('sections');
    // 700 ft are there; what the street still takes is counted as 2 sections.
    expect(over(812, 300, 400)).toMatchObject({ laidFt: 900, shortFt: 112 });
  });

  it('can be written, read back and asked', () => {
    const { plan } = planForBuilding(request);
    const read = readPlan(writePlan(plan!));
    expect(read).toMatchObject({ ok: true, plan });
    expect(mostWater(plan!).flowGpm).toBeGreaterThan(0);
  });

  it('gives more with a booster, hooked through the valve where a rig carries one', () => {
    const booster = { rig: engine('Engine 2', 600, { assistValve: true }) };
    const { plan } = planForBuilding({ ...request, booster });
    expect(checkPlan(plan!)).toEqual([]);
    expect(plan!.appliances[0]).toMatchObject({ kind: 'assist-valve', elevationFt: 120 });
    expect(plan!.rigs.map(({ name, elevationFt }) => [name, elevationFt])).toEqual([
      ['Engine 2', 120],
      ['Engine 1', 150],
    ]);
    const alone = mostWater(planForBuilding(request).plan!).flowGpm;
    expect(mostWater(plan!).flowGpm).toBeGreaterThan(alone);
  });

  it("takes the rig's own pump test", () => {
    const pumpTests = [
      recordSchemas['pump-tests'].parse({
        rigId,
        testedOn: '2026-03-01',
        points: [
          { flowGpm: 750, netPsi: 255 },
          { flowGpm: 1050, netPsi: 204 },
          { flowGpm: 1500, netPsi: 152 },
        ],
      }),
    ];
    const { plan } = planForBuilding({ ...request, attack: { ...request.attack, pumpTests } });
    const { capability } = plan!.rigs[0]!;
    expect(capability).toContainEqual([1500, 152]);
    expect(capability![0]![0]).toBe(0);
  });

  it('follows the ground, from the hydrant whichever way the route was drawn', () => {
    const elevationAt = (_: number, latitude: number) =>
      120 + 15_000 * latitude + (latitude > 0.0004 && latitude < 0.0006 ? -25 : 0);
    const there = planForBuilding({ ...request, elevationAt }).plan!;
    const back = planForBuilding({
      ...request,
      elevationAt,
      route: { ...request.route, path: [...request.route.path!].reverse() },
    }).plan!;
    const lay = there.lines.find(({ id }) => id === 'lay')!;
    expect(lay.terrain!.length).toBeGreaterThan(1);
    // The dip is a quarter of the way from the hydrant.
    const lowest = lay.terrain!.reduce((a, b) => (a.elevationFt <= b.elevationFt ? a : b));
    expect(lowest.alongFt / lay.lengthFt).toBeGreaterThan(0.15);
    expect(lowest.alongFt / lay.lengthFt).toBeLessThan(0.35);
    expect(back).toEqual(there);
  });

  it('begins at a side outlet where there is no large one', () => {
    const { plan, notices } = planForBuilding({
      ...request,
      hydrant: { ...hydrant, steamerIn: undefined },
      booster: { rig: engine('Engine 2', 600, { assistValve: true }) },
    });
    expect(checkPlan(plan!)).toEqual([]);
    expect(plan!.lines.some(({ from }) => from === 'H1.side1')).toBe(true);
    expect(notices.map(({ code }) => code)).toContain('no-steamer');
  });

  it('is none from a hydrant without outlets, and says so', () => {
    const { plan, notices } = planForBuilding({
      ...request,
      hydrant: { ...hydrant, steamerIn: undefined, sideOutlets: 0 },
    });
    expect(plan).toBeUndefined();
    expect(notices.at(-1)).toMatchObject({ level: 'error', code: 'no-outlet' });
  });

  it('can be written whatever its names are', () => {
    const name = 'x'.repeat(120);
    const { plan } = planForBuilding({
      ...request,
      building: { ...request.building, name },
      hydrant: { ...hydrant, name },
      attack: { rig: { ...request.attack.rig, name } },
    });
    expect(readPlan(writePlan(plan!)).ok).toBe(true);
  });

  it('leaves the assist valve off where no engine pumps at the hydrant, as ways to supply do', () => {
    const withValve = { rig: engine('Engine 3', 1000, { assistValve: true }) };
    const alone = planForBuilding({ ...request, attack: withValve });
    expect(alone.plan!.appliances.filter(({ kind }) => kind === 'assist-valve')).toEqual([]);
    expect(alone.notices.map(({ code }) => code)).toContain('valve-left-off');
    const plain = planForBuilding({ ...request, attack: { rig: engine('Engine 3', 1000) } });
    expect(alone.plan).toEqual(plain.plan);
    const boosted = planForBuilding({
      ...request,
      attack: withValve,
      booster: { rig: engine('Engine 2', 600) },
    });
    expect(boosted.plan!.appliances[0]?.name).toBe('Assist valve of Engine 3');
    expect(boosted.notices.map(({ code }) => code)).toContain('on-valve');
  });

  it('lays no more of a size than the lengths in service', () => {
    const id = '01ARZ3NDEKTSV4RRFFQ69G5FAV';
    const lengths = Array.from({ length: 10 }, (_, at) =>
      recordSchemas.hose.parse({
        name: `L-${at}`,
        size: '5',
        lengthFt: 100,
        rigId: id,
        ...(at < 9 && { retiredOn: '2026-04-01' }),
      }),
    );
    const attack = { rig: { ...engine('Engine 3', 1000), id }, lengths };
    const { hose, notices } = planForBuilding({ ...request, attack });
    expect(hose).toMatchObject({ carriedFt: 100, shortFt: 712 });
    expect(notices.map(({ code }) => code)).toContain('hose-not-in-service');
  });

  it('says what it had to assume', () => {
    expect(codes(request)).toEqual(['outlets-assumed', 'no-pump-test', 'ports-assumed']);
    const bare = engine('Engine 9', 300, { ratedGpm: undefined });
    expect(
      codes({
        ...request,
        attack: { rig: bare },
        hydrant: { ...hydrant, elevationFt: undefined, status: 'out of service' },
        building: { ...request.building, neededGpm: undefined },
      }),
    ).toEqual([
      'hose-too-short',
      'no-heights',
      'out-of-service',
      'outlets-assumed',
      'no-rating',
      'no-pump-test',
      'ports-assumed',
      'no-needed-flow',
    ]);
    const elevationAt = (_: number, latitude: number) => (latitude > 0 ? undefined : 90);
    expect(
      codes({ ...request, hydrant: { ...hydrant, elevationFt: undefined }, elevationAt }),
    ).toContain('mixed-heights');
  });

  it('is none without a usable flow test, and says so', () => {
    const none = planForBuilding({ ...request, test: undefined });
    expect(none.plan).toBeUndefined();
    expect(none.notices.at(-1)).toMatchObject({ level: 'error', code: 'no-flow-test' });
    const still = planForBuilding({ ...request, test: { ...test, residualPsi: 60 } });
    expect(still.plan).toBeUndefined();
    expect(still.notices.at(-1)).toMatchObject({ level: 'error', code: 'test-not-usable' });
  });
});

describe("a department's own coefficients", () => {
  const hoseTest = (testedOn: string, lossPsi: number, adopted: boolean) =>
    recordSchemas['hose-tests'].parse({
      size: '5',
      testedOn,
      adopted,
      points: [{ flowGpm: 1000, lossPsi, lengthFt: 1000 }],
    });

  it('are the newest that were adopted', () => {
    // C = loss / ((1000/100)² · (1000/100)) by the coefficient law.
    const tests = [
      hoseTest('2026-01-01', 60, true),
      hoseTest('2025-01-01', 90, true),
      hoseTest('2026-06-01', 70, false),
    ];
    expect(departmentCoefficients(tests)['5']).toMatchObject({
      origin: { kind: 'measured', date: '2026-01-01' },
    });
    expect(departmentCoefficients(tests)['5']!.coefficient).toBeCloseTo(0.06, 9);
  });

  it('leave out a test that makes no sense', () => {
    expect(departmentCoefficients([hoseTest('2026-01-01', 480, true)])).toEqual({});
  });

  it('says what makes the hydrant’s test a weak ground, and when it was', () => {
    const weak = { ...test, testedOn: '2015-01-01', staticPsi: 78, residualPsi: 74 };
    const { plan, notices } = planForBuilding({ ...request, test: weak, today: '2026-11-30' });
    expect(plan).toBeDefined();
    const told = notices.filter(({ code }) => ['small-drop', 'old-test'].includes(code));
    // (78 − 74) / 78 is 5.1 %; NFPA 291 has hydrants tested every 5 years (4.15.1 as quoted by QRFS).
    expect(told.map(({ text }) => text)).toEqual([
      expect.stringMatching(/^H-7, test of 2015-01-01: .*only 5\.1 %/),
      expect.stringMatching(/^H-7, test of 2015-01-01: .*due again since 2020-01-01/),
    ]);
    expect(codes({ ...request, today: '2026-11-30' })).not.toContain('small-drop');
  });
});
