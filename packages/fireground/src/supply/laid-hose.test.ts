import { describe, expect, it } from 'vitest';
import {
  type Choice,
  chooseSupply,
  type HoseAboard,
  type HydrantAtHand,
  laidTexts,
  mostWater,
  newHydrant,
  newRig,
  type RespondingRig,
  readPlan,
  type Situation,
  type SupplyWay,
  type WayKind,
  writePlan,
} from '../index.ts';

const engine = (
  number: number,
  hose: readonly HoseAboard[],
  more: Partial<RespondingRig> = {},
): RespondingRig => ({
  rig: newRig(`E${number}`, 'attack', { name: `Engine ${number}`, ratedGpm: 1500 }),
  kind: 'engine',
  arrivesMin: 3 * (number - 1),
  hose,
  assistValve: false,
  ...more,
});

const five = (lengthFt: number): HoseAboard => ({ hose: '5', lengthFt });
const four = (lengthFt: number): HoseAboard => ({ hose: '4', lengthFt });

const hydrant = (
  id: string,
  lengthFt: number,
  [staticPsi, residualPsi, testGpm]: readonly [number, number, number] = [80, 70, 1500],
  more: Partial<HydrantAtHand> = {},
): HydrantAtHand => ({
  hydrant: newHydrant(id, { staticPsi, residualPsi, testGpm, main: `main of ${id}` }),
  steamer: true,
  lengthFt,
  ...more,
});

const choose = (more: Partial<Situation>): Choice =>
  chooseSupply({
    title: 'Works',
    invented: true,
    scene: { name: 'Works', elevationFt: 0 },
    demandGpm: 600,
    rigs: [engine(1, [five(1000)])],
    hydrants: [hydrant('H-1', 427)],
    waters: [],
    fillPlaces: [],
    department: {},
    ...more,
  });

const wayOf = ({ ways }: Choice, kind: WayKind): SupplyWay => {
  const way = ways.find((one) => one.kind === kind);
  if (!way) throw new Error(`No ${kind} among: ${ways.map(({ title }) => title).join('; ')}`);
  return way;
};
const dutyOf = ({ duties }: SupplyWay, id: string) =>
  duties.find(({ rigId }) => rigId === id)?.duty ?? '';

describe('hose is laid in whole sections', () => {
  const terrain = [{ alongFt: 300, elevationFt: 30 }];
  const way = wayOf(
    choose({ hydrants: [hydrant('H-1', 427, undefined, { terrain })] }),
    'direct lay',
  );

  it('500 ft of 5 in for 427 ft of street, in the plan and in what is told', () => {
    expect(way.plan!.lines.map(({ lengthFt }) => lengthFt)).toEqual([500]);
    expect(way).toMatchObject({ hoseFt: 500, hoseSections: 5 });
    expect(way.parts).toMatchObject([
      { lengthFt: 427, laidFt: 500, laidSections: { count: 5, sectionFt: 100 } },
    ]);
    expect(dutyOf(way, 'E1')).toContain('lays 500 ft of 5 in');
  });

  it('is told with the street under it', () => {
    expect(laidTexts(way.parts!, 'us')).toEqual([
      'H-1: 500 ft laid over 427 ft of street (5 sections of 100 ft)',
    ]);
  });

  it('hills stay at their place', () => {
    expect(way.plan!.lines[0]!.terrain).toEqual(terrain);
  });

  it('loses to friction what 500 ft lose: 0.08·(Q/100)²·5 from the main to 20 psi at the intake', () => {
    const { mostGpm, plan } = wayOf(choose({}), 'direct lay');
    const { state } = mostWater(plan!);
    expect(state.lines[0]!.frictionPsi).toBeCloseTo(0.08 * (mostGpm / 100) ** 2 * 5, 3);
  });

  it('takes 510 gal to fill 500 ft of 5 in (NWCG: 102 gal in 100 ft)', () => {
    const { steps } = wayOf(choose({}), 'direct lay').time;
    const fills = steps.find(({ text }) => text.includes('fills'))!;
    expect((fills.endMin - fills.startMin) * 500).toBeCloseTo(510, 0);
  });
});

describe('a lay longer than the hose of any one size', () => {
  const rigs = [engine(1, [five(800)]), engine(2, [four(1000)]), engine(3, [])];
  const choice = choose({ rigs, demandGpm: 500, hydrants: [hydrant('H-1', 1150)] });
  const way = wayOf(choice, 'direct lay');

  it('changes once, 5 in first and then 4 in, by an adapter that is named', () => {
    expect(way.title).toBe('5 in, then 4 in from H-1');
    expect(dutyOf(way, 'E1')).toContain('lays 800 ft of 5 in from H-1 to the point');
    expect(dutyOf(way, 'E2')).toContain('lays 400 ft of 4 in');
    expect(dutyOf(way, 'E2')).toContain('with an adapter from 5 in to 4 in');
    expect(choice.refused.map(({ reason }) => reason).join(' ')).not.toContain('1,150');
  });

  it('loses what both lose and 1 psi at 1,000 gpm in the adapter', () => {
    const { mostGpm, plan } = way;
    const q = mostGpm / 100;
    const { state } = mostWater(plan!);
    const inlet = state.lines[0]!.inletPsi;
    // 800 ft of 5 in at C 0.08, 400 ft of 4 in at C 0.2, down to the 20 psi of the intake.
    const lossPsi = q ** 2 * (0.08 * 8 + 0.2 * 4 + 0.01);
    expect(inlet - lossPsi).toBeCloseTo(20, 2);
  });

  it('is a plan that can be written, read and asked again', () => {
    const read = readPlan(writePlan(way.plan!));
    if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join(' '));
    expect(mostWater(read.plan).flowGpm).toBeCloseTo(way.mostGpm, 3);
  });

  it('is refused where two sizes together do not reach, and says so', () => {
    const short = [engine(1, [five(800)]), engine(2, [four(200)])];
    const { refused } = choose({ rigs: short, hydrants: [hydrant('H-1', 1150)] });
    expect(refused.map(({ reason }) => reason)).toContain(
      'The rigs carry 800 ft of 5 in and 200 ft of 4 in; the lay is 1,150 ft, and one size coupled to the next does not reach either.',
    );
  });
});

describe('an assist valve', () => {
  const valve = { assistValve: true };
  const hydrants = [hydrant('H-1', 400, [70, 50, 900]), hydrant('H-2', 600, [70, 50, 900])];
  const partsWithValve = (ways: readonly SupplyWay[]) =>
    ways.flatMap(({ parts = [] }) => parts.filter((part) => part.valve));

  it('counts where the engine that carries it pumps', () => {
    const rigs = [engine(1, [five(600)]), engine(2, [], valve)];
    const choice = choose({ rigs, hydrants: hydrants.slice(0, 1), demandGpm: 1000 });
    expect(wayOf(choice, 'boosted at the hydrant').parts![0]!.valve).toBe(true);
  });

  it('counts where the engine that carries it leaves the hydrant', () => {
    const rigs = [engine(1, [five(600)], valve), engine(2, [])];
    const choice = choose({ rigs, hydrants: hydrants.slice(0, 1), demandGpm: 1000 });
    expect(wayOf(choice, 'boosted at the hydrant').parts![0]!.valve).toBe(true);
  });

  it('does not where that engine is never at the hydrant: the pump stands in the line', () => {
    const rigs = [engine(1, [], valve), engine(2, [five(600)])];
    const { ways } = choose({ rigs, hydrants: hydrants.slice(0, 1), demandGpm: 1000 });
    expect(partsWithValve(ways)).toEqual([]);
    expect(ways.map(({ kind }) => kind)).toContain('reverse lay');
  });

  it('is used once: of two hydrants the one that its engine lays from or pumps at', () => {
    const rigs = [
      engine(1, [five(600)], valve),
      engine(2, [five(800)]),
      engine(3, [five(800)]),
      engine(4, []),
    ];
    const { ways } = choose({ rigs, hydrants, demandGpm: 2000 });
    const several = ways.filter(({ sources }) => sources.length > 1);
    expect(several.length).toBeGreaterThan(0);
    for (const way of several) {
      const withValve = (way.parts ?? []).filter((part) => part.valve);
      expect(withValve.length, way.title).toBeLessThan(2);
      // Engine 1 lays its own hose from one hydrant alone.
      for (const part of withValve) expect(dutyOf(way, 'E1')).toContain(part.sourceName);
    }
  });
});
