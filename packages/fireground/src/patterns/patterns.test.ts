import { describe, expect, test } from 'vitest';
import { checkPlan } from '../plan/check.ts';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read-plan.ts';
import { writePlan } from '../plan/write-plan.ts';
import { whatNow } from '../questions/what-now.ts';
import { boostedAtHydrant } from './boosted-at-hydrant.ts';
import { addWyedLines } from './branched-lines.ts';
import { forwardLay } from './forward-lay.ts';
import { addMasterStream } from './master-stream.ts';
import { patternList } from './pattern-list.ts';
import { relay } from './relay.ts';
import { sideSuctionLines } from './side-suction-lines.ts';

const line = (plan: Plan, id: string) => plan.lines.find((candidate) => candidate.id === id);

describe('every pattern', () => {
  test.each(patternList.map(({ id, make }) => [id, make] as const))('%s is sound', (_, make) => {
    expect(checkPlan(make())).toEqual([]);
  });

  test.each(
    patternList.flatMap(({ id, make }) => [
      [id, 'yaml', make] as const,
      [id, 'json', make] as const,
    ]),
  )('%s comes back from %s as it was', (_, format, make) => {
    const plan = make();
    // Of several hydrants each is told of that names no main: nobody has said that they share none.
    const open = plan.hydrants.length > 1 ? plan.hydrants : [];
    const notices = open.map((_, index) =>
      expect.objectContaining({
        path: `hydrants[${index}]`,
        message: expect.stringContaining('names no main'),
      }),
    );
    expect(readPlan(writePlan(plan, format))).toEqual({ ok: true, plan, notices });
  });

  test.each(patternList.map(({ id, make }) => [id, make] as const))(
    '%s works as it is set: no limit is passed',
    (_, make) => {
      const passed = whatNow(make()).limits.filter((limit) => limit.passed);
      expect(passed.map((limit) => `${limit.id}: ${limit.value} against ${limit.limit}`)).toEqual(
        [],
      );
    },
  );

  test('is marked as made up', () => {
    expect(patternList.filter(({ make }) => !make().invented)).toEqual([]);
  });
});

describe('boosted at the hydrant', () => {
  test('goes through the valve and back: hydrant, valve, booster, valve, lay', () => {
    const plan = boostedAtHydrant();
    expect(plan.appliances[0]).toMatchObject({ on: 'H1.steamer', handle: 'boost' });
    expect(line(plan, 'suction')).toMatchObject({ from: 'V1.pump-suction', to: 'B1.intake1' });
    expect(line(plan, 'discharge')).toMatchObject({
      from: 'B1.discharge1',
      to: 'V1.pump-discharge',
    });
    expect(line(plan, 'lay')).toMatchObject({ from: 'V1.supply', to: 'A1.intake1' });
  });

  test('without a valve the booster stands in the line', () => {
    const plan = boostedAtHydrant({ assistValve: false });
    expect(plan.appliances).toEqual([]);
    expect(line(plan, 'suction')?.from).toBe('H1.steamer');
    expect(line(plan, 'lay')?.from).toBe('B1.discharge1');
    expect(checkPlan(plan)).toEqual([]);
  });

  test('without booster and valve it is the plain lay', () => {
    const plan = boostedAtHydrant({ assistValve: false, booster: null });
    expect(plan.lines).toHaveLength(1);
    expect(line(plan, 'lay')).toMatchObject({ from: 'H1.steamer', to: 'A1.intake1' });
    expect(checkPlan(plan)).toEqual([]);
  });

  test('without a booster the handle of the valve stays with the hydrant', () => {
    const plan = boostedAtHydrant({ booster: null });
    expect(plan.appliances[0]).toMatchObject({ handle: 'hydrant' });
    expect(line(plan, 'lay')?.from).toBe('V1.supply');
  });

  test('heights: hydrant, valve and booster at 0, attack engine and its nozzles at the rise', () => {
    const plan = boostedAtHydrant({ lay: { riseFt: 35 }, attackLines: [{ riseFt: 10 }] });
    expect(plan.hydrants[0]?.elevationFt).toBe(0);
    expect(plan.appliances[0]?.elevationFt).toBe(0);
    expect(plan.rigs.map((rig) => rig.elevationFt)).toEqual([0, 35]);
    expect(plan.nozzles[0]?.elevationFt).toBe(45);
  });
});

describe('side lines', () => {
  test('take the free side outlets and intakes in order', () => {
    const plan = sideSuctionLines(boostedAtHydrant(), [{ hose: '3' }, { hose: '5' }]);
    expect(line(plan, 'side1')).toMatchObject({ from: 'H1.side1', to: 'B1.intake2', hose: '3' });
    expect(line(plan, 'side2')).toMatchObject({ from: 'H1.side2', to: 'B1.intake3', hose: '5' });
    expect(checkPlan(plan)).toEqual([]);
  });

  test('are refused where outlets run out, with the counts', () => {
    const three = [{ hose: '3' }, { hose: '3' }, { hose: '3' }] as const;
    expect(() => sideSuctionLines(boostedAtHydrant(), three)).toThrow(
      /3 side lines.*2 free side outlets.*2 free intakes/,
    );
  });

  test('are refused without a booster', () => {
    expect(() => sideSuctionLines(forwardLay(), [{ hose: '3' }])).toThrow(/no booster/);
  });
});

describe('relay', () => {
  test('shares length and height evenly and ends at the attack engine', () => {
    const plan = relay({ pumps: 4, lay: { lengthFt: 3000, riseFt: 150 } });
    expect(plan.rigs.map((rig) => rig.elevationFt)).toEqual([0, 50, 100, 150]);
    expect(plan.lines.slice(1).map((leg) => leg.lengthFt)).toEqual([1000, 1000, 1000]);
    expect(plan.scene).toBe('P4');
    expect(plan.rigs.map((rig) => rig.role)).toEqual(['booster', 'relay', 'relay', 'attack']);
  });

  test('of forty pumps is sound; of one or forty-one there is none', () => {
    expect(checkPlan(relay({ pumps: 40 }))).toEqual([]);
    expect(() => relay({ pumps: 1 })).toThrow(/2 to 40/);
    expect(() => relay({ pumps: 41 })).toThrow(/2 to 40/);
  });
});

describe('lines off a rig', () => {
  test('a wye has two outlets and says so', () => {
    expect(() => addWyedLines(forwardLay(), 'A1', { lines: [{}, {}, {}] })).toThrow(
      /3 lines.*wye has 2 outlets/,
    );
  });

  test('a master stream takes a discharge for each line, until none is left', () => {
    const plan = addMasterStream(forwardLay(), 'A1', { lines: 3 });
    expect(checkPlan(plan)).toEqual([]);
    expect(() => addMasterStream(plan, 'A1', { lines: 4 })).toThrow(/All 6 discharges of A1/);
  });

  test('an unknown rig is refused with the rigs that there are', () => {
    expect(() => addMasterStream(forwardLay(), 'E9')).toThrow(/no rig E9.*A1/);
  });
});
