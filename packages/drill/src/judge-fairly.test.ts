/** What is judged once, judged only where there was occasion, and told as it is. */
import { describe, expect, it } from 'vitest';
import type { DrillAction } from './action.ts';
import type { CriterionKey } from './criteria.ts';
import { createDrill } from './drill.ts';
import type { EventKind } from './event.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { evolutions } from './evolutions/index.ts';
import { tankToHydrant } from './evolutions/tank-to-hydrant.ts';
import type { Fault } from './fault.ts';
import { isJudged, judge } from './judge.ts';
import { playedBy } from './played-by.ts';
import { type PlayedRole, playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import { ordersShutDown } from './shut-down.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';
import { nextStep } from './steps-standing.ts';
import { act, run } from './test-drill.ts';

type Doer = PlayedRole | 'instructor';

const arm = (drill: Drill, fault: Fault) => act(drill, 'instructor', { do: 'arm fault', fault });
const judged = (drill: Drill, key: CriterionKey) =>
  judge(drill.scene, drill.state).find((one) => one.key === key)!;
const told = (drill: Drill, kind: EventKind) =>
  drill.log.flatMap((one) =>
    one.kind === 'event' && one.event.kind === kind ? [one.event.text] : [],
  );

describe('a crew that does nothing', () => {
  it.each(evolutions.map((one) => [one.title, one] as const))(
    '%s: has met nothing, however the scene stood at the start',
    (_, evolution) => {
      const drill = createDrill(evolution.scene(), 1);
      run(drill, 90);
      const counted = judge(drill.scene, drill.state).filter(isJudged);
      expect(counted.filter(({ met }) => met)).toEqual([]);
      expect(counted.length).toBeGreaterThan(0);
      expect(judged(drill, 'unsafe acts').notJudged).toBe('Nothing was done.');
    },
  );

  it('is judged by its water once it has worked a valve or a pump, and by what goes wrong at once', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    run(drill, 5);
    expect(isJudged(judged(drill, 'hose'))).toBe(false);
    act(drill, 'attack operator', { do: 'set governor', rig: 'A1', pdpPsi: 155 });
    run(drill, 1);
    const water = ['water interrupted', 'nozzle swing', 'hose', 'main', 'intake'] as const;
    expect(water.filter((key) => !isJudged(judged(drill, key)))).toEqual([]);
    expect(isJudged(judged(drill, 'surge'))).toBe(false);
    const failing = createDrill(boostThroughValve.scene(), 1);
    run(failing, 1);
    arm(failing, { id: 'k', kind: 'hose kinked', hose: 'lay', factor: 300 });
    run(failing, 20);
    expect(judged(failing, 'water interrupted').met).toBe(false);
    expect(isJudged(judged(failing, 'water interrupted'))).toBe(true);
  });
});

describe('one loss of water', () => {
  it('is no swing beside it: not as it comes, nor while it lasts, nor as it goes', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    run(drill, 5);
    for (const opening of [0, 1]) {
      act(drill, 'attack operator', {
        do: 'set valve',
        valve: 'A1.discharge1',
        opening,
        overS: 1.5,
      });
      run(drill, 15);
    }
    expect(judged(drill, 'water interrupted').value).toBeGreaterThan(13);
    expect(judged(drill, 'nozzle swing')).toMatchObject({ value: 0, met: true });
  });

  it('a swing that takes nobody’s water counts, in the seconds that it stood', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    run(drill, 5);
    act(drill, 'attack operator', { do: 'set governor', rig: 'A1', pdpPsi: 240 });
    run(drill, 15);
    const swing = judged(drill, 'nozzle swing');
    expect(swing.met).toBe(false);
    expect(judged(drill, 'water interrupted').value).toBe(0);
    // The governor's lag is 2 s: it has risen within 10 s of being set, 5 s into the drill.
    const { fromTick, toTick } = swing.moments[0]!;
    expect(fromTick).toBeGreaterThan(5 * TICKS_PER_S);
    expect(toTick).toBeLessThan(15 * TICKS_PER_S);
  });

  it('a weak stream is told with its flow; that there is none, when there is none', () => {
    const weak = createDrill(boostThroughValve.scene(), 1);
    run(weak, 2);
    act(weak, 'attack operator', { do: 'set governor', rig: 'A1', pdpPsi: 60 });
    run(weak, 20);
    const gpm = weak.state.nozzles[0]!.flowGpm;
    expect(gpm).toBeGreaterThan(60);
    expect(judged(weak, 'water interrupted').met).toBe(false);
    for (const text of told(weak, 'water lost at nozzle')) {
      expect(text).toMatch(/stream is weak: \d+ gpm of 150 gpm/);
      expect(text).not.toMatch(/without a stream/);
    }
    expect(told(weak, 'water lost at nozzle').length).toBe(2);
    const none = createDrill(boostThroughValve.scene(), 1);
    run(none, 2);
    act(none, 'attack operator', { do: 'set valve', valve: 'A1.discharge1', opening: 0 });
    run(none, 10);
    expect(told(none, 'water lost at nozzle').at(-1)).toMatch(/without a stream/);
  });
});

describe('an intake', () => {
  it('that opens onto a tank’s water rises through 20 psi: no caution, nothing counted', () => {
    const drill = createDrill(tankToHydrant.scene(), 7);
    for (let n = 0; n < 90 * TICKS_PER_S; n++)
      step(
        drill,
        playedRoles.flatMap((role) => playedBy(role, drill.scene, drill.state)),
      );
    expect(drill.state.tally.stepTicks.some(({ step }) => step === 'intake shut')).toBe(true);
    expect(told(drill, 'intake under limit')).toEqual([]);
    expect(judged(drill, 'intake').value).toBe(0);
  });

  it('that stands under it counts from its first moment, told once while it comes and goes', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    run(drill, 2);
    const kink = { id: 'k', kind: 'hose kinked', hose: 'lay', factor: 100 } as const;
    for (let n = 0; n < 3; n++) {
      arm(drill, kink);
      run(drill, 5);
      act(drill, 'instructor', { do: 'lift fault', fault: 'k' });
      run(drill, 5);
    }
    const { value, moments } = judged(drill, 'intake');
    expect(moments.length).toBe(3);
    expect(moments[0]!.fromTick).toBeLessThan(2.5 * TICKS_PER_S);
    expect(value).toBeGreaterThan(13);
    expect(told(drill, 'intake under limit').length).toBe(1);
  });
});

describe('a hose over its limit', () => {
  it('is told as it passes it, and again as it goes on, never “at” it', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    run(drill, 1);
    act(drill, 'attack operator', { do: 'set governor', rig: 'A1', pdpPsi: 335 });
    run(drill, 25);
    const texts = told(drill, 'hose over its limit').filter((text) => text.startsWith('Line 1'));
    expect(texts[0]).toBe('Line 1 passes its limit of 250 psi.');
    expect(texts.slice(1).length).toBeGreaterThanOrEqual(3);
    for (const text of texts.slice(1)) {
      const [, at, over] = /stands at (\d+) psi, (\d+) psi over its limit\.$/.exec(text)!;
      expect(Number(at) - Number(over)).toBe(250);
      expect(Number(over)).toBeGreaterThanOrEqual(25);
    }
    expect(texts.at(-1)).toMatch(/stands at 3[23]\d psi/);
  });
});

describe('what was left out', () => {
  it('is not put down to a fault of the last moment', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    run(drill, 57);
    arm(drill, { id: 'b', kind: 'hose burst', hose: 'lay' });
    run(drill, 1);
    for (const key of ['steps', 'messages'] as const) {
      expect(judged(drill, key).moments.length).toBeGreaterThan(0);
      expect(judged(drill, key).moments.filter(({ during }) => during !== undefined)).toEqual([]);
    }
    expect(judged(drill, 'water interrupted').moments[0]?.during).toMatch(/burst/);
  });
});

describe('an extra line that is called and taken back', () => {
  const call = (drill: Drill) =>
    arm(drill, { id: 'x', kind: 'line called', nozzle: drill.scene.spareNozzle! });
  const takeBack = (drill: Drill) => act(drill, 'instructor', { do: 'lift fault', fault: 'x' });

  it('in its time was never due; everyone hears so', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    call(drill);
    run(drill, 5);
    takeBack(drill);
    expect(drill.state.radio.at(-1)!.text).toMatch(/^Command no longer wants the extra line/);
    run(drill, 100);
    expect(judged(drill, 'extra line')).toBeUndefined();
    // Called again, it is timed anew.
    call(drill);
    run(drill, 61);
    expect(judged(drill, 'extra line')).toMatchObject({ value: undefined, met: false });
  });

  it('once its time is up stays missed', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    call(drill);
    run(drill, 70);
    takeBack(drill);
    run(drill, 5);
    expect(judged(drill, 'extra line')).toMatchObject({ value: undefined, met: false });
  });
});

describe('a shutdown', () => {
  const atItsEnd = (): Drill => {
    const drill = createDrill(tankToHydrant.scene(), 7);
    for (let n = 0; n < 120 * TICKS_PER_S; n++)
      step(
        drill,
        playedRoles.flatMap((role) => playedBy(role, drill.scene, drill.state)),
      );
    expect(judged(drill, 'steps').value).toBe(0);
    return drill;
  };
  const shutsDown = (drill: Drill) => {
    act(drill, 'nozzle crew', { do: 'set valve', valve: 'N1.bale', opening: 0, overS: 6 });
    run(drill, 8);
    act(drill, 'attack operator', { do: 'pump in gear', rig: 'A1', inGear: false });
    act(drill, 'attack operator', { do: 'set valve', valve: 'A1.tankToPump', opening: 0 });
    act(drill, 'hydrant operator', { do: 'set valve', valve: 'H1.stem', opening: 0, overS: 25 });
    run(drill, 30);
  };

  it('that nobody ordered undoes steps; one that command orders, or the crew calls, does not', () => {
    const none = atItsEnd();
    shutsDown(none);
    expect(judged(none, 'steps').value).toBeGreaterThan(0);
    const orders: [Doer, DrillAction][] = [
      ['instructor', { do: 'say', text: 'Command wants all lines shut down now.' }],
      ['attack operator', { do: 'radio', message: { preset: 'shutting down' } }],
    ];
    for (const [role, order] of orders) {
      const drill = atItsEnd();
      act(drill, role, order);
      shutsDown(drill);
      expect(judged(drill, 'steps')).toMatchObject({ value: 0, met: true });
    }
  });

  it('does not do what was never done, and ends when water is asked for again', () => {
    const drill = createDrill(tankToHydrant.scene(), 7);
    run(drill, 5);
    act(drill, 'attack operator', { do: 'radio', message: { preset: 'shutting down' } });
    expect(nextStep('attack operator', drill.scene, drill.state)).toBeUndefined();
    expect(judged(drill, 'steps').value).toBe(drill.scene.steps.length);
    act(drill, 'attack operator', { do: 'radio', message: { preset: 'send water' } });
    expect(nextStep('attack operator', drill.scene, drill.state)).toBeDefined();
  });

  it('is not ordered by words that say otherwise', () => {
    for (const text of ['Do not shut all lines down.', 'Shut the window, sit down.', 'All good.'])
      expect(ordersShutDown(text), text).toBe(false);
    for (const text of ['Shut everything down.', 'I want the line shut down.'])
      expect(ordersShutDown(text), text).toBe(true);
  });
});
