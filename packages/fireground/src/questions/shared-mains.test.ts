import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apartPlan,
  type GroupTest,
  type HydrantTest,
  mainRange,
  mostWater,
  newHydrant,
  newLine,
  newPlan,
  newRig,
  type Plan,
  settingsFor,
  whatNow,
  withMainRange,
} from '../index.ts';
import { supplyAsSet } from '../supply/as-set.ts';
import { withSettings } from './most-water.ts';

interface Source extends HydrantTest {
  main?: string;
  mainFedFrom?: string;
  elevationFt?: number;
  /** An engine in the line at the hydrant. */
  pumped?: boolean;
  lengthFt?: number;
}

/** Hydrants `H1` … with lays of 5 in hose into one engine, `A1`; pumps `P1` … where there are any. */
function planOf(sources: readonly Source[], groupTests?: readonly GroupTest[]): Plan {
  return newPlan({
    title: 'Several hydrants',
    scene: 'A1',
    hydrants: sources.map(({ pumped: _, lengthFt: __, ...test }, at) =>
      newHydrant(`H${at + 1}`, test),
    ),
    ...(groupTests && { groupTests }),
    rigs: [
      ...sources.flatMap(({ pumped, elevationFt = 0 }, at) =>
        pumped ? [newRig(`P${at + 1}`, 'booster', { ratedGpm: 2000, elevationFt })] : [],
      ),
      newRig('A1', 'attack', { intakes: 4 }),
    ],
    lines: sources.flatMap(({ pumped, lengthFt = 100 }, at) => {
      const n = at + 1;
      const lay = (from: string) => newLine(`lay${n}`, from, `A1.intake${n}`, '5', lengthFt);
      if (!pumped) return [lay(`H${n}.steamer`)];
      return [
        newLine(`suction${n}`, `H${n}.steamer`, `P${n}.intake1`, '5', 25),
        lay(`P${n}.discharge1`),
      ];
    }),
  });
}

const test = { staticPsi: 62, residualPsi: 44, testGpm: 1060 };
/** What the main gives at 20 psi by NFPA 291's formula. */
const at20Gpm = (one: HydrantTest) =>
  one.testGpm * ((one.staticPsi - 20) / (one.staticPsi - one.residualPsi)) ** 0.54;
const most = (plan: Plan) => mostWater(plan).flowGpm;

describe('two hydrants on one main', () => {
  it('alike, pumped: give together what one test says of the main, 1,060·(42/18)^0.54', () => {
    const pair = (main?: [string, string]) =>
      planOf([0, 1].map((at) => ({ ...test, pumped: true, ...(main && { main: main[at]! }) })));
    expect(most(pair(['m', 'm']))).toBeCloseTo(at20Gpm(test), 1);
    const single = most(planOf([{ ...test, pumped: true }]));
    expect(most(pair(['m', 'n']))).toBeCloseTo(2 * single, 1);
    expect(most(pair())).toBeCloseTo(2 * single, 1);
  });

  it('by hand: the weaker takes from the stronger, and hangs beyond it on the rest of its loss', () => {
    const strong = { staticPsi: 70, residualPsi: 60, testGpm: 1000, main: 'm' };
    const weak = { staticPsi: 70, residualPsi: 45, testGpm: 800, main: 'm' };
    const { state } = whatNow(planOf([weak, strong]));
    const [atWeak, atStrong] = ['H1', 'H2'].map(
      (id) => state.hydrants.find((hydrant) => hydrant.id === id)!,
    );
    const power = 1 / 0.54;
    const both = atWeak!.flowGpm + atStrong!.flowGpm;
    const strongDrop = (gpm: number) => 10 * (gpm / 1000) ** power;
    expect(atStrong!.mainPsi).toBeCloseTo(70 - strongDrop(both), 4);
    const own = 25 * (atWeak!.flowGpm / 800) ** power - strongDrop(atWeak!.flowGpm);
    expect(atWeak!.mainPsi).toBeCloseTo(70 - strongDrop(both) - own, 4);
  });

  it('with static heads that differ are counted from the lower', () => {
    // 70 psi at 0 ft and 60 psi 10 ft higher: 70 and 64.34 psi at one height.
    const low = { staticPsi: 70, residualPsi: 55, testGpm: 900, main: 'm' };
    const high = { staticPsi: 60, residualPsi: 45, testGpm: 900, main: 'm', elevationFt: 10 };
    const still = { ...planOf([low, high]), scene: 'A1' };
    const { state } = supplyAsSet(still, 0);
    expect(state.hydrants[0]!.mainPsi).toBeCloseTo(64.34, 2);
    expect(state.hydrants[1]!.mainPsi).toBeCloseTo(60, 2);
    expect(mainRange(still)!.headsApartPsi).toBeCloseTo(5.66, 2);
  });

  it('that is shut, a hydrant takes nothing from the other', () => {
    const plan = planOf([
      { ...test, main: 'm' },
      { ...test, staticPsi: 55, residualPsi: 30, main: 'm' },
    ]);
    const shut: Plan = {
      ...plan,
      lines: plan.lines.map((line) => (line.id === 'lay2' ? { ...line, valve: 'shut' } : line)),
    };
    expect(most(shut)).toBeCloseTo(most(planOf([test])), 6);
  });

  it('a test of both flowing goes before: the main as it was read, and each no better than alone', () => {
    const together = { staticPsi: 62, residualPsi: 40, testGpm: 2000, elevationFt: 0 };
    const plan = planOf(
      [
        { ...test, pumped: true },
        { ...test, pumped: true },
      ],
      [{ hydrants: ['H1', 'H2'], ...together }],
    );
    const { flowGpm, state } = mostWater(plan);
    const power = 1 / 0.54;
    const shared = 22 * (flowGpm / 2000) ** power;
    for (const { flowGpm: own, mainPsi } of state.hydrants) {
      const beyond = 18 * (own / 1060) ** power - 22 * (own / 2000) ** power;
      expect(mainPsi).toBeCloseTo(62 - shared - beyond, 3);
    }
    const range = mainRange(plan)!;
    expect(range).toMatchObject({ basis: 'tested together', shared: flowGpm, apart: flowGpm });
    expect(flowGpm).toBeLessThan(most(apartPlan(plan)));
  });

  it('of several tests of both the newest counts', () => {
    const older = { hydrants: ['H1', 'H2'], ...test, testedOn: '2019-04-01' };
    const newer = { ...older, testGpm: 1500, testedOn: '2024-04-01' };
    const sources = [test, test];
    expect(most(planOf(sources, [newer, older]))).toBeCloseTo(most(planOf(sources, [newer])), 9);
  });
});

const source = fc.record({
  staticPsi: fc.integer({ min: 50, max: 90 }),
  dropPsi: fc.integer({ min: 6, max: 25 }),
  testGpm: fc.integer({ min: 500, max: 1500 }),
  lengthFt: fc.integer({ min: 100, max: 1500 }),
  pumped: fc.boolean(),
});
const sourceOf = (
  { dropPsi, staticPsi, ...more }: { dropPsi: number; staticPsi: number; testGpm: number },
  main: string,
): Source => ({ ...more, staticPsi, residualPsi: staticPsi - dropPsi, main });

describe('the settings of pumps on one main', () => {
  const passed = (plan: Plan, flowGpm: number) =>
    supplyAsSet(plan, flowGpm).limits.filter(
      ({ weight, margin }) => weight === 'hard' && margin < -0.05,
    );

  it('no others bring more within every limit, whatever they are; and these keep every limit', () => {
    fc.assert(
      fc.property(source, source, fc.option(source, { nil: undefined }), (one, two, third) => {
        const sources = [sourceOf(one, 'm'), sourceOf({ ...two, staticPsi: one.staticPsi }, 'm')];
        if (third) sources.push(sourceOf(third, 'n'));
        const plan = planOf(sources);
        const answer = mostWater(plan);
        if (answer.flowGpm > 10) expect(passed(answer.plan, answer.flowGpm)).toEqual([]);
        const pumps = plan.rigs.filter(({ id }) => id !== 'A1').map(({ id }) => id);
        const steps = pumps.length > 2 ? [50, 90, 130, 170] : [40, 60, 80, 100, 120, 140, 160, 180];
        const tries = pumps.reduce<number[][]>(
          (sets) => sets.flatMap((set) => steps.map((psi) => [...set, psi])),
          [[]],
        );
        for (const psi of tries) {
          const set = withSettings(plan, new Map(pumps.map((id, at) => [id, psi[at]!])));
          const asSet = supplyAsSet(set, answer.flowGpm + 200);
          const keeps = !asSet.limits.some((limit) => limit.weight === 'hard' && limit.passed);
          // With a third source a pump that is held lets some water by: at most this share is lost.
          if (keeps) expect(asSet.flowGpm).toBeLessThan(answer.flowGpm * (third ? 1.03 : 1) + 0.5);
        }
      }),
      { numRuns: 40, seed: 11 },
    );
  });

  it('a shared main never gives more than two mains, nor less than its stronger hydrant pumped alone', () => {
    fc.assert(
      fc.property(source, source, (one, two) => {
        const first = { ...sourceOf(one, 'm'), pumped: true };
        const second = { ...sourceOf({ ...two, staticPsi: one.staticPsi }, 'm'), pumped: true };
        const range = mainRange(planOf([first, second]))!;
        expect(range.shared).toBeLessThan(range.apart + 0.01);
        const alone = Math.max(most(planOf([first])), most(planOf([second])));
        expect(range.shared).toBeGreaterThan(alone - 0.1);
      }),
      { numRuns: 40, seed: 12 },
    );
  });
});

describe('a hydrant that stands above what another’s test says of the water', () => {
  // At rest the lower one says 60 psi over 0 ft, 138 ft of water: the upper, at 200 ft, is dry.
  const upper = { ...test, elevationFt: 200 };
  const lower = { staticPsi: 60, residualPsi: 20, testGpm: 600 };

  it('is answered for like any other: nothing comes from it, and more than the other none of them gives', () => {
    const range = mainRange(planOf([upper, lower]))!;
    expect(range.basis).toBe('not known');
    expect(range.shared).toBeGreaterThanOrEqual(0);
    expect(range.shared).toBeLessThan(range.apart);
    expect(
      Number.isFinite(most(planOf([upper, lower].map((one) => ({ ...one, main: 'm' }))))),
    ).toBe(true);
  });
});

describe('what an answer says of the mains', () => {
  const plan = (mains: [string?, string?]) =>
    planOf(mains.map((main) => ({ ...test, pumped: true, ...(main !== undefined && { main }) })));
  const about = (answer: { notices: { about?: string; level: string; text: string }[] }) =>
    answer.notices.filter((notice) => notice.about === 'mains');

  const unknown = plan([undefined, undefined]);
  const one = plan(['m', 'm']);
  const figure = (gpm: number) => `${Math.round(gpm).toLocaleString('en-US')} gpm`;

  it('both ends with their figures, once they are worked out', () => {
    const open = withMainRange(unknown, mostWater(unknown));
    expect(open.mains).toMatchObject({ basis: 'not known', hydrants: ['H1', 'H2'] });
    // By the formula above, and twice what one gives alone.
    const both = figure(2 * most(planOf([{ ...test, pumped: true }])));
    expect(about(open).map(({ text }) => text)).toEqual([
      `It is not known whether Hydrant H1 and Hydrant H2 are on mains of their own. If they share a main: 1,675 gpm instead of ${both}. Name their mains, or test them flowing together.`,
    ]);
    const shared = withMainRange(one, mostWater(one));
    expect(about(shared)[0]!.text).toMatch(/share a main: 1,675 gpm is counted/);
    expect(about(shared)[0]!.text).toContain(both);
  });

  it('two names do not part mains whose water stands alike; what feeds them does, or 10 psi between them', () => {
    const pair = (...more: [Partial<Source>, Partial<Source>]) =>
      planOf(more.map((one) => ({ ...test, pumped: true, ...one })));
    const named = pair({ main: 'm' }, { main: 'n' });
    const open = withMainRange(named, mostWater(named));
    // At one place, as on one main: the formula above.
    expect(open.mains).toMatchObject({ basis: 'not known' });
    expect(open.mains!.shared).toBeCloseTo(at20Gpm(test), 1);
    expect(about(open)[0]!.text).toMatch(
      /whether the mains of .* are fed apart from each other\. If they share a feeder: 1,675 gpm instead of .* Say what each main is fed from/,
    );
    const apart = [
      pair({ main: 'm', mainFedFrom: 'tank' }, { main: 'n', mainFedFrom: 'wells' }),
      // 62 + 10.1 psi at the same height: hardly the same water at rest.
      pair({ main: 'm' }, { main: 'n', staticPsi: 72.1 }),
    ];
    for (const one of apart) {
      expect(mainRange(one)).toBeNull();
      expect(about(withMainRange(one, mostWater(one)))).toEqual([]);
    }
    expect(mainRange(pair({ main: 'm' }, { main: 'n', staticPsi: 71.9 }))!.basis).toBe('not known');
    // 23.2 ft higher, 10.05 psi less: the water stands at one height.
    const higher = pair({ main: 'm' }, { main: 'n', staticPsi: 51.95, elevationFt: 23.2 });
    expect(mainRange(higher)!.basis).toBe('not known');
  });

  it('a main that hangs on another’s draws on it, over two steps and beside a third too', () => {
    const fed = (mains: [string, string?][]) =>
      planOf(
        mains.map(([main, mainFedFrom]) => ({
          ...test,
          pumped: true,
          main,
          ...(mainFedFrom && { mainFedFrom }),
        })),
      );
    const shared = [
      fed([['court', 'feeder'], ['feeder']]),
      fed([
        ['court', 'feeder'],
        ['lane', 'feeder'],
      ]),
      fed([['close', 'court'], ['court', 'feeder'], ['feeder']]),
      // Each says that it hangs on the other: no end to follow, and still one system.
      fed([
        ['court', 'lane'],
        ['lane', 'court'],
      ]),
    ];
    for (const one of shared) {
      expect(mainRange(one)!.basis).toBe('shared');
      // However many alike at one place: what the main gives.
      expect(most(one)).toBeCloseTo(at20Gpm(test), 1);
    }
    const tested = planOf(
      [
        { ...test, pumped: true, main: 'm', mainFedFrom: 'tank' },
        { ...test, pumped: true, main: 'n', mainFedFrom: 'wells' },
      ],
      [{ hydrants: ['H1', 'H2'], ...test }],
    );
    expect(mainRange(tested)!.basis).toBe('tested together');
  });

  it('named mains that may hang together are taken as one where an unknown hydrant joins them', () => {
    const mains = [{ main: 'm' }, { main: 'n' }, {}];
    const range = mainRange(planOf(mains.map((one) => ({ ...test, pumped: true, ...one }))))!;
    expect(range.shared).toBeCloseTo(at20Gpm(test), 1);
  });

  it('without figures, where they are not worked out', () => {
    expect(about(mostWater(unknown))).toMatchObject([{ level: 'caution' }]);
    expect(about(mostWater(one))).toMatchObject([{ level: 'fact' }]);
  });

  it('with the settings for a demand what the mains give, as set the intake pressure', () => {
    const set = withMainRange(unknown, settingsFor(unknown, 1200));
    expect(about(set)[0]!.text).toContain('1,675 gpm instead of');
    const lays = planOf([test, test]);
    const now = withMainRange(lays, whatNow(settingsFor(lays, 900).plan));
    expect(now.mains!.figure).toBe('intake');
    expect(now.mains!.shared).toBeLessThanOrEqual(now.mains!.counted);
  });

  it('a main known of one hydrant alone is assumed of the other', () => {
    expect(mainRange(plan(['m', undefined]))).toMatchObject({ basis: 'not known' });
    expect(mainRange(plan(['m', undefined]))!.shared).toBeCloseTo(at20Gpm(test), 1);
  });
});
