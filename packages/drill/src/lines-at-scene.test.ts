import { demandOf, forwardLay, type Plan } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { withLinesAtScene } from './lines-at-scene.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { withSpareAttackLine } from './spare-attack-line.ts';

const whole = forwardLay({
  hydrant: { staticPsi: 80, residualPsi: 60, testGpm: 2000 },
  lay: { hose: '5', lengthFt: 300 },
  attackLines: [{}],
});
/** As a way to supply a building has it: nothing beyond the engine at the scene. */
const bare = (demandGpm?: number, more: object = {}): Plan => {
  const { demandGpm: _, ...rest } = whole;
  return {
    ...rest,
    ...(demandGpm !== undefined && { demandGpm }),
    nozzles: [],
    lines: whole.lines.filter(({ to }) => !to.startsWith('N')),
    rigs: whole.rigs.map((rig) => ({
      ...rig,
      setting: { mode: 'idle' },
      ratedGpm: 1500,
      discharges: 6,
      ...more,
    })),
  };
};
const ratings = ({ nozzles }: Plan) =>
  nozzles.map((one) => (one.kind === 'fog' ? one.ratedGpm : Number.NaN));

describe('lines at the fire for a plan that has none', () => {
  it.each([
    [undefined, [150, 150]],
    [150, [150]],
    [300, [150, 150]],
    [1000, [150, 150, 350, 350]],
    [1500, [150, 150, 400, 400, 400]],
    // No more than the pump is rated for.
    [3000, [150, 150, 400, 400, 400]],
  ])('take the demand: %s gpm by %j', (demandGpm, expected) => {
    const plan = withLinesAtScene(bare(demandGpm));
    expect(ratings(plan)).toEqual(expected);
    const { demandGpm: _, ...own } = plan;
    expect(demandOf(own)).toBe(expected.reduce((sum, gpm) => sum + gpm, 0));
  });

  it('leave a discharge for a line that is called', () => {
    for (const discharges of [2, 3, 4]) {
      const plan = withLinesAtScene(bare(1500, { discharges }));
      expect(plan.nozzles).toHaveLength(discharges - 1);
      expect(withSpareAttackLine(plan).spareNozzle).toBeDefined();
    }
    expect(withLinesAtScene(bare(1500, { discharges: 1 })).nozzles).toEqual([]);
  });

  it('flow what they are rated for when the plan runs', () => {
    const scene = sceneFromPlan(withLinesAtScene(bare(1000)), { start: 'water flowing' });
    const { nozzles, pumps } = createDrill(scene, 1).state;
    for (const [at, rated] of [150, 150, 350, 350].entries()) {
      // The pump is set to the next 5 psi up: a fog nozzle's flow grows as the root of its pressure.
      expect(nozzles[at]!.flowGpm).toBeGreaterThan(rated * 0.98);
      expect(nozzles[at]!.flowGpm).toBeLessThan(rated * 1.06);
    }
    expect(pumps[0]!.inGear).toBe(true);
  });

  it('are not added to a plan whose engine feeds something', () => {
    expect(withLinesAtScene(whole)).toBe(whole);
  });
});
