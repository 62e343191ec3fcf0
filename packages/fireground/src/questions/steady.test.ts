import { describe, expect, it } from 'vitest';
import {
  boostedAtHydrant,
  defaultLimits,
  draftSupply,
  mostWater,
  newRig,
  type Plan,
  relay,
  settingsFor,
} from '../index.ts';

const hydrant = { staticPsi: 62, residualPsi: 44, testGpm: 1060 };
const least = defaultLimits.leastDischargePsi;

const pumpOf = (plan: Plan) => plan.rigs.find(({ id }) => id !== plan.scene)!;
const pdpOf = ({ setting }: ReturnType<typeof pumpOf>) =>
  setting.mode === 'governed' ? setting.pdpPsi : 0;

describe('steady settings', () => {
  // 100 ft of 5 in at 500 gpm lose 0.08 × 5² × 1 = 2 psi: the next intake's 20 psi ask for 22 and a little.
  const short = relay({
    hydrant,
    pumps: 2,
    lay: { hose: '5', lengthFt: 100, riseFt: 0 },
  });
  const draft = draftSupply({ lay: { hose: '5', lengthFt: 100, riseFt: 0 } });

  it('raise a pump that would be set lower than it holds, and the next intake with it', () => {
    const found = settingsFor(draft, 500);
    const steady = settingsFor(draft, 500, { steady: true });
    expect(pdpOf(pumpOf(found.plan))).toBeLessThan(least);
    expect(pdpOf(pumpOf(steady.plan))).toBe(least);
    const intake = ({ state, plan }: typeof found) =>
      state.rigs.find(({ id }) => id === plan.scene)!.intakePsi;
    // With the flow given, pressure goes on psi for psi.
    expect(intake(steady) - intake(found)).toBeCloseTo(least - pdpOf(pumpOf(found.plan)), 4);
    expect(steady.possible).toBe(true);
    expect(steady.orders[0]!.radio).toMatch(/^Set 50 psi; /);
  });

  it('leave a pump that need not pump alone', () => {
    const steady = settingsFor(short, 100, { steady: true });
    expect(pumpOf(steady.plan).setting).toEqual({ mode: 'idle' });
  });

  it('leave the greatest flow and what stops it as they are', () => {
    const boosted = boostedAtHydrant({ hydrant, lay: { hose: '5', lengthFt: 900, riseFt: 35 } });
    for (const plan of [draft, short, boosted]) {
      const [found, steady] = [mostWater(plan), mostWater(plan, { steady: true })];
      expect(steady.flowGpm).toBe(found.flowGpm);
      expect(steady.binding.map(({ id }) => id)).toEqual(found.binding.map(({ id }) => id));
    }
  });

  it('are not raised where that breaks a limit: a pump at its most stays', () => {
    // 500 gpm pump in the line: 750 gpm, its wall, is reached with little more than its losses made up.
    const small = newRig('P1', 'relay', { ratedGpm: 500 });
    const strong = { staticPsi: 45, residualPsi: 40, testGpm: 1500 };
    const plan = relay({ hydrant: strong, pumps: 2, lay: { hose: '5', lengthFt: 300, riseFt: 0 } });
    const weakPump: Plan = {
      ...plan,
      rigs: plan.rigs.map((rig) =>
        rig.id === plan.scene ? rig : { ...small, id: rig.id, elevationFt: rig.elevationFt },
      ),
    };
    const most = mostWater(weakPump, { steady: true });
    expect(most.binding.map(({ kind }) => kind)).toContain('pump capability');
    expect(most.limits.filter((limit) => limit.passed && limit.weight === 'hard')).toEqual([]);
  });
});

describe('a lift that cannot be', () => {
  it('is told as vacuum: at 8,000 ft 22 ft of lift are over what air pressure holds up', () => {
    const lay = { hose: '5' as const, lengthFt: 300, riseFt: 0 };
    const plan = draftSupply({ liftFt: 22, altitudeFt: 8000, lay });
    const { flowGpm, noneReason } = mostWater(plan);
    expect(flowGpm).toBe(0);
    // 22 ft × 0.883 inHg/ft (design table of static water).
    expect(noneReason).toMatch(/stands at 19 inHg with no water moving; its limit is 16 inHg\./);
  });
});
