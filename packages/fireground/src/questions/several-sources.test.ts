import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AssistValve,
  addAttackLines,
  type DraftSource,
  type HoseSize,
  type Hydrant,
  type Line,
  mostWater,
  newAssistValve,
  newDraft,
  newHydrant,
  newLine,
  newPlan,
  newRig,
  newSiamese,
  type Plan,
  type Rig,
  settingsFor,
  supplyCurves,
  whatNow,
} from '../index.ts';
import { supplyAsSet } from '../supply/as-set.ts';
import { withSettings } from './most-water.ts';

interface Source {
  pump: 'on the valve' | 'in the line' | 'at draft' | 'none';
  staticPsi: number;
  dropPsi: number;
  testGpm: number;
  /** Of the water; the attack engine stands at 0. */
  elevationFt: number;
  ratedGpm: number;
  hose: HoseSize;
  lengthFt: number;
}

interface Pieces {
  hydrants: Hydrant[];
  drafts: DraftSource[];
  rigs: Rig[];
  appliances: AssistValve[];
  lines: Line[];
}

/** One source, its pump and its lay into an intake of the attack engine; names end in its number. */
function piecesOf(source: Source, n: number, into: string): Pieces {
  const { pump, elevationFt, staticPsi, dropPsi, testGpm, ratedGpm, hose, lengthFt } = source;
  const lay = (from: string) => newLine(`lay${n}`, from, into, hose, lengthFt);
  if (pump === 'at draft') {
    const draft = newDraft(`W${n}`, { waterElevationFt: elevationFt - 8 });
    return {
      hydrants: [],
      drafts: [draft],
      rigs: [newRig(`P${n}`, 'relay', { ratedGpm, elevationFt })],
      appliances: [],
      lines: [
        newLine(`suction${n}`, `W${n}.water`, `P${n}.intake1`, '6', 20),
        lay(`P${n}.discharge1`),
      ],
    };
  }
  const residualPsi = staticPsi - dropPsi;
  const hydrant = newHydrant(`H${n}`, { staticPsi, residualPsi, testGpm, elevationFt });
  const bare = { hydrants: [hydrant], drafts: [], rigs: [], appliances: [] };
  if (pump === 'none') return { ...bare, lines: [lay(`H${n}.steamer`)] };
  const rigs = [newRig(`P${n}`, 'booster', { ratedGpm, elevationFt })];
  if (pump === 'in the line') {
    const lines = [newLine(`suction${n}`, `H${n}.steamer`, `P${n}.intake1`, '5', 25)];
    return { ...bare, rigs, lines: [...lines, lay(`P${n}.discharge1`)] };
  }
  return {
    ...bare,
    rigs,
    appliances: [newAssistValve(`V${n}`, hydrant, 'boost')],
    lines: [
      newLine(`suction${n}`, `V${n}.pump-suction`, `P${n}.intake1`, '5', 25),
      newLine(`back${n}`, `P${n}.discharge1`, `V${n}.pump-discharge`, '5', 25),
      lay(`V${n}.supply`),
    ],
  };
}

/** Sources into one engine; a number left out keeps the names of the others. */
function planOf(
  sources: readonly (Source | undefined)[],
  intakeAt = (n: number) => `A1.intake${n}`,
): Plan {
  const pieces = sources.flatMap((source, at) =>
    source ? [piecesOf(source, at + 1, intakeAt(at + 1))] : [],
  );
  return newPlan({
    title: 'Several sources',
    scene: 'A1',
    hydrants: pieces.flatMap(({ hydrants }) => hydrants),
    drafts: pieces.flatMap(({ drafts }) => drafts),
    rigs: [...pieces.flatMap(({ rigs }) => rigs), newRig('A1', 'attack', { intakes: 4 })],
    appliances: pieces.flatMap(({ appliances }) => appliances),
    lines: pieces.flatMap(({ lines }) => lines),
  });
}

const source = (pumps: readonly Source['pump'][]): fc.Arbitrary<Source> =>
  fc.record({
    pump: fc.constantFrom(...pumps),
    staticPsi: fc.integer({ min: 45, max: 90 }),
    dropPsi: fc.integer({ min: 8, max: 20 }),
    testGpm: fc.integer({ min: 500, max: 1500 }),
    elevationFt: fc.integer({ min: -30, max: 40 }),
    ratedGpm: fc.constantFrom(1000, 1500, 2000),
    hose: fc.constantFrom<HoseSize>('5', '4', '3'),
    lengthFt: fc.integer({ min: 200, max: 1800 }),
  });
const pumped = source(['on the valve', 'in the line', 'at draft']);

const most = (plan: Plan) => mostWater(plan).flowGpm;

/** Hard limits passed with the settings of an answer, the attack engine taking the flow that was promised. */
const passedAt = (plan: Plan, flowGpm: number) =>
  supplyAsSet(plan, flowGpm).limits.filter(
    ({ weight, margin }) => weight === 'hard' && margin < -0.05,
  );

describe('two sources, a pump at each', () => {
  it('give what each gives alone at the same intake pressure, added: flows add at a junction', () => {
    fc.assert(
      fc.property(pumped, pumped, (one, two) => {
        // Each alone ends with the engine's intake at its least, 20 psi: one pressure, so flows add.
        const alone = [planOf([one]), planOf([undefined, two])].map((plan) => mostWater(plan));
        for (const { flowGpm, state } of alone)
          if (flowGpm > 0) expect(state.sceneIntakePsi).toBeCloseTo(20, 2);
        const together = mostWater(planOf([one, two]));
        expect(together.flowGpm).toBeCloseTo(alone[0]!.flowGpm + alone[1]!.flowGpm, 1);
        const bound = alone.flatMap(({ binding }) => binding.map(({ id }) => id));
        for (const { id } of together.binding) expect(bound).toContain(id);
      }),
      { numRuns: 60, seed: 1 },
    );
  });

  it('give more than one setting for both can, whatever that setting', () => {
    fc.assert(
      fc.property(pumped, pumped, (one, two) => {
        const plan = planOf([one, two]);
        const flowGpm = most(plan);
        for (let pdpPsi = 40; pdpPsi <= 185; pdpPsi += 5) {
          const set = withSettings(
            plan,
            new Map([
              ['P1', pdpPsi],
              ['P2', pdpPsi],
            ]),
          );
          const asSet = supplyAsSet(set, flowGpm + 50);
          const keeps = !asSet.limits.some(({ weight, passed }) => weight === 'hard' && passed);
          if (keeps) expect(asSet.flowGpm).toBeLessThan(flowGpm + 0.1);
        }
      }),
      { numRuns: 15, seed: 2 },
    );
  });

  it('are set differently where their mains differ: by hand, each to its own lay', () => {
    const weak: Source = {
      pump: 'in the line',
      staticPsi: 60,
      dropPsi: 20,
      testGpm: 500,
      elevationFt: 0,
      ratedGpm: 1500,
      hose: '5',
      lengthFt: 1000,
    };
    const strong: Source = { ...weak, dropPsi: 10, testGpm: 1500 };
    const { state, binding, flowGpm } = mostWater(planOf([weak, strong]));
    const pdpPsi = (id: string) => state.rigs.find((rig) => rig.id === id)!.pdpPsi;
    // The weak main is at 20 psi after a fall of 40, by the flow-test formula of NFPA 291: 500·(40/20)^0.54.
    const weakGpm = 500 * (40 / 20) ** 0.54;
    expect(state.hydrants.find(({ id }) => id === 'H1')!.flowGpm).toBeCloseTo(weakGpm, 1);
    expect(pdpPsi('P1')).toBeCloseTo(20 + 0.08 * (weakGpm / 100) ** 2 * 10, 1);
    const strongGpm = flowGpm - weakGpm;
    expect(pdpPsi('P2')).toBeCloseTo(20 + 0.08 * (strongGpm / 100) ** 2 * 10, 1);
    expect(pdpPsi('P2')).toBeGreaterThan(pdpPsi('P1') + 50);
    expect(binding.map(({ piece }) => piece)).toContain('H1');
  });

  it('end where their supply curves do', () => {
    fc.assert(
      fc.property(pumped, pumped, (one, two) => {
        const ends = [planOf([one]), planOf([undefined, two])].map(
          (plan) => supplyCurves(plan).find(({ id }) => id === 'boosted')!.mostGpm,
        );
        expect(most(planOf([one, two]))).toBeGreaterThan(ends[0]! + ends[1]! - 0.1);
      }),
      { numRuns: 10, seed: 3 },
    );
  });
});

describe('settings for several sources', () => {
  it('keep every limit, at the most and under it, and bring what they promise', () => {
    fc.assert(
      fc.property(
        pumped,
        source(['on the valve', 'in the line', 'at draft', 'none']),
        fc.double({ min: 0.1, max: 0.999, noNaN: true }),
        (one, two, share) => {
          const plan = planOf([one, { ...two, elevationFt: 0 }]);
          const answer = mostWater(plan);
          fc.pre(answer.flowGpm > 10);
          expect(passedAt(answer.plan, answer.flowGpm)).toEqual([]);
          expect(supplyAsSet(answer.plan, answer.flowGpm).flowGpm).toBeGreaterThan(
            answer.flowGpm - 0.5,
          );
          const asked = share * answer.flowGpm;
          const settings = settingsFor(plan, asked);
          expect(settings.possible).toBe(true);
          expect(passedAt(settings.plan, asked)).toEqual([]);
          expect(supplyAsSet(settings.plan, asked).flowGpm).toBeGreaterThan(asked - 0.5);
          const beyond = settingsFor(plan, answer.flowGpm + 2);
          expect(beyond.possible).toBe(false);
          expect(beyond.shortfallGpm).toBeCloseTo(2, 2);
        },
      ),
      { numRuns: 60, seed: 4 },
    );
  });

  it('stand with the nozzles flowing: what happens now passes no limit of the supply', () => {
    const lines = [
      { hose: '2-1/2', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 300, ratedPsi: 100 } },
      { hose: '2-1/2', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 300, ratedPsi: 100 } },
      { hose: '2-1/2', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 300, ratedPsi: 100 } },
      { hose: '2-1/2', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 300, ratedPsi: 100 } },
    ] as const;
    fc.assert(
      fc.property(pumped, pumped, (one, two) => {
        const plan = addAttackLines(planOf([one, two]), 'A1', lines);
        fc.pre(most(plan) >= 1200);
        const now = whatNow(settingsFor(plan, 1200).plan);
        expect(now.state.sceneGpm).toBeCloseTo(1200, 0);
        expect(now.limits.filter(({ weight, passed }) => weight === 'hard' && passed)).toEqual([]);
      }),
      { numRuns: 30, seed: 5 },
    );
  });
});

describe('a second source', () => {
  it('never lowers most water', () => {
    fc.assert(
      fc.property(pumped, pumped, (one, two) => {
        expect(most(planOf([one, two]))).toBeGreaterThan(most(planOf([one])) - 0.01);
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  it('on hydrant pressure alone adds what it gives at the same intake pressure', () => {
    fc.assert(
      fc.property(pumped, source(['none']), (one, two) => {
        const level = { ...two, elevationFt: 0 };
        const sum = most(planOf([one])) + most(planOf([undefined, level]));
        expect(most(planOf([one, level]))).toBeCloseTo(sum, 1);
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  it('uphill that its own pressure would draw too low is held back by the pump beside it', () => {
    // At 100 ft the main gives too much to an intake at 20 psi: 43 psi more come down with the water.
    const high: Source = {
      pump: 'none',
      staticPsi: 60,
      dropPsi: 20,
      testGpm: 700,
      elevationFt: 100,
      ratedGpm: 1500,
      hose: '5',
      lengthFt: 300,
    };
    const low: Source = {
      ...high,
      pump: 'in the line',
      testGpm: 1500,
      dropPsi: 10,
      elevationFt: 0,
      lengthFt: 400,
    };
    const plan = planOf([high, low]);
    const answer = mostWater(plan);
    const main = answer.state.hydrants.find(({ id }) => id === 'H1')!;
    expect(main.mainPsi).toBeCloseTo(20, 1);
    // 700·(40/20)^0.54 with the main at 20 psi; the pump at H2 adds its own at the intake pressure that leaves.
    const highGpm = 700 * 2 ** 0.54;
    expect(main.flowGpm).toBeCloseTo(highGpm, 0);
    expect(answer.flowGpm).toBeGreaterThan(highGpm + 500);
    expect(passedAt(answer.plan, answer.flowGpm)).toEqual([]);
  });
});

describe('three sources, and sources that join before the engine', () => {
  it('three add up as two do', () => {
    fc.assert(
      fc.property(pumped, pumped, pumped, (one, two, three) => {
        const sum =
          most(planOf([one])) +
          most(planOf([undefined, two])) +
          most(planOf([undefined, undefined, three]));
        expect(most(planOf([one, two, three]))).toBeCloseTo(sum, 1);
      }),
      { numRuns: 25, seed: 8 },
    );
  });

  it('through a siamese and one line give at least the stronger alone, within every limit', () => {
    const joined = (sources: readonly (Source | undefined)[]): Plan => {
      const plan = planOf(sources, (n) => `S1.inlet${n}`);
      return {
        ...plan,
        appliances: [...plan.appliances, newSiamese('S1')],
        lines: [...plan.lines, newLine('trunk', 'S1.outlet', 'A1.intake1', '5', 300)],
      };
    };
    fc.assert(
      fc.property(pumped, pumped, (one, two) => {
        const answer = mostWater(joined([one, two]));
        expect(answer.flowGpm).toBeGreaterThan(most(joined([one])) - 0.1);
        expect(answer.flowGpm).toBeGreaterThan(most(joined([undefined, two])) - 0.1);
        expect(passedAt(answer.plan, answer.flowGpm)).toEqual([]);
      }),
      { numRuns: 30, seed: 9 },
    );
  });
});

describe('the supply curve of pumps beside each other', () => {
  const boosted = (plan: Plan) => supplyCurves(plan).find(({ id }) => id === 'boosted')!;

  it('falls, and reaches the most water with every limit kept', () => {
    fc.assert(
      fc.property(pumped, pumped, (one, two) => {
        const plan = planOf([one, two]);
        const { points, mostGpm } = boosted(plan);
        expect(mostGpm).toBeCloseTo(most(plan), 3);
        fc.pre(mostGpm > 50);
        // One setting for both had ended before: a source drawn too low.
        const end = points.findLast(({ flowGpm }) => flowGpm <= mostGpm + 1e-6)!;
        expect(end.flowGpm).toBeCloseTo(mostGpm, 3);
        expect(end.intakePsi).toBeGreaterThan(20 - 0.1);
        const before = points.filter(({ flowGpm }) => flowGpm < mostGpm);
        expect(before.length).toBeGreaterThan(20);
        before.forEach(({ intakePsi }, at) => {
          if (at > 0) expect(intakePsi).toBeLessThan(before[at - 1]!.intakePsi + 1e-6);
        });
      }),
      { numRuns: 30, seed: 22 },
    );
  });

  it('stands at the sum of what each gives alone: by hand, two like pumps at half the flow each', () => {
    const one: Source = {
      pump: 'in the line',
      staticPsi: 60,
      dropPsi: 20,
      testGpm: 1000,
      elevationFt: 0,
      ratedGpm: 1500,
      hose: '5',
      lengthFt: 1000,
    };
    const pair = boosted(planOf([one, one])).points;
    const single = boosted(planOf([one])).points;
    for (const { flowGpm, intakePsi } of pair) {
      const after = single.findIndex((point) => point.flowGpm >= flowGpm / 2);
      if (after < 1) continue;
      const [a, b] = [single[after - 1]!, single[after]!];
      const share = (flowGpm / 2 - a.flowGpm) / (b.flowGpm - a.flowGpm);
      // Straight between points: half a psi.
      expect(
        Math.abs(intakePsi - (a.intakePsi + share * (b.intakePsi - a.intakePsi))),
      ).toBeLessThan(0.5);
    }
  });
});
