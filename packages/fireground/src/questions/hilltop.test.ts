import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  mostWater,
  newHydrant,
  newLine,
  newPlan,
  newRig,
  type Plan,
  settingsFor,
} from '../index.ts';

const PSI_PER_FT = 0.434;
/** 62 psi static, 44 at 1,060 gpm. */
const main = (gpm: number) => 62 - 18 * (gpm / 1060) ** (1 / 0.54);
/** Main to steamer: 5 psi at 1,000 gpm. */
const steamer = (gpm: number) => 5 * (gpm / 1000) ** 2;
/** 5 in hose, C 0.08. */
const hose = (gpm: number, lengthFt: number) => (0.08 * (gpm / 100) ** 2 * lengthFt) / 100;

/** 1,000 ft of 5 in hose over a summit halfway, both ends at 0 ft. */
function planOver(
  summitFt: number,
  pumped = false,
  limits: Plan['department']['limits'] = {},
): Plan {
  const lay = newLine('lay', pumped ? 'P1.discharge1' : 'H1.steamer', 'A1.intake1', '5', 1000);
  return newPlan({
    title: 'Over a hill',
    scene: 'A1',
    hydrants: [newHydrant('H1', { staticPsi: 62, residualPsi: 44, testGpm: 1060 })],
    rigs: [
      ...(pumped ? [newRig('P1', 'booster', { ratedGpm: 2000 })] : []),
      newRig('A1', 'attack'),
    ],
    lines: [
      ...(pumped ? [newLine('suction', 'H1.steamer', 'P1.intake1', '5', 25)] : []),
      { ...lay, terrain: [{ alongFt: 500, elevationFt: summitFt }] },
    ],
    department: { limits },
  });
}

/** Where a falling function is nothing. */
function zeroOf(of: (gpm: number) => number): number {
  let [low, high] = [0, 5000];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (of(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

describe('hose over a hill', () => {
  it('a direct lay ends where the summit has no pressure left: by hand', () => {
    const answer = mostWater(planOver(100));
    const byHand = zeroOf((gpm) => main(gpm) - steamer(gpm) - hose(gpm, 500) - 100 * PSI_PER_FT);
    expect(answer.flowGpm).toBeCloseTo(byHand, 1);
    expect(answer.binding).toMatchObject([
      {
        id: 'hilltop pressure:lay',
        label: 'Hilltop on Hydrant H1 to Rig A1',
        limit: 0,
        sense: 'min',
        unit: 'psi',
        weight: 'hard',
        origin: { kind: 'common practice' },
      },
    ]);
    // Both ends are fine there.
    expect(answer.state.sceneIntakePsi).toBeGreaterThan(30);
    expect(answer.state.hydrants[0]!.mainPsi).toBeGreaterThan(40);
  });

  it('a low hill changes nothing', () => {
    const flat = {
      ...planOver(0),
      lines: planOver(0).lines.map(({ terrain: _, ...line }) => line),
    };
    expect(mostWater(planOver(20)).flowGpm).toBeCloseTo(mostWater(flat).flowGpm, 6);
  });

  it('a department may ask for more on a hill', () => {
    const byHand = zeroOf(
      (gpm) => main(gpm) - steamer(gpm) - hose(gpm, 500) - 100 * PSI_PER_FT - 10,
    );
    const answer = mostWater(planOver(100, false, { hilltopPsi: 10 }));
    expect(answer.flowGpm).toBeCloseTo(byHand, 1);
    expect(answer.binding).toMatchObject([{ limit: 10, origin: { kind: 'department' } }]);
  });

  it('a pump before the hill is set to bring the water over it, though the intake needs less', () => {
    // Half the lay's friction and the height: the way down gives the engine more than its 20 psi.
    const { plan, possible } = settingsFor(planOver(150, true), 900);
    expect(possible).toBe(true);
    const pump = plan.rigs.find(({ id }) => id === 'P1')!;
    const pdpPsi = pump.setting.mode === 'governed' ? pump.setting.pdpPsi : 0;
    expect(pdpPsi).toBeCloseTo(hose(900, 500) + 150 * PSI_PER_FT, 2);
  });

  it('a hill that no flow comes over is said to be the reason', () => {
    const { flowGpm, noneReason } = mostWater(planOver(150));
    expect(flowGpm).toBe(0);
    expect(noneReason).toMatch(/Hilltop on Hydrant H1 to Rig A1 stands at [−-]3 psi/);
  });

  it('answers keep it, whatever the hill', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -60, max: 260 }),
        fc.boolean(),
        fc.double({ min: 0.2, max: 0.98, noNaN: true }),
        (summitFt, pumped, share) => {
          const plan = planOver(summitFt, pumped);
          const answer = mostWater(plan);
          fc.pre(answer.flowGpm > 10);
          const least = ({ state }: Pick<typeof answer, 'state'>) =>
            state.lines.find(({ id }) => id === 'lay')!.hilltopPsi!;
          expect(least(answer)).toBeGreaterThan(-0.05);
          const set = settingsFor(plan, share * answer.flowGpm);
          expect(set.possible).toBe(true);
          expect(least(set)).toBeGreaterThan(-0.05);
        },
      ),
      { numRuns: 60, seed: 31 },
    );
  });
});
