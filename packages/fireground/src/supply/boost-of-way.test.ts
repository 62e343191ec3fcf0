import { supplyCurvePsi } from '@plugside/hydraulics';
import { describe, expect, it } from 'vitest';
import {
  boostOfWay,
  chooseSupply,
  newHydrant,
  newRig,
  type RespondingRig,
  type Situation,
} from '../index.ts';

const engine = (number: number, arrivesMin: number, assistValve: boolean): RespondingRig => ({
  rig: newRig(`E${number}`, 'attack', { ratedGpm: 1500, name: `Engine ${number}` }),
  kind: 'engine',
  arrivesMin,
  hose: [{ hose: '5', lengthFt: 800 }],
  assistValve,
});

const test = { staticPsi: 62, residualPsi: 44, testGpm: 1060 };
const situation = (more: Partial<Situation> = {}): Situation => ({
  title: 'Store',
  invented: true,
  scene: { name: 'Store', elevationFt: 0 },
  demandGpm: 600,
  rigs: [engine(1, 2, true), engine(2, 3, true)],
  hydrants: [
    { hydrant: newHydrant('H', { ...test, name: 'H-236' }), steamer: true, lengthFt: 700 },
  ],
  waters: [],
  fillPlaces: [],
  department: {},
  ...more,
});

const choose = (of: Situation, kind: string) =>
  chooseSupply(of).ways.find((way) => way.kind === kind)!;

describe('when to boost, of a way as it is', () => {
  it('has at the lay what the way itself brings, without a pump and with one', () => {
    const of = situation();
    const direct = choose(of, 'direct lay');
    const atLay = (found: ReturnType<typeof boostOfWay>) =>
      found!.points.find(({ lengthFt }) => lengthFt === 700)!;
    expect(atLay(boostOfWay(direct, of)).unassistedGpm).toBeCloseTo(direct.mostGpm, 3);
    const far = situation({ demandGpm: 1100 });
    const boosted = choose(far, 'boosted at the hydrant');
    expect(atLay(boostOfWay(boosted, far)).boostedGpm).toBeCloseTo(boosted.mostGpm, 3);
  });

  it('has it at the hose laid, in whole sections, not at the street under it', () => {
    const of = situation({
      hydrants: [
        {
          hydrant: newHydrant('H', { ...test, name: 'H-236', elevationFt: 30 }),
          steamer: true,
          lengthFt: 627,
        },
      ],
    });
    const direct = choose(of, 'direct lay');
    const found = boostOfWay(direct, of)!;
    expect(found.layFt).toBe(700);
    const { unassistedGpm } = found.points.find(({ lengthFt }) => lengthFt === 700)!;
    expect(unassistedGpm).toBeCloseTo(direct.mostGpm, 3);
    expect(found.points.map(({ lengthFt }) => lengthFt)).not.toContain(627);
  });

  it('counts what another hydrant of the way draws from the same main (by hand arithmetic)', () => {
    const at = (id: string, main: string) => ({
      hydrant: newHydrant(id, { ...test, name: id, main }),
      steamer: true,
      lengthFt: 700,
    });
    const of = (mains: [string, string]) =>
      situation({
        demandGpm: 1250,
        hydrants: [at('H-1', mains[0]), at('H-2', mains[1])],
        rigs: [1, 2, 3].map((number) => ({
          ...engine(number, number, false),
          hose: [{ hose: '5' as const, lengthFt: 1500 }],
        })),
      });
    const shared = of(['m', 'm']);
    const way = choose(shared, 'two hydrants');
    const found = boostOfWay(way, shared)!;
    expect(found.rule).toMatch(/Counted while H-[12] draws on the same main\.$/);
    // NFPA 291's curve at the flow of both; 5 psi at 1,000 gpm to the outlet; 20 psi left at the engine.
    const asked = found.demandGpm;
    const leftPsi = supplyCurvePsi(test, 1250) - 5 * (asked / 1000) ** 2 - 20;
    const handFt = (leftPsi / (0.08 * (asked / 100) ** 2)) * 100;
    expect(found.unassistedToFt).toBe(Math.floor(handFt / 100) * 100);
    expect(asked).toBeLessThan(1250);
    const apart = of(['m', 'n']);
    const alone = boostOfWay(choose(apart, 'two hydrants'), apart)!;
    expect(alone.rule).not.toContain('Counted while');
  });

  // 60 ft down to the building over 700 ft, level past it: 26 psi are won once, not again on the way.
  it('takes the ground past the building as level (by hand arithmetic)', () => {
    const of = situation({
      hydrants: [
        {
          hydrant: newHydrant('H', { ...test, name: 'H-236', elevationFt: 60 }),
          steamer: true,
          lengthFt: 700,
        },
      ],
      rigs: [1, 2].map((number) => ({
        ...engine(number, number, true),
        hose: [{ hose: '5' as const, lengthFt: 3000 }],
      })),
      demandGpm: 700,
    });
    const found = boostOfWay(choose(of, 'direct lay'), of)!;
    const leftPsi = supplyCurvePsi(test, 700) - 5 * 0.7 ** 2 + 0.434 * 60 - 20;
    const handFt = (leftPsi / (0.08 * 49)) * 100;
    expect(handFt).toBeGreaterThan(1000);
    expect(found.unassistedToFt).toBe(Math.floor(handFt / 100) * 100);
    expect(found.layFt).toBe(700);
  });

  it('looks no farther than the hose carried, and says so', () => {
    const of = situation({ demandGpm: 300 });
    const found = boostOfWay(choose(of, 'direct lay'), of)!;
    expect(found.carriedFt).toBe(1600);
    expect(found.rule).toBe(
      '300 gpm through 5 in: no second engine needed at H-236 as far as the hose reaches (1,600 ft).',
    );
    expect(Math.max(...found.points.map(({ lengthFt }) => lengthFt))).toBe(1600);
  });

  it('asks of a hydrant its share alone, where another brings the rest', () => {
    const of = situation({
      demandGpm: 1300,
      hydrants: [1, 2].map((number) => ({
        hydrant: newHydrant(`H${number}`, { ...test, main: `main ${number}` }),
        steamer: true,
        lengthFt: 600,
      })),
    });
    const way = chooseSupply(of).ways.find(({ sources }) => sources.length === 2)!;
    const shares = way.sources.map((sourceId) => boostOfWay(way, of, { sourceId })?.demandGpm ?? 0);
    expect(shares[0]! + shares[1]!).toBeCloseTo(1300, 6);
    expect(Math.min(...shares)).toBeGreaterThan(100);
  });

  it('of a way that falls short asks for what the way gives: its own lay is long enough for that', () => {
    const of = situation({ demandGpm: 3000 });
    const way = chooseSupply(of).ways.find(({ parts }) => parts![0]!.pumps.length === 1)!;
    expect(way.meetsDemand).toBe(false);
    const found = boostOfWay(way, of)!;
    expect(found.demandGpm).toBeCloseTo(way.mostGpm - 0.5, 1);
    expect(found.boostedToFt).toBeGreaterThanOrEqual(700);
  });

  it('is nothing where no second engine comes, or for no hydrant of the way', () => {
    const alone = situation({
      rigs: [{ ...engine(1, 2, true), hose: [{ hose: '5', lengthFt: 800 }] }],
    });
    expect(boostOfWay(choose(alone, 'direct lay'), alone)).toBeNull();
    const of = situation();
    expect(boostOfWay(choose(of, 'direct lay'), of, { sourceId: 'W1' })).toBeNull();
  });
});
