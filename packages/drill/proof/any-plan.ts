/** Plans drawn at random: every pattern, with sizes, heights, mains and settings of its own. */
import {
  type AttackLineOptions,
  addManifoldLines,
  addWyedLines,
  boostedAtHydrant,
  draftSupply,
  dualLines,
  forwardLay,
  type HydrantTest,
  type LayOptions,
  type Plan,
  relay,
  reverseLay,
  twoHydrants,
} from '@plugside/fireground';
import fc from 'fast-check';

const test: fc.Arbitrary<HydrantTest> = fc
  .record({
    staticPsi: fc.integer({ min: 30, max: 110 }),
    left: fc.double({ min: 0.3, max: 0.95, noNaN: true }),
    testGpm: fc.integer({ min: 300, max: 2500 }),
  })
  .map(({ staticPsi, left, testGpm }) => ({ staticPsi, residualPsi: staticPsi * left, testGpm }));
const lay: fc.Arbitrary<LayOptions> = fc.record({
  hose: fc.constantFrom('3' as const, '4' as const, '5' as const),
  lengthFt: fc.integer({ min: 1, max: 12 }).map((sections) => 100 * sections),
  riseFt: fc.integer({ min: -40, max: 60 }),
  count: fc.constantFrom(1, 1, 1, 2),
});
const line: fc.Arbitrary<AttackLineOptions> = fc.record({
  hose: fc.constantFrom('1-3/4' as const, '2-1/2' as const),
  lengthFt: fc.constantFrom(100, 150, 200, 300),
  riseFt: fc.integer({ min: -10, max: 40 }),
  open: fc.boolean(),
});
const lines = fc.array(line, { minLength: 1, maxLength: 3 });
const pdpPsi = fc.integer({ min: 80, max: 180 });

const pattern: fc.Arbitrary<Plan> = fc
  .record({
    hydrant: test,
    second: test,
    lay,
    lay2: lay,
    attackLines: lines,
    pdpPsi,
    boostPsi: pdpPsi,
  })
  .chain(({ hydrant, second, lay, lay2, attackLines, pdpPsi, boostPsi }) => {
    const attack = { pdpPsi };
    const common = { hydrant, lay, attack, attackLines };
    const two = () =>
      twoHydrants({
        first: { ...lay, hydrant },
        second: { ...lay2, hydrant: second },
        attack,
        attackLines,
      });
    return fc.constantFrom<(() => Plan)[]>(
      () => forwardLay(common),
      () => boostedAtHydrant({ ...common, booster: { pdpPsi: boostPsi } }),
      () =>
        boostedAtHydrant({
          ...common,
          booster: { pdpPsi: boostPsi, sideLines: [{ hose: '3' }] },
        }),
      () => reverseLay({ ...common, source: { pdpPsi: boostPsi } }),
      () => dualLines(common),
      () => relay({ hydrant, lay, pumps: 2, pdpPsi: boostPsi, attackPdpPsi: pdpPsi, attackLines }),
      () => draftSupply({ liftFt: 8, lay, source: { pdpPsi: boostPsi }, attack, attackLines }),
      two,
      two,
      two,
    );
  })
  .map((make) => make());

/** A plan of any pattern, perhaps with a tank, branched lines, an intake relief, its hydrants on one main. */
export const anyPlan: fc.Arbitrary<Plan> = fc
  .record({
    plan: pattern,
    tankGal: fc.constantFrom(undefined, 500, 1000),
    tankOpen: fc.boolean(),
    branched: fc.constantFrom('not', 'wye', 'manifold'),
    relief: fc.boolean(),
    main: fc.constantFrom(undefined, 'Mill Lane', 'Mill Lane'),
  })
  .map(({ plan, tankGal, tankOpen, branched, relief, main }) => {
    const made: Plan = {
      ...plan,
      hydrants: plan.hydrants.map((one) => (main === undefined ? one : { ...one, main })),
      rigs: plan.rigs.map((rig) => ({
        ...rig,
        ...(tankGal !== undefined && { tankGal, tankValve: tankOpen ? 'open' : 'shut' }),
        ...(relief && { intakeReliefPsi: 125 }),
      })),
    };
    if (branched === 'wye') return addWyedLines(made, made.scene, { lines: [{}, {}] });
    if (branched === 'manifold') return addManifoldLines(made, made.scene, { lines: [{}, {}] });
    return made;
  });
