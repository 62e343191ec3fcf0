import { describe, expect, it } from 'vitest';
import type { BoostQuestion, RespondingRig } from '../index.ts';
import {
  boostedAtHydrant,
  compareBoost,
  newHydrant,
  newRig,
  sweep,
  whenToBoost,
} from '../index.ts';

const engine = (id: string, arrivesMin: number, assistValve: boolean): RespondingRig => ({
  rig: newRig(id, 'attack', { ratedGpm: 1500 }),
  kind: 'engine',
  arrivesMin,
  hose: [],
  assistValve,
});

const test = { staticPsi: 62, residualPsi: 44, testGpm: 1060 };
const asked = (more: Partial<BoostQuestion> = {}): BoostQuestion => ({
  hydrant: newHydrant('H1', test),
  hose: '5',
  rigs: [engine('E1', 0, true), engine('E2', 3, false)],
  demandGpm: 750,
  lengths: [],
  ...more,
});

describe('when a second engine at the hydrant pays', () => {
  it('is where the comparison of the boosted lay says, the long way round', () => {
    const plan = { ...boostedAtHydrant({ hydrant: test, lay: { hose: '5' } }), demandGpm: 750 };
    const { boostPaysFromFt } = compareBoost(plan);
    expect(whenToBoost(asked()).unassistedToFt).toBeCloseTo(boostPaysFromFt!, 0);
  });

  it('has the flows of a sweep of the same lay', () => {
    const lengths = [200, 900, 1800];
    const plan = boostedAtHydrant({ hydrant: test, lay: { hose: '5' } });
    const swept = sweep(plan, { vary: 'lay length', values: lengths });
    const { points } = whenToBoost(asked({ lengths }));
    points.forEach(({ boostedGpm }, at) => {
      expect(boostedGpm).toBeCloseTo(swept[at]!.flowGpm, 3);
    });
  });

  it('comes to the worked case without a valve: 842 gpm through 600 ft of 5 in from 80/60 psi at 1,200 gpm ("Water-supply analysis", slide 1, formulas; worked by hand)', () => {
    // There the hydrant loses nothing of its own, and a valve 0.22 psi at 100 gpm on the way.
    const hydrant = newHydrant('H1', {
      staticPsi: 80,
      residualPsi: 60,
      testGpm: 1200,
      steamerLoss: { lossPsi: 22, atGpm: 1000 },
    });
    const rigs = [engine('E1', 0, false), engine('E2', 3, false)] as const;
    const found = whenToBoost(asked({ hydrant, rigs, demandGpm: 841.917 }));
    expect(found.throughValve).toBe(false);
    expect(whenToBoost(asked()).throughValve).toBe(true);
    expect(Math.abs(found.unassistedToFt! - 600)).toBeLessThan(2);
  });

  it('is said rounded down to a section of hose, in the units asked for', () => {
    const answer = whenToBoost(asked());
    const sections = Math.floor(answer.unassistedToFt! / 100) * 100;
    expect(answer.rule).toContain(
      `Past ${sections} ft from this hydrant, second engine to the hydrant`,
    );
    const si = whenToBoost(asked(), { units: 'si' }).rule;
    expect(si).toContain(`Past ${Math.round(sections * 0.3048)} m from this hydrant`);
    expect(si).toContain('L/min');
  });

  it('comes sooner uphill, and later with two lines', () => {
    const level = whenToBoost(asked()).unassistedToFt!;
    expect(whenToBoost(asked({ riseFtPer100: 3 })).unassistedToFt).toBeLessThan(level);
    expect(whenToBoost(asked({ count: 2 })).unassistedToFt).toBeGreaterThan(level);
  });

  it('says so where boosting is needed at any distance, and where it does not help', () => {
    // 1,300 gpm leave the main of this hydrant at 35.7 psi; its own losses and the valve take 25 of them.
    const anywhere = whenToBoost(asked({ demandGpm: 1300 }));
    expect(anywhere.unassistedToFt).toBeNull();
    expect(anywhere.boostedToFt).toBeGreaterThan(100);
    expect(anywhere.rule).toContain('at any distance');
    const never = whenToBoost(asked({ demandGpm: 3000 }));
    expect([never.unassistedToFt, never.boostedToFt]).toEqual([null, null]);
    expect(never.rule).toContain('does not give');
  });

  it('refuses no demand, one rig, a length of nothing', () => {
    expect(() => whenToBoost(asked({ demandGpm: 0 }))).toThrow('demandGpm is 0');
    expect(() => whenToBoost(asked({ lengths: [0] }))).toThrow('lengths has 0');
    const one = [engine('E1', 0, true)] as unknown as BoostQuestion['rigs'];
    expect(() => whenToBoost(asked({ rigs: one }))).toThrow('rigs has 1');
  });
});
