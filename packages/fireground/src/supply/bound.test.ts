import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type HoseSize,
  mostWater,
  newDraft,
  newHydrant,
  newRig,
  type RespondingRig,
} from '../index.ts';
import { mayBring } from './bound.ts';
import type { Leg, LegSource } from './leg.ts';
import { planOfLegs } from './leg-plan.ts';

const scene = { name: 'Scene', elevationFt: 20 };

const rig = (id: string, ratedGpm: number): RespondingRig => ({
  rig: newRig(id, 'attack', { ratedGpm }),
  kind: 'engine',
  arrivesMin: 0,
  hose: [],
  assistValve: false,
});

const sources: fc.Arbitrary<LegSource> = fc.oneof(
  fc
    .record({
      staticPsi: fc.integer({ min: 30, max: 110 }),
      dropPsi: fc.integer({ min: 5, max: 20 }),
      testGpm: fc.integer({ min: 400, max: 2500 }),
      elevationFt: fc.integer({ min: -60, max: 120 }),
      lengthFt: fc.integer({ min: 100, max: 2500 }),
    })
    .map(({ dropPsi, lengthFt, ...test }) => ({
      kind: 'hydrant' as const,
      at: {
        hydrant: newHydrant('H1', { ...test, residualPsi: test.staticPsi - dropPsi }),
        steamer: true,
        lengthFt,
      },
    })),
  fc.integer({ min: 100, max: 2500 }).map((lengthFt) => ({
    kind: 'water' as const,
    at: { draft: newDraft('W1', { waterElevationFt: 0 }), liftFt: 8, lengthFt },
  })),
);

const legs: fc.Arbitrary<Leg> = fc
  .record({
    source: sources,
    pumped: fc.boolean(),
    valve: fc.boolean(),
    ratedGpm: fc.constantFrom(1000, 1500, 2000),
    lines: fc.array(fc.constantFrom<HoseSize>('5', '4', '3'), { minLength: 1, maxLength: 2 }),
  })
  .map(({ source, pumped, valve, ratedGpm, lines }) => {
    const pumps = pumped || source.kind === 'water' ? [rig('E2', ratedGpm)] : [];
    return {
      source,
      pumps,
      stretches: [{ lines, fromFt: 0, toFt: source.at.lengthFt }],
      valve: valve && pumps.length > 0 && source.kind === 'hydrant',
      suction: [],
    };
  });

const mostOf = (leg: Leg) =>
  mostWater(
    planOfLegs(
      { title: '', invented: true, scene, demandGpm: 500, department: {} },
      rig('E1', 1500),
      [{ leg, suction: [] }],
      '',
    ),
  ).flowGpm;

describe('what a leg cannot bring', () => {
  it('is never less than what solving finds that it brings', () => {
    fc.assert(
      fc.property(legs, (leg) => {
        const mostGpm = mostOf(leg);
        if (mostGpm > 0) expect(mayBring(leg, mostGpm - 1e-3, scene, {})).toBe(true);
      }),
      { numRuns: 300, seed: 1 },
    );
  });

  it('is told where the lay alone forbids it: 1,000 ft of 5 in at 185 psi', () => {
    const source: LegSource = {
      kind: 'hydrant',
      at: {
        hydrant: newHydrant('H1', {
          staticPsi: 90,
          residualPsi: 80,
          testGpm: 2000,
          elevationFt: 20,
        }),
        steamer: true,
        lengthFt: 1000,
      },
    };
    const stretches = [{ lines: ['5' as const], fromFt: 0, toFt: 1000 }];
    const leg = { source, pumps: [rig('E2', 1500)], stretches, valve: false, suction: [] };
    // 185 psi less 20 at the intake for 0.08·Q² of friction per 100 ft of 5 in hose: √(165/0.8)·100 gpm.
    const allowsGpm = 100 * Math.sqrt(165 / 0.8);
    expect(mayBring(leg, allowsGpm - 1, scene, {})).toBe(true);
    expect(mayBring(leg, allowsGpm + 1, scene, {})).toBe(false);
  });

  it('is less than twice what solving finds, mostly: a bound that tells something', () => {
    const told = fc
      .sample(legs, { numRuns: 200, seed: 2 })
      .filter((leg) => !mayBring(leg, 2 * mostOf(leg) + 1, scene, {}));
    expect(told.length).toBeGreaterThan(150);
  });
});
