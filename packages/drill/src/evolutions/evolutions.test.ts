import { checkPlan, deferral, whatNow } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { createDrill } from '../drill.ts';
import { holds } from '../holds.ts';
import { judge } from '../judge.ts';
import { mayDo } from '../may-do.ts';
import { planNow } from '../plan-now.ts';
import { playedBy } from '../played-by.ts';
import { readAction } from '../read-action.ts';
import { playedRoles } from '../role.ts';
import type { Drill } from '../running-drill.ts';
import type { DrillScene } from '../scene.ts';
import { TICKS_PER_S } from '../state.ts';
import { step } from '../step.ts';
import { allStepsDone, forerunnersOf } from '../steps-standing.ts';
import { evolutionOf, evolutions } from './index.ts';

/** An evolution played by the computer to its end, and 30 s more for it to come to rest. */
function played(scene: DrillScene): Drill {
  const drill = createDrill(scene, 7);
  let rest = 30 * TICKS_PER_S;
  for (let tick = 0; tick < 15_000 && rest > 0; tick++) {
    step(
      drill,
      playedRoles.flatMap((role) => playedBy(role, scene, drill.state)),
    );
    if (allStepsDone(scene, drill.state)) rest--;
  }
  return drill;
}

/** Water in all hose and tanks, read off the state [gal]. */
function waterHeld({ state }: Drill): number {
  const hose = state.hoses.reduce((sum, { from, to }) => sum + from.waterGal + to.waterGal, 0);
  return hose + state.tanks.reduce((sum, { gal }) => sum + gal, 0);
}

describe.each(evolutions.map((one) => [one.title, one] as const))('%s', (_title, evolution) => {
  const scene = evolution.scene();
  const drill = played(scene);
  const { state } = drill;

  it('begins from a sound plan, and none of its steps is done at the start', () => {
    expect(checkPlan(scene.plan)).toEqual([]);
    const fresh = createDrill(scene, 1);
    expect(scene.steps.filter((one) => holds(one.done, scene, fresh.state))).toEqual([]);
  });

  it('asks for nothing that its role may not do, and names only what is there', () => {
    const ids = scene.steps.map((one) => one.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const one of scene.steps) {
      for (const action of one.how) {
        expect(readAction(action)).toEqual({ action });
        expect(mayDo(one.role, scene, action)).toBeUndefined();
      }
      for (const before of forerunnersOf(scene, one)) expect(ids).toContain(before);
      for (const words of [one.what, one.why, one.water]) expect(words).toMatch(/\w.*[.]$/);
    }
  });

  it('carries its cautions, and defers', () => {
    expect(evolution.cautions.at(-1)).toBe(deferral);
    expect(evolution.cautions.length).toBeGreaterThan(1);
  });

  it('is brought to its end by the computer in every role, nothing refused', () => {
    const done = state.tally.stepTicks.map((one) => one.step);
    expect(done.sort()).toEqual(scene.steps.map((one) => one.id).sort());
    expect(drill.log.filter((entry) => entry.kind === 'refused')).toEqual([]);
    expect(drill.log.filter((e) => e.kind === 'event' && e.event.kind === 'not solved')).toEqual(
      [],
    );
  });

  it('meets every benchmark when it is done by its steps', () => {
    expect(judge(scene, state).filter((one) => !one.met)).toEqual([]);
  });

  it('comes to rest at what the network solver says of the same settings, to 0.1 psi', () => {
    const still = whatNow(planNow(scene, state)).state;
    expect(still.rigs.length).toBeGreaterThan(0);
    for (const rig of still.rigs) {
      const pump = state.pumps.find((one) => one.rigId === rig.id)!;
      expect(Math.abs(pump.intakePsi - rig.intakePsi)).toBeLessThan(0.1);
      expect(Math.abs(pump.dischargePsi - rig.pdpPsi)).toBeLessThan(0.1);
      expect(Math.abs(pump.flowGpm - rig.flowGpm)).toBeLessThan(0.1);
    }
    for (const hydrant of still.hydrants) {
      const now = state.hydrants.find((one) => one.id === hydrant.id)!;
      expect(Math.abs(now.mainPsi - hydrant.mainPsi)).toBeLessThan(0.1);
    }
    for (const nozzle of still.nozzles) {
      const now = state.nozzles.find((one) => one.id === nozzle.id)!;
      expect(Math.abs(now.pressurePsi - nozzle.pressurePsi)).toBeLessThan(0.1);
    }
  });

  it('keeps every gallon: what came in is in hose and tanks, went through nozzles or was thrown', () => {
    const gained = waterHeld(drill) - waterHeld(createDrill(scene, 1));
    const { sourceGal, nozzleGal, wasteGal } = state.water;
    const throughput = sourceGal + Math.max(0, -gained);
    expect(throughput).toBeGreaterThan(100);
    expect(Math.abs(sourceGal - gained - nozzleGal - wasteGal)).toBeLessThan(0.001 * throughput);
  });
});

describe('evolutionOf', () => {
  it('finds each by its key, which its scene carries', () => {
    for (const one of evolutions) {
      expect(evolutionOf(one.key)).toBe(one);
      expect(one.scene().evolution).toBe(one.key);
    }
    expect(evolutionOf('no such')).toBeUndefined();
  });
});
