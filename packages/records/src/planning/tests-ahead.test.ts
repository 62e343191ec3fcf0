import { describe, expect, it } from 'vitest';
import { recordSchemas } from '../model/index.ts';
import { hoseTestsAhead } from './department-coefficients.ts';
import { withHoseInService } from './hose-in-service.ts';
import type { PlanningNotice } from './notice.ts';
import { planForBuilding } from './plan-for-building.ts';
import { situationForBuilding } from './situation-for-building.ts';
import { testsAhead } from './tests-ahead.ts';

const today = '2027-03-01';
const id = '01ARZ3NDEKTSV4RRFFQ69G5FAV';
const place = { longitude: -123.4, latitude: -48.9, elevationFt: 0 };
const hydrant = { ...recordSchemas.hydrants.parse({ name: 'H-1', ...place, steamerIn: 4.5 }), id };
const building = recordSchemas.buildings.parse({ name: 'Hotel', ...place, neededGpm: 500 });
const flowTest = (testedOn: string) =>
  recordSchemas['flow-tests'].parse({
    hydrantId: id,
    testedOn,
    staticPsi: 62,
    residualPsi: 44,
    statedFlowGpm: 1060,
  });
const rig = {
  ...recordSchemas.rigs.parse({ name: 'Engine 1', hose: [{ size: '5', lengthFt: 1000 }] }),
  id,
};
const ahead = (notices: readonly PlanningNotice[]) =>
  notices.filter(({ code }) => code === 'dated-ahead').map(({ text }) => text);

describe('a test dated ahead of today', () => {
  it('is told once for its day; one of tomorrow, somewhere today, is not', () => {
    const days = ['2027-03-02', '2031-05-06', '2031-05-06'].map((testedOn) => ({ testedOn }));
    expect(testsAhead('The test', days, today).map(({ text }) => text)).toEqual([
      'The test dated 2031-05-06 is not used: it cannot have been made yet. Correct its date.',
    ]);
  });

  it('of a hydrant is told with the plan, which rests on an older one', () => {
    const [sound, wrong] = [flowTest('2026-05-06'), flowTest('2031-05-06')];
    const made = planForBuilding({
      building,
      hydrant,
      test: sound,
      tests: [sound, wrong],
      attack: { rig },
      route: { lengthFt: 500 },
      today,
    });
    expect(made.plan?.hydrants[0]).toMatchObject({ testedOn: '2026-05-06' });
    expect(ahead(made.notices).join()).toContain('The flow test of H-1 dated 2031-05-06');
  });

  it('is among the doubts of a way to supply a building, and names a hydrant that it leaves out', () => {
    const route = {
      lengthFt: 400,
      path: [
        [-123.4, -48.9],
        [-123.401, -48.9],
      ] as [number, number][],
    };
    const [sound, wrong] = [flowTest('2026-05-06'), flowTest('2031-05-06')];
    const asked = (test: typeof sound, tests: (typeof sound)[]) =>
      situationForBuilding({
        building,
        hydrants: [{ record: hydrant, test, tests, route }],
        waters: [],
        rigs: [{ rig, arrivesMin: 4 }],
        today,
      });
    const used = asked(sound, [sound, wrong]);
    expect(ahead(used.situation!.hydrants[0]!.doubts ?? []).join()).toContain('2031-05-06');
    const left = asked(wrong, [wrong]);
    expect(left.situation!.hydrants).toEqual([]);
    expect(ahead(left.notices).join()).toContain('The flow test of H-1 dated 2031-05-06');
  });

  it('of hose is told where it was adopted, and where it is a length’s service test', () => {
    const hoseTest = (adopted: boolean) =>
      recordSchemas['hose-tests'].parse({
        size: '5',
        testedOn: '2031-05-06',
        points: [{ flowGpm: 1000, lossPsi: 8, lengthFt: 100 }],
        adopted,
      });
    expect(ahead(hoseTestsAhead([hoseTest(true)], today)).join()).toContain('5 in');
    expect(hoseTestsAhead([hoseTest(false)], today)).toEqual([]);

    const length = (testedOn: string) =>
      recordSchemas.hose.parse({
        name: 'L-1',
        size: '5',
        lengthFt: 1000,
        rigId: id,
        serviceTests: [{ testedOn, psi: 200, passed: false }],
      });
    const notices: PlanningNotice[] = [];
    // A failure that cannot have been yet takes no hose out of service, and is not passed over.
    expect(withHoseInService(rig, [length('2031-05-06')], today, notices)).toBe(rig);
    expect(ahead(notices).join()).toContain('Engine 1');
  });
});
