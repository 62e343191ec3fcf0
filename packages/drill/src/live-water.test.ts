/** Live ports, burst hose laid anew, air at an open intake, a clapper that sticks, a pump held shut. */
import { boostedAtHydrant, forwardLay, type Plan, whatNow } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import type { DrillAction } from './action.ts';
import { createDrill } from './drill.ts';
import type { EventKind } from './event.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { sideSuction } from './evolutions/side-suction.ts';
import type { Fault } from './fault.ts';
import { judge } from './judge.ts';
import type { PlayedRole } from './role.ts';
import type { Drill } from './running-drill.ts';
import { type SceneOptions, sceneFromPlan } from './scene-from-plan.ts';
import { step } from './step.ts';
import { run } from './test-drill.ts';

type Doer = PlayedRole | 'instructor';
const attack = 'attack operator';
const hydrant = 'hydrant operator';

/** @returns why it was refused; undefined: it was done */
function tried(drill: Drill, role: Doer, action: DrillAction): string | undefined {
  const entry = step(drill, [{ role, action }]).find(({ kind }) => kind === 'refused');
  return entry?.kind === 'refused' ? entry.problem.message : undefined;
}

function act(drill: Drill, role: Doer, action: DrillAction): void {
  expect(tried(drill, role, action)).toBeUndefined();
}

const arm = (drill: Drill, fault: Fault) => act(drill, 'instructor', { do: 'arm fault', fault });
const pumpOf = (drill: Drill, rig: string) => drill.state.pumps.find(({ rigId }) => rigId === rig)!;
const hoseOf = (drill: Drill, hose: string) => drill.state.hoses.find(({ id }) => id === hose)!;
const happened = (drill: Drill, kind: EventKind) =>
  drill.log.filter((entry) => entry.kind === 'event' && entry.event.kind === kind);
const unsafe = ({ scene, state }: Drill) =>
  judge(scene, state)
    .find(({ key }) => key === 'unsafe acts')!
    .moments.map(({ piece, note }) => [piece, note]);

const plan = boostedAtHydrant({ attackLines: [{}, {}] });
const flowing = (of: Plan = plan, more: Partial<SceneOptions> = {}) =>
  createDrill(sceneFromPlan(of, { start: 'water flowing', ...more }), 1);
/** 500 gal in the tank, its valve shut, the supply line flowing. */
const withTank = (() => {
  const laid = forwardLay({ attackLines: [{}, {}], attack: { pdpPsi: 170 } });
  return { ...laid, rigs: laid.rigs.map((rig) => ({ ...rig, tankGal: 500 })) };
})();

describe('a clock that the instructor has stopped', () => {
  it('lets nobody work anything, with the reason; the radio can be used', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    act(drill, 'instructor', { do: 'pause' });
    const couple = {
      do: 'couple',
      hose: 'suction',
      end: 'from',
      port: 'V1.pump-suction',
    } as const;
    expect(tried(drill, hydrant, couple)).toMatch(/clock is stopped/);
    act(drill, hydrant, { do: 'radio', message: { preset: 'copied' } });
    act(drill, 'instructor', { do: 'resume' });
    act(drill, hydrant, couple);
  });
});

describe('a live port', () => {
  it('takes no hose until its valve is shut', () => {
    const drill = createDrill(sideSuction.scene(), 1);
    act(drill, hydrant, { do: 'set valve', valve: 'H1.side1', opening: 1 });
    run(drill, 10);
    const couple = { do: 'couple', hose: 'side1', end: 'from', port: 'H1.side1' } as const;
    expect(tried(drill, hydrant, couple)).toMatch(
      /live at \d+ psi.*Shut first: Side outlet 1 gate/,
    );
    act(drill, hydrant, { do: 'set valve', valve: 'H1.side1', opening: 0 });
    run(drill, 10);
    act(drill, hydrant, couple);
    expect(unsafe(drill)).toEqual([]);
  });

  it('hose that is uncoupled under pressure is an unsafe act, and pouring hose is not coupled', () => {
    const drill = flowing();
    run(drill, 1);
    act(drill, attack, { do: 'uncouple', hose: 'lay', end: 'to' });
    expect(unsafe(drill)).toEqual([['lay', 'charged hose uncoupled']]);
    run(drill, 5);
    act(drill, attack, { do: 'set valve', valve: 'A1.intake1', opening: 0 });
    run(drill, 5);
    const couple = { do: 'couple', hose: 'lay', end: 'to', port: 'A1.intake1' } as const;
    expect(tried(drill, attack, couple)).toMatch(/Water pours/);
  });
});

describe('a valve that is asked for again while it moves', () => {
  it('goes on, and arrives when it would have', () => {
    const drill = flowing();
    const shut = { do: 'set valve', valve: 'A1.intake1', opening: 0, overS: 10 } as const;
    act(drill, attack, shut);
    for (let n = 0; n < 12; n++) {
      run(drill, 1);
      act(drill, attack, shut);
    }
    expect(drill.state.valves.find(({ id }) => id === 'A1.intake1')!.opening).toBe(0);
  });
});

describe('a burst hose that is put right', () => {
  it('is a new length after a minute, once it is shut down: empty, to be charged again, every gallon booked', () => {
    const drill = flowing();
    const waterHeld = () =>
      drill.state.hoses.reduce((sum, { from, to }) => sum + from.waterGal + to.waterGal, 0);
    const before = waterHeld();
    arm(drill, { id: 'b', kind: 'hose burst', hose: 'lay' });
    run(drill, 3);
    act(drill, 'instructor', { do: 'lift fault', fault: 'b' });
    run(drill, 61);
    // Water still pours: nobody lays hose into that.
    expect(hoseOf(drill, 'lay').phase).toBe('burst');
    expect(happened(drill, 'hose waits').length).toBe(1);
    act(drill, hydrant, { do: 'set valve', valve: 'B1.discharge1', opening: 0 });
    act(drill, hydrant, { do: 'set valve', valve: 'H1.stem', opening: 0 });
    run(drill, 40);
    expect(happened(drill, 'hose replaced').length).toBe(1);
    const lay = hoseOf(drill, 'lay');
    expect(lay).toMatchObject({ phase: 'filling', from: { waterGal: 0 }, to: { waterGal: 0 } });
    const { sourceGal, nozzleGal, wasteGal } = drill.state.water;
    expect(Math.abs(sourceGal - (waterHeld() - before) - nozzleGal - wasteGal)).toBeLessThan(0.1);
    act(drill, hydrant, { do: 'set valve', valve: 'H1.stem', opening: 1 });
    act(drill, attack, { do: 'set valve', valve: 'A1.intake1.bleeder', opening: 1 });
    run(drill, 120);
    expect(hoseOf(drill, 'lay').phase).toBe('full');
  });
});

describe('an intake that stands open on a burst hose', () => {
  const burst = () => {
    const drill = flowing(withTank);
    arm(drill, { id: 'b', kind: 'hose burst', hose: 'lay' });
    act(drill, attack, { do: 'set valve', valve: 'A1.tankToPump', opening: 1 });
    return drill;
  };

  it('lets air in that costs the pump its prime, with a full tank behind it', () => {
    const drill = burst();
    act(drill, hydrant, { do: 'set valve', valve: 'H1.stem', opening: 0 });
    run(drill, 30);
    expect(happened(drill, 'air sucked in').length).toBeGreaterThan(0);
    expect(pumpOf(drill, 'A1').condition).toBe('lost prime');
    expect(drill.state.nozzles[0]!.flowGpm).toBe(0);
  });

  it('once it is shut, the tank gives the water', () => {
    const drill = burst();
    act(drill, attack, { do: 'set valve', valve: 'A1.intake1', opening: 0 });
    run(drill, 15);
    expect(pumpOf(drill, 'A1').condition).toBe('pumping');
    expect(drill.state.nozzles[0]!.flowGpm).toBeGreaterThan(140);
  });
});

describe('a clapper that sticks', () => {
  it('sticks where it stands: open, the supply goes on; shut, it stays shut', () => {
    const open = createDrill(boostThroughValve.scene(), 1);
    run(open, 1);
    arm(open, { id: 'c', kind: 'clapper stuck', valve: 'V1' });
    run(open, 5);
    expect(open.state.assistValves[0]!.clapper).toBe('stuck open');
    expect(open.state.nozzles[0]!.flowGpm).toBeGreaterThan(140);
    expect(happened(open, 'water lost at nozzle')).toEqual([]);

    const shut = flowing();
    arm(shut, { id: 'c', kind: 'clapper stuck', valve: 'V1' });
    arm(shut, { id: 'd', kind: 'pump dies', rig: 'B1' });
    run(shut, 10);
    expect(shut.state.assistValves[0]!.clapper).toBe('stuck shut');
  });

  it('open, lets boosted water run back to the suction: the boost comes to little', () => {
    // The network that is stuck open, by the solver's own valve without a clapper: water runs round.
    const drill = flowing();
    const boosted = drill.state.assistValves[0]!.supplyPsi;
    expect(drill.state.assistValves[0]!.clapper).toBe('shut');
    arm(drill, { id: 'c', kind: 'clapper stuck open', valve: 'V1' });
    run(drill, 5);
    // It stands shut under the boost: nothing yet.
    expect(drill.state.assistValves[0]!.clapper).toBe('shut');
    act(drill, hydrant, { do: 'set governor', rig: 'B1', pdpPsi: 0 });
    run(drill, 15);
    expect(drill.state.assistValves[0]!.clapper).toBe('stuck open');
    act(drill, hydrant, { do: 'set governor', rig: 'B1', pdpPsi: 120 });
    run(drill, 20);
    const { clapperGpm, supplyPsi } = drill.state.assistValves[0]!;
    expect(clapperGpm).toBeLessThan(-100);
    expect(supplyPsi).toBeLessThan(boosted);
    // What runs back comes in again: the hydrant gives what the nozzles take, and no more.
    const nozzles = drill.state.nozzles.reduce((sum, { flowGpm }) => sum + flowGpm, 0);
    expect(Math.abs(drill.state.hydrants[0]!.flowGpm - nozzles)).toBeLessThan(1);
    act(drill, 'instructor', { do: 'lift fault', fault: 'c' });
    run(drill, 10);
    expect(drill.state.assistValves[0]!.clapper).toBe('shut');
    const still = whatNow(plan).state.rigs.find(({ id }) => id === 'A1')!;
    expect(pumpOf(drill, 'A1').intakePsi).toBeCloseTo(still.intakePsi, 0);
  });
});

describe('a pump held shut', () => {
  it('is told of and judged after three minutes; a cracked tank fill carries the heat away', () => {
    for (const fill of [0, 1]) {
      const drill = flowing(withTank, { tanksGal: { A1: 100 } });
      for (const n of [1, 2])
        act(drill, 'nozzle crew', { do: 'set valve', valve: `N${n}.bale`, opening: 0, overS: 5 });
      act(drill, attack, { do: 'set valve', valve: 'A1.tankFill', opening: fill });
      run(drill, 178);
      expect(happened(drill, 'pump heats')).toEqual([]);
      run(drill, 10);
      expect(happened(drill, 'pump heats').length).toBe(fill === 0 ? 1 : 0);
      expect(unsafe(drill)).toEqual(fill === 0 ? [['A1', 'pump dead-ended']] : []);
    }
  });
});

describe('a pump in gear without water', () => {
  it('is told of and judged after a minute, unless it is taken out of gear or finds water', () => {
    for (const stops of [false, true]) {
      const scene = sceneFromPlan(withTank, {
        start: 'water flowing',
        openings: { 'A1.intake1': 0, 'A1.tankToPump': 0 },
      });
      const drill = createDrill(scene, 1);
      act(drill, attack, { do: 'set throttle', rig: 'A1', speedFraction: 1.1 });
      run(drill, 50);
      expect(pumpOf(drill, 'A1').condition).toBe('lost prime');
      expect(unsafe(drill)).toEqual([]);
      if (stops) act(drill, attack, { do: 'pump in gear', rig: 'A1', inGear: false });
      run(drill, 150);
      expect(happened(drill, 'pump heats').length).toBe(stops ? 0 : 1);
      expect(unsafe(drill)).toEqual(stops ? [] : [['A1', 'pump run dry']]);
    }
  });
});
