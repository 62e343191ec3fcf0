import { describe, expect, it } from 'vitest';
import {
  adjusted,
  asTheyCome,
  type Choice,
  chooseSupply,
  type HydrantAtHand,
  mishaps,
  mostWater,
  newHydrant,
  newRig,
  type RespondingRig,
  readPlan,
  type Situation,
  writePlan,
} from '../index.ts';

const engine = (number: number, lengthFt: number, ratedGpm = 1500): RespondingRig => ({
  rig: newRig(`E${number}`, 'attack', { name: `Engine ${number}`, ratedGpm, intakes: 4 }),
  kind: 'engine',
  arrivesMin: 2 * number,
  hose: [{ hose: '5', lengthFt }],
  assistValve: false,
});

const strong = (number: number, lengthFt: number): HydrantAtHand => ({
  hydrant: newHydrant(`H-${number}`, {
    staticPsi: 100,
    residualPsi: 90,
    testGpm: 3000,
    main: `main ${number}`,
  }),
  steamer: true,
  lengthFt,
});

const situation = (more: Partial<Situation> = {}): Situation => ({
  title: 'Works',
  invented: true,
  scene: { name: 'Works', elevationFt: 0 },
  demandGpm: 2500,
  rigs: [engine(1, 600)],
  hydrants: [strong(1, 200)],
  waters: [],
  fillPlaces: [],
  department: {},
  ...more,
});
const mostOf = ({ ways }: Choice) => Math.max(...ways.map(({ mostGpm }) => mostGpm));

// A 1,500 gpm pump adds 150 psi at its rating and 120 at a quarter more (what pumps on a strong
// hydrant are known to do): 130 psi, from 20 at the intake to 150, at 1,500 + 375·20/30.
const atUsualGpm = 1750;

describe('the pump at the fire', () => {
  const choice = chooseSupply(situation());

  it('is the limit where more is brought than it puts out at 150 psi', () => {
    expect(mostOf(choice)).toBeCloseTo(atUsualGpm, 6);
    const [first] = choice.ways;
    expect(first!.binding).toMatchObject([
      { kind: 'scene pumps', piece: 'E1', limit: atUsualGpm, binds: true },
    ]);
    expect(first!.bindingText).toBe("Engine 1's pump at the fire (1,750 gpm) is the limit.");
    expect(first!.atFire).toMatchObject([{ rigId: 'E1', pumpMostGpm: atUsualGpm, pdpPsi: 150 }]);
    expect(first!.notices.some(({ text }) => text.includes('Another engine there'))).toBe(true);
  });

  it("gives its rating where the lines need 170 psi: 150 psi net by the pump's rating", () => {
    expect(mostOf(chooseSupply(situation({ fireLinePdpPsi: 170 })))).toBeCloseTo(1500, 6);
    const raised = adjusted(situation(), { ...asTheyCome, fireLinePdpPsi: 170 });
    expect(mostOf(chooseSupply(raised))).toBeCloseTo(1500, 6);
  });

  it('goes by its own pump test where there is one', () => {
    const tested = engine(1, 600);
    tested.rig.capability = [
      [0, 300],
      [1000, 130],
      [1200, 100],
    ];
    expect(mostOf(chooseSupply(situation({ rigs: [tested] })))).toBeCloseTo(1000, 6);
  });

  it('stays a limit in the plan when it is written, read and asked again, and in what goes wrong', () => {
    const way = chooseSupply(situation({ demandGpm: 1700 })).ways[0]!;
    const read = readPlan(writePlan(way.plan!));
    if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join(' '));
    expect(mostWater(read.plan).flowGpm).toBeCloseTo(atUsualGpm, 3);
    // One more hand line of 150 gpm: 1,850 are more than it puts out.
    const more = mishaps(way, 1700).find(({ what }) => what.startsWith('One more hand line'));
    expect(more).toMatchObject({ stillMeets: false });
  });

  it('is refused pressures that cannot be', () => {
    expect(() => chooseSupply(situation({ fireLinePdpPsi: 20 }))).toThrow('fireLinePdpPsi is 20');
  });
});

describe('several engines at the fire', () => {
  const rigs = [engine(1, 600), engine(2, 600)];
  const hydrants = [strong(1, 200), strong(2, 500)];
  const choice = chooseSupply(situation({ rigs, hydrants, demandGpm: 2500 }));
  const first = choice.ways[0]!;

  it('take a hydrant each: together more than one puts out, each no more than its own', () => {
    expect(first.meetsDemand).toBe(true);
    expect(first.atFire!.map(({ rigName }) => rigName)).toEqual(['Engine 1', 'Engine 2']);
    for (const { mostGpm } of first.atFire!) expect(mostGpm).toBeLessThan(atUsualGpm + 0.01);
    const together = first.atFire!.reduce((sum, { mostGpm }) => sum + mostGpm, 0);
    expect(first.mostGpm).toBeCloseTo(together, 3);
    expect(first.mostGpm).toBeLessThan(2 * atUsualGpm + 0.01);
  });

  it('are told so, and counted', () => {
    // Each its own water: what the attack engine has left the other has.
    const comes = /^(\d+) psi in; ([\d,]+) gpm coming from H-[12]'s (first |second )?lines?\.$/;
    const told = ['E1', 'E2'].map((rig) =>
      comes.exec(first.orders.find(({ id }) => id === rig)!.radio),
    );
    const gpm = told.map((words) => Number(words![2]!.replace(',', '')));
    expect(Math.abs(gpm[0]! + gpm[1]! - 2500)).toBeLessThanOrEqual(1);
    for (const one of gpm) expect(one).toBeLessThan(1500);
    expect(told[0]![1]).toBe(told[1]![1]);
    expect(first.duties.find(({ rigId }) => rigId === 'E2')!.duty).toContain('pumps at the fire');
    expect(first.rigsUsed).toBe(2);
    expect(first.notices.map(({ text }) => text).join(' ')).toContain(
      'Needs 2 engines at the fire: Engine 1 and Engine 2.',
    );
  });

  it('are no more than the water takes: one for a demand that its pump puts out', () => {
    const [little] = chooseSupply(situation({ rigs, hydrants, demandGpm: 1000 })).ways;
    expect(little!.atFire).toHaveLength(1);
  });

  it('are not those that pump elsewhere', () => {
    const weak = { ...strong(1, 900) };
    weak.hydrant = { ...weak.hydrant, staticPsi: 50, residualPsi: 45 };
    const { ways } = chooseSupply(situation({ rigs, hydrants: [weak], demandGpm: 3000 }));
    for (const { atFire = [], parts = [] } of ways) {
      const pumps = parts.flatMap((part) => part.pumps);
      expect(atFire.filter(({ rigId }) => pumps.includes(rigId))).toEqual([]);
    }
  });
});

describe('what there is to spare', () => {
  // A hydrant on its own pressure with a known most, and one beside it that gives plainly more.
  const weak = (number: number, lengthFt: number, testGpm: number): HydrantAtHand => ({
    hydrant: newHydrant(`H-${number}`, {
      staticPsi: 70,
      residualPsi: 50,
      testGpm,
      main: `m${number}`,
    }),
    steamer: true,
    lengthFt,
  });
  const near = weak(1, 200, 600);
  const rigs = [engine(1, 1000)];
  const nearGpm = chooseSupply(situation({ rigs, hydrants: [near], demandGpm: 100 })).ways.find(
    ({ kind }) => kind === 'direct lay',
  )!.mostGpm;
  const demandGpm = Math.floor(nearGpm) - 9;
  const choice = chooseSupply(situation({ rigs, hydrants: [near, weak(2, 900, 1200)], demandGpm }));

  it('ranks a way that meets the demand by a trifle after one that meets it with a tenth to spare', () => {
    const [first] = choice.ways;
    expect(first).toMatchObject({ meetsDemand: true, littleToSpare: false });
    expect(first!.marginGpm).toBeGreaterThan(0.1 * demandGpm);
    const trifle = choice.ways.find(({ littleToSpare }) => littleToSpare)!;
    expect(trifle.meetsDemand).toBe(true);
    expect(trifle.notices[0]!.text).toMatch(/^Only (9|10) gpm to spare/);
  });

  it('is asked for as the situation says: none wanted, and the nearer water is first', () => {
    const { ways } = chooseSupply(
      situation({ rigs, hydrants: [near, weak(2, 900, 1200)], demandGpm, marginShare: 0 }),
    );
    expect(ways[0]!.sources).toEqual(['H-1']);
    expect(ways.some(({ littleToSpare }) => littleToSpare)).toBe(false);
  });
});

describe('the order of ways', () => {
  it('does not hang on the last digits of what is solved, which differ between JavaScript engines', () => {
    const rigs = [1, 2, 3, 4].map((number) => engine(number, 700, 1250));
    // Three pumps alike, and hydrants alike but for their lays: many sums are the same.
    const ids = (nudge: number) =>
      chooseSupply(
        situation({
          rigs,
          demandGpm: 4500,
          hydrants: [1, 2, 3, 4, 5, 6, 7].map((number) => {
            const at = strong(number, 200 + 50 * number);
            const testGpm = at.hydrant.testGpm * (1 + nudge * (number % 2 ? 1 : -1));
            return { ...at, hydrant: { ...at.hydrant, testGpm } };
          }),
        }),
      ).ways.map(({ id }) => id);
    const exact = ids(0);
    expect(exact.length).toBeGreaterThan(5);
    for (const nudge of [1e-13, -1e-13, 1e-12, -1e-12]) expect(ids(nudge)).toEqual(exact);
  });
});
