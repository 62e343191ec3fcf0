import { boostedAtHydrant, patternList, whatNow } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { planNow } from './plan-now.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { step } from './step.ts';

const plans = patternList.map((pattern) => [pattern.label, pattern.make()] as const);

describe.each(plans)('a scene from the pattern: %s', (_title, plan) => {
  it('with water flowing begins at rest, at what the solver says of the plan, to 0.1 psi', () => {
    const drill = createDrill(sceneFromPlan(plan, { start: 'water flowing' }), 1);
    const still = whatNow(plan).state;
    const rest = () => {
      for (const rig of still.rigs) {
        const pump = drill.state.pumps.find(({ rigId }) => rigId === rig.id)!;
        expect(Math.abs(pump.intakePsi - rig.intakePsi)).toBeLessThan(0.1);
        expect(Math.abs(pump.dischargePsi - rig.pdpPsi)).toBeLessThan(0.1);
      }
      for (const nozzle of still.nozzles) {
        const now = drill.state.nozzles.find(({ id }) => id === nozzle.id)!;
        expect(Math.abs(now.flowGpm - nozzle.flowGpm)).toBeLessThan(0.1);
      }
    };
    rest();
    for (let n = 0; n < 40; n++) step(drill);
    rest();
    const { sourceGal, nozzleGal, wasteGal } = drill.state.water;
    expect(Math.abs(sourceGal - nozzleGal - wasteGal)).toBeLessThan(0.001 * sourceGal);
    expect(planNow(drill.scene, drill.state).lines.map(({ id }) => id)).toEqual(
      plan.lines.map(({ id }) => id),
    );
  });

  it('with hose laid or connected begins dry, every valve shut, every pump out of gear', () => {
    for (const start of ['hose laid', 'hose connected'] as const) {
      const scene = sceneFromPlan(plan, { start });
      const drill = createDrill(scene, 1);
      for (let n = 0; n < 40; n++) step(drill);
      expect(drill.state.water.sourceGal).toBe(0);
      for (const hose of drill.state.hoses) {
        expect(hose.phase).toBe('filling');
        expect(hose.from.waterGal + hose.to.waterGal).toBe(0);
        expect(hose.from.port === null).toBe(start === 'hose laid');
      }
      expect(drill.state.valves.every(({ opening }) => opening === 0)).toBe(true);
      expect(drill.state.pumps.every(({ inGear }) => !inGear)).toBe(true);
    }
  });

  it('gives every piece to somebody', () => {
    const { posts } = sceneFromPlan(plan, { start: 'hose laid' });
    const held = new Set(Object.values(posts).flat());
    for (const piece of [
      plan.hydrants,
      plan.drafts,
      plan.rigs,
      plan.appliances,
      plan.nozzles,
    ].flat())
      expect(held.has(piece.id)).toBe(true);
  });
});

describe('sceneFromPlan', () => {
  const plan = boostedAtHydrant({ attackLines: [{}] });

  it('keeps a gated line at its loss: the valve stands where its bore costs that much', () => {
    const gated = {
      ...plan,
      lines: plan.lines.map((line) =>
        line.id === 'attack1' ? { ...line, valve: { gated: { lossPsi: 30, atGpm: 150 } } } : line,
      ),
    };
    const drill = createDrill(sceneFromPlan(gated, { start: 'water flowing' }), 1);
    const still = whatNow(gated).state.nozzles[0]!;
    expect(Math.abs(drill.state.nozzles[0]!.flowGpm - still.flowGpm)).toBeLessThan(0.1);
  });

  it('refuses what it cannot play, and says what to do', () => {
    const shut = {
      ...plan,
      lines: plan.lines.map((line) =>
        line.id === 'lay' ? { ...line, valve: 'shut' as const } : line,
      ),
    };
    expect(() => sceneFromPlan(shut, { start: 'hose laid' })).toThrow(
      /lay is shut .* Open the line/,
    );
    expect(() => sceneFromPlan({ ...plan, scene: 'Z9' }, { start: 'hose laid' })).toThrow(
      RangeError,
    );
    expect(() => sceneFromPlan(plan, { start: 'hose laid', openings: { 'Z9.stem': 1 } })).toThrow(
      /no "Z9.stem" in the plan/,
    );
    expect(() => sceneFromPlan(plan, { start: 'hose laid', openings: { 'H1.stem': 2 } })).toThrow(
      /from 0 to 1/,
    );
    expect(() => sceneFromPlan(plan, { start: 'hose laid', outOfGear: ['Z9'] })).toThrow(/Z9/);
    expect(() => createDrill(sceneFromPlan(plan, { start: 'hose laid' }), -1)).toThrow(
      /seed is -1/,
    );
  });

  it('bursts a hose at three times its service test (from memory): 185 psi supply hose at 610', () => {
    const lay = sceneFromPlan(plan, { start: 'hose laid' }).hoses.find(({ id }) => id === 'lay')!;
    expect(lay.limitPsi).toBe(185);
    expect(lay.burstPsi).toBeCloseTo(3 * 1.1 * 185, 6);
  });
});
