/**
 * Hydrants that draw on one main in a drill: one lowers the other, as the plan's network has it. The
 * expected pressures are worked by hand from the table in docs/theory.md, "Hydrants that share a main",
 * with the exponent of NFPA 291 (1/0.54), or are the fireground solver's for the same settings.
 */
import {
  addAttackLines,
  type GroupTest,
  type Hydrant,
  newHydrant,
  newLine,
  newPlan,
  newRig,
  type Plan,
  whatNow,
} from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { evolutionOf } from './evolutions/index.ts';
import { judge } from './judge.ts';
import { planNow } from './plan-now.ts';
import { playedBy } from './played-by.ts';
import { playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene } from './scene.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { step } from './step.ts';
import { act, run } from './test-drill.ts';

const strong = { staticPsi: 70, residualPsi: 50, testGpm: 1000 };
const weak = { staticPsi: 70, residualPsi: 40, testGpm: 1000 };

function hydrantOf(
  id: string,
  test: { staticPsi: number; residualPsi: number; testGpm: number },
  main?: string,
  elevationFt = 0,
): Hydrant {
  return { ...newHydrant(id, { ...test, elevationFt }), ...(main !== undefined && { main }) };
}

/** Each hydrant by its own 5 in lay into one engine; lines of 500 gpm. */
function planOf(hydrants: Hydrant[], groupTests?: GroupTest[], lines = 3): Plan {
  const plan = newPlan({
    title: 'On one main',
    scene: 'A1',
    hydrants,
    rigs: [newRig('A1', 'attack', { pdpPsi: 130, ratedGpm: 2000 })],
    lines: hydrants.map(({ id }, at) =>
      newLine(`lay${at + 1}`, `${id}.steamer`, `A1.intake${at + 1}`, '5', 200 + 100 * at),
    ),
  });
  const master = {
    hose: '3' as const,
    lengthFt: 100,
    nozzle: { kind: 'fog' as const, ratedGpm: 500, ratedPsi: 100 },
    use: 'master stream' as const,
  };
  const grown = addAttackLines(plan, 'A1', Array(lines).fill(master));
  return groupTests ? { ...grown, groupTests } : grown;
}

const flowing = (plan: Plan) => createDrill(sceneFromPlan(plan, { start: 'water flowing' }), 1);

const stem = (drill: Drill, id: string, opening: number) =>
  act(drill, 'hydrant operator', { do: 'set valve', valve: `${id}.stem`, opening, overS: 12 });
const hydrantNow = ({ state }: Drill, id: string) => state.hydrants.find((one) => one.id === id)!;

/** Loss of a main by its test, for a flow [psi]. */
const lossPsi = ({ staticPsi, residualPsi, testGpm }: typeof strong, gpm: number) =>
  (staticPsi - residualPsi) * (gpm / testGpm) ** (1 / 0.54);

/** A drill at rest against the solver's answer for a plan, to 0.1 psi and 0.1 gpm. */
function expectSolved(drill: Drill, plan: Plan): void {
  const still = whatNow(plan).state;
  expect(still.hydrants.length).toBeGreaterThan(1);
  for (const hydrant of still.hydrants) {
    const now = hydrantNow(drill, hydrant.id);
    expect(Math.abs(now.mainPsi - hydrant.mainPsi)).toBeLessThan(0.1);
    expect(Math.abs(now.flowGpm - hydrant.flowGpm)).toBeLessThan(0.1);
  }
  for (const rig of still.rigs) {
    const pump = drill.state.pumps.find(({ rigId }) => rigId === rig.id)!;
    expect(Math.abs(pump.intakePsi - rig.intakePsi)).toBeLessThan(0.1);
    expect(Math.abs(pump.flowGpm - rig.flowGpm)).toBeLessThan(0.1);
  }
}

describe('two hydrants of one main', () => {
  const plan = planOf([hydrantOf('H1', strong, 'Mill Lane'), hydrantOf('H2', weak, 'Mill Lane')]);

  it('stand where the careful main has them: the way of the stronger for both, the rest for the weaker', () => {
    const drill = flowing(plan);
    run(drill, 5);
    const [one, two] = [hydrantNow(drill, 'H1'), hydrantNow(drill, 'H2')];
    expect(Math.min(one.flowGpm, two.flowGpm)).toBeGreaterThan(300);
    const common = lossPsi(strong, one.flowGpm + two.flowGpm);
    const beyond = lossPsi(weak, two.flowGpm) - lossPsi(strong, two.flowGpm);
    expect(one.mainPsi).toBeCloseTo(70 - common, 1);
    expect(two.mainPsi).toBeCloseTo(70 - common - beyond, 1);
  });

  it('draw water once: what the main gives is what both give, and every gallon is booked', () => {
    const drill = flowing(plan);
    const held = () =>
      drill.state.hoses.reduce((sum, { from, to }) => sum + from.waterGal + to.waterGal, 0);
    const before = held();
    run(drill, 30);
    const { sourceGal, nozzleGal, wasteGal } = drill.state.water;
    const [one, two] = [hydrantNow(drill, 'H1'), hydrantNow(drill, 'H2')];
    // At rest for half a minute.
    expect(sourceGal).toBeCloseTo((one.flowGpm + two.flowGpm) / 2, 0);
    expect(Math.abs(sourceGal - (held() - before) - nozzleGal - wasteGal)).toBeLessThan(0.5);
  });

  it('lower each other, and only each other: the place of one that is shut falls with the one that flows', () => {
    const drill = flowing(plan);
    stem(drill, 'H2', 0);
    run(drill, 20);
    const alone = hydrantNow(drill, 'H1');
    const shut = hydrantNow(drill, 'H2');
    expect(shut.flowGpm).toBe(0);
    expect(shut.mainPsi).toBeCloseTo(70 - lossPsi(strong, alone.flowGpm), 1);
    // On mains of two names it stays at its static pressure.
    const apart = flowing(
      planOf([hydrantOf('H1', strong, 'Mill Lane'), hydrantOf('H2', weak, 'Quay Street')]),
    );
    stem(apart, 'H2', 0);
    run(apart, 20);
    expect(hydrantNow(apart, 'H2').mainPsi).toBe(70);
    expect(hydrantNow(apart, 'H1').mainPsi).toBeCloseTo(
      70 - lossPsi(strong, hydrantNow(apart, 'H1').flowGpm),
      1,
    );
  });

  it('leave the engine less than on mains of their own', () => {
    const intakePsi = (drill: Drill) => {
      run(drill, 5);
      expect(drill.state.pumps[0]!.condition).toBe('pumping');
      return drill.state.pumps[0]!.intakePsi;
    };
    const apart = planOf([hydrantOf('H1', strong), hydrantOf('H2', weak)]);
    expect(intakePsi(flowing(plan))).toBeLessThan(intakePsi(flowing(apart)) - 10);
  });
});

describe('at rest the drill is where the plan’s network is', () => {
  const together = (hydrants: string[], residualPsi: number): GroupTest => ({
    hydrants,
    elevationFt: 5,
    staticPsi: 66,
    residualPsi,
    testGpm: 1400,
    testedOn: '2026-05-04',
  });
  it.each([
    ['by name', planOf([hydrantOf('H1', strong, 'm'), hydrantOf('H2', weak, 'm')])],
    ['two tests alike', planOf([hydrantOf('H1', strong, 'm'), hydrantOf('H2', strong, 'm')])],
    [
      'at heights that differ, static heads that differ',
      planOf([
        hydrantOf('H1', strong, 'm', -20),
        hydrantOf('H2', { ...weak, staticPsi: 60, residualPsi: 45 }, 'm', 14),
      ]),
    ],
    [
      'by a test of both flowing',
      planOf([hydrantOf('H1', strong), hydrantOf('H2', weak)], [together(['H1', 'H2'], 44)]),
    ],
    [
      'three, of which two share',
      planOf([
        hydrantOf('H1', weak, 'm'),
        hydrantOf('H2', strong, 'n'),
        hydrantOf('H3', strong, 'm'),
      ]),
    ],
    [
      'three of one main',
      planOf([
        hydrantOf('H1', weak, 'm'),
        hydrantOf('H2', { ...strong, residualPsi: 45 }, 'm'),
        hydrantOf('H3', strong, 'm'),
      ]),
    ],
    ['not known', planOf([hydrantOf('H1', strong), hydrantOf('H2', weak)])],
  ])('%s', (_, plan) => {
    const drill = flowing(plan);
    run(drill, 10);
    expectSolved(drill, planNow(drill.scene, drill.state));
  });

  it.each([
    ['the stronger a little', 'H1', 0.9],
    ['the stronger, so far that it is the weaker', 'H1', 0.7],
    ['the weaker', 'H2', 0.5],
  ] as const)('a hydrant weaker than its record: %s', (_, id, share) => {
    // Two lines: three would have the pump cavitate, which a plan does not know.
    const plan = planOf([hydrantOf('H1', strong, 'm'), hydrantOf('H2', weak, 'm')], undefined, 2);
    const drill = flowing(plan);
    run(drill, 1);
    const before = drill.state.hydrants.map(({ mainPsi }) => mainPsi);
    act(drill, 'instructor', {
      do: 'arm fault',
      fault: { id: 'weak', kind: 'hydrant weak', hydrant: id, share },
    });
    run(drill, 10);
    const weakened = plan.hydrants.map((one) =>
      one.id === id ? { ...one, testGpm: one.testGpm * share } : one,
    );
    expectSolved(drill, { ...planNow(drill.scene, drill.state), hydrants: weakened });
    const [one, two] = drill.state.hydrants;
    expect(one!.mainPsi + two!.mainPsi).toBeLessThan(before[0]! + before[1]! - 1);
    act(drill, 'instructor', { do: 'lift fault', fault: 'weak' });
    run(drill, 10);
    expect(drill.state.hydrants.map(({ mainPsi }) => mainPsi)).toEqual(before);
  });
});

describe('the second hydrant of an evolution, on the main of the first', () => {
  const onOneMain = (): DrillScene => {
    const scene = structuredClone(evolutionOf('two hydrants')!.scene());
    for (const hydrant of scene.plan.hydrants) hydrant.main = 'Mill Lane';
    return scene;
  };

  it('lowers the main of the first when it opens, and rests where the solver says', () => {
    const drill = createDrill(onOneMain(), 5);
    const fallsWith: number[] = [];
    for (let tick = 0; tick < 5000; tick++) {
      step(
        drill,
        playedRoles.flatMap((role) => playedBy(role, drill.scene, drill.state)),
      );
      const { hydrants } = drill.state;
      // Alike by their tests and heights: one main, one pressure.
      if (tick % 100 === 0) fallsWith.push(Math.abs(hydrants[0]!.mainPsi - hydrants[1]!.mainPsi));
    }
    expect(Math.max(...fallsWith)).toBeLessThan(0.01);
    const [one, two] = drill.state.hydrants;
    expect(Math.min(one!.flowGpm, two!.flowGpm)).toBeGreaterThan(100);
    run(drill, 20);
    expectSolved(drill, planNow(drill.scene, drill.state));
  });

  it('stands on its own curve by the rules of before', () => {
    const scene = onOneMain();
    scene.settings.rules = 2;
    const drill = createDrill(scene, 5);
    run(drill, 2);
    expect(hydrantNow(drill, 'H2').mainPsi).toBe(62);
    expect(hydrantNow(drill, 'H1').mainPsi).toBeLessThan(62);
  });
});

describe('a main under 20 psi', () => {
  /** The weaker hydrant stands 60 ft up the hill, where 26 psi are 0.434·60 less: 44 at rest. */
  const onTheHill = () =>
    flowing(
      planOf([
        hydrantOf('H1', { staticPsi: 70, residualPsi: 40, testGpm: 800 }, 'm'),
        hydrantOf('H2', { staticPsi: 44, residualPsi: 14, testGpm: 700 }, 'm', 60),
      ]),
    );

  it('is judged wherever a hydrant tells of it, one second for all of them', () => {
    const drill = onTheHill();
    stem(drill, 'H2', 0);
    run(drill, 20);
    const [low, high] = [hydrantNow(drill, 'H1'), hydrantNow(drill, 'H2')];
    expect(low.mainPsi).toBeGreaterThan(20);
    expect(high.flowGpm).toBe(0);
    // Nothing is drawn there, and yet the main up there is what falls.
    expect(high.mainPsi).toBeCloseTo(low.mainPsi - 0.434 * 60, 0);
    expect(high.mainPsi).toBeLessThan(20);
    const main = () => judge(drill.scene, drill.state).find(({ key }) => key === 'main')!;
    const before = main().value!;
    run(drill, 10);
    expect(main().value! - before).toBeCloseTo(10, 5);
    expect(main()).toMatchObject({ met: false, worst: { piece: 'H2' } });
    // Ease it, and it is over.
    act(drill, 'attack operator', { do: 'set governor', rig: 'A1', pdpPsi: 60 });
    for (const n of [2, 3])
      act(drill, 'nozzle crew', { do: 'set valve', valve: `N${n}.bale`, opening: 0, overS: 5 });
    run(drill, 15);
    const after = main().value!;
    run(drill, 5);
    expect(main().value).toBe(after);
  });
});
