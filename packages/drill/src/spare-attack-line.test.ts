import { boostedAtHydrant, type Plan, patternList, whatNow } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { judge } from './judge.ts';
import { playedBy } from './played-by.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { rolesIn } from './scene-posts.ts';
import { withSpareAttackLine } from './spare-attack-line.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';

const plan = boostedAtHydrant({ title: 'Boosted', attackLines: [{}, {}] });
const withDischarges = (discharges: number): Plan => ({
  ...plan,
  rigs: plan.rigs.map((rig) => (rig.id === plan.scene ? { ...rig, discharges } : rig)),
});
const spareOf = (made: ReturnType<typeof withSpareAttackLine>) =>
  made.plan.lines.find(({ to }) => to === `${made.spareNozzle}.inlet`);

describe('a spare attack line', () => {
  it('comes off a free discharge of the engine at the scene, its nozzle shut', () => {
    const made = withSpareAttackLine(plan);
    // Common practice, no source: 200 ft of 1¾ in with a 150 gpm fog nozzle.
    expect(spareOf(made)).toMatchObject({ hose: '1-3/4', lengthFt: 200 });
    expect(spareOf(made)!.from).toMatch(/^A1\.discharge/);
    expect(plan.lines.map(({ from }) => from)).not.toContain(spareOf(made)!.from);
    expect(made.plan.nozzles.find(({ id }) => id === made.spareNozzle)).toMatchObject({
      open: false,
      ratedGpm: 150,
    });
  });

  it('needs a free discharge', () => {
    expect(withSpareAttackLine(withDischarges(3)).spareNozzle).toBeDefined();
    expect(withSpareAttackLine(withDischarges(2))).toEqual({ plan: withDischarges(2) });
  });

  it('needs hose that no line of the plan has taken, the smaller first', () => {
    const small = { hose: '1-3/4', lengthFt: 600 } as const;
    const large = { hose: '2-1/2', lengthFt: 250 } as const;
    expect(spareOf(withSpareAttackLine(plan, [small, large]))).toMatchObject({ hose: '1-3/4' });
    // Two lines of 200 ft are off the engine: 150 ft are left of 550.
    const most = { ...small, lengthFt: 550 };
    expect(spareOf(withSpareAttackLine(plan, [most, large]))).toMatchObject({ hose: '2-1/2' });
    expect(withSpareAttackLine(plan, [most])).toEqual({ plan });
  });

  it('is none where nothing at the scene has a nozzle', () => {
    const dry = { ...plan, nozzles: [], lines: plan.lines.filter(({ to }) => !/^N/.test(to)) };
    expect(withSpareAttackLine(dry)).toEqual({ plan: dry });
  });

  it.each(patternList.map((one) => [one.label, one.make()] as const))(
    '%s: changes nothing in what flows until it is called',
    (_label, laid) => {
      const { plan: grown, spareNozzle } = withSpareAttackLine(laid);
      const more = spareNozzle === undefined ? {} : { spareNozzle };
      const drill = createDrill(sceneFromPlan(grown, { start: 'water flowing', ...more }), 1);
      for (const { id, flowGpm } of whatNow(laid).state.nozzles)
        expect(drill.state.nozzles.find((one) => one.id === id)!.flowGpm).toBeCloseTo(flowGpm, 0);
      if (spareNozzle)
        expect(drill.state.nozzles.find(({ id }) => id === spareNozzle)!.flowGpm).toBe(0);
    },
  );

  it('brings water when it is called, by the computer’s hands, and is timed', () => {
    const { plan: grown, spareNozzle } = withSpareAttackLine(plan);
    const scene = sceneFromPlan(grown, { start: 'water flowing', spareNozzle: spareNozzle! });
    const drill = createDrill(scene, 1);
    const fault = { id: 'x', kind: 'line called', nozzle: spareNozzle! } as const;
    step(drill, [{ role: 'instructor', action: { do: 'arm fault', fault } }]);
    for (let tick = 0; tick < 60 * TICKS_PER_S; tick++)
      step(
        drill,
        rolesIn(scene).flatMap((role) => playedBy(role, scene, drill.state)),
      );
    expect(judge(scene, drill.state).find(({ key }) => key === 'extra line')).toMatchObject({
      met: true,
    });
  });
});
