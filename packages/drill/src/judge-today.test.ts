/** What is judged, how it adds up, and who cannot get round it. */
import { forwardLay } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import type { CriterionKey } from './criteria.ts';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { evolutions } from './evolutions/index.ts';
import { isJudged, judge } from './judge.ts';
import { playedBy } from './played-by.ts';
import { playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';
import { act, run } from './test-drill.ts';
import { inUnits } from './words/in-units.ts';
import { momentWords } from './words/judgement-words.ts';

const judged = (drill: Drill, key: CriterionKey) =>
  judge(drill.scene, drill.state).find((one) => one.key === key)!;

const onTank = () => {
  const plan = forwardLay({ attackLines: [{}, {}], attack: { pdpPsi: 170 } });
  const rigs = plan.rigs.map((rig) => ({ ...rig, tankGal: 750 }));
  return { ...plan, rigs };
};

describe('a drill in which nobody does anything', () => {
  it.each(evolutions.map((one) => [one.title, one] as const))(
    '%s: every step and message is missed; what had no occasion is not judged',
    (_, evolution) => {
      const drill = createDrill(evolution.scene(), 1);
      run(drill, 60);
      const { steps, expectedMessages } = drill.scene;
      expect(judged(drill, 'steps')).toMatchObject({ value: steps.length, met: false });
      expect(judged(drill, 'messages')).toMatchObject({
        value: expectedMessages.length,
        met: false,
      });
      expect(isJudged(judged(drill, 'order'))).toBe(false);
      expect(isJudged(judged(drill, 'connections'))).toBe(false);
      expect(isJudged(judged(drill, 'time to boost'))).toBe(false);
      // What was met without anybody's doing is nobody's merit, water or no water.
      const met = judge(drill.scene, drill.state).filter((one) => isJudged(one) && one.met);
      expect(met).toEqual([]);
    },
  );
});

describe('steps', () => {
  it('that were undone again are not done', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    act(drill, 'hydrant operator', {
      do: 'couple',
      hose: 'suction',
      end: 'from',
      port: 'V1.pump-suction',
    });
    const all = drill.scene.steps.length;
    expect(judged(drill, 'steps').value).toBe(all - 1);
    act(drill, 'hydrant operator', { do: 'uncouple', hose: 'suction', end: 'from' });
    expect(judged(drill, 'steps').value).toBe(all);
    expect(judged(drill, 'steps').moments[0]).toMatchObject({
      piece: 'suction on valve',
      note: 'undone again',
    });
  });
});

describe('seconds', () => {
  it('of two nozzles without water at once count once, each told below', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    run(drill, 1);
    for (const n of [1, 2])
      act(drill, 'attack operator', {
        do: 'set valve',
        valve: `A1.discharge${n}`,
        opening: 0,
        overS: 1,
      });
    run(drill, 20);
    const { value, pieces, moments } = judged(drill, 'water interrupted');
    expect(moments.map(({ piece }) => piece).sort()).toEqual(['N1', 'N2']);
    const of = (piece: string) => pieces!.find((one) => one.piece === piece)!.s;
    // Both shut within a tick of each other, and stay so to the end.
    expect(value).toBe(Math.max(of('N1'), of('N2')));
    expect(value).toBeLessThan(20.2);
    expect(of('N1') + of('N2')).toBeGreaterThan(36);
  });
});

describe('what is no way round', () => {
  it('a bale at 90 %, or cracked: a nozzle that has had water counts until its crew shuts it', () => {
    for (const opening of [0.9, 0.3]) {
      const drill = createDrill(boostThroughValve.scene(), 1);
      run(drill, 1);
      act(drill, 'nozzle crew', { do: 'set valve', valve: 'N1.bale', opening });
      run(drill, 2);
      expect(judged(drill, 'water interrupted').value).toBe(0);
      act(drill, 'attack operator', { do: 'set valve', valve: 'A1.discharge1', opening: 0 });
      run(drill, 10);
      const lost = judged(drill, 'water interrupted').value!;
      expect(lost).toBeGreaterThan(8.5);
      act(drill, 'nozzle crew', { do: 'set valve', valve: 'N1.bale', opening: 0 });
      run(drill, 5);
      expect(judged(drill, 'water interrupted').value! - lost).toBeLessThan(0.2);
    }
  });

  it('the tank to pump cracked by 1 %: the intake is hose-fed while hose brings the most', () => {
    const under = (opening: number) => {
      const scene = sceneFromPlan(onTank(), {
        start: 'water flowing',
        openings: { 'A1.tankToPump': opening },
        benchmarks: { intakePsi: 200 },
      });
      const drill = createDrill(scene, 1);
      run(drill, 10);
      return judged(drill, 'intake').value;
    };
    expect(under(0)).toBe(10);
    expect(under(0.01)).toBe(10);
  });

  it('no water at all: a pump that has lost its prime counts while a line is open, and no longer', () => {
    const scene = sceneFromPlan(onTank(), {
      start: 'water flowing',
      openings: { 'A1.tankToPump': 1, 'A1.intake1': 0 },
      tanksGal: { A1: 50 },
    });
    const drill = createDrill(scene, 1);
    run(drill, 5);
    // On the tank alone the intake stands under 20 psi, rightly.
    expect(judged(drill, 'intake').value).toBe(0);
    run(drill, 40);
    expect(drill.state.pumps[0]!.condition).toBe('lost prime');
    const counted = judged(drill, 'intake').value!;
    expect(counted).toBeGreaterThan(25);
    for (const n of [1, 2])
      act(drill, 'nozzle crew', { do: 'set valve', valve: `N${n}.bale`, opening: 0 });
    run(drill, 10);
    expect(judged(drill, 'intake').value! - counted).toBeLessThan(0.7);
  });
});

describe('what the instructor adds', () => {
  it('a message heard on a real radio counts as given', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    const before = judged(drill, 'messages').value!;
    act(drill, 'instructor', { do: 'heard', from: 'hydrant operator', preset: 'hooked up' });
    expect(judged(drill, 'messages').value).toBe(before - 1);
    expect(
      step(drill, [
        {
          role: 'attack operator',
          action: { do: 'heard', from: 'hydrant operator', preset: 'boosting' },
        },
      ])[0]!.kind,
    ).toBe('refused');
  });

  it('marks stand in the judgement; faults alone are counted', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    expect(judged(drill, 'marks')).toBeUndefined();
    act(drill, 'instructor', { do: 'mark', verdict: 'good', text: 'Looked before he opened.' });
    expect(judged(drill, 'marks')).toMatchObject({ value: 0, met: true });
    act(drill, 'instructor', {
      do: 'mark',
      verdict: 'fault',
      text: 'Stood over the coupling.',
      about: 'hydrant operator',
    });
    const marks = judged(drill, 'marks');
    expect(marks).toMatchObject({ value: 1, met: false });
    const us = { system: 'us' as const, text: String };
    const words = marks.moments.map(({ piece, note }) =>
      momentWords(drill.scene, marks, piece, note, us),
    );
    expect(words).toEqual([
      'Good: Looked before he opened.',
      'Hydrant operator: Fault: Stood over the coupling.',
    ]);
    expect(inUnits(words[0]!, us)).toBe(words[0]);
  });

  it('an overruled criterion stands as the instructor has it, with the reason and what was counted', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    act(drill, 'instructor', {
      do: 'overrule',
      criterion: 'messages',
      met: true,
      reason: 'All were given face to face.',
    });
    const messages = judged(drill, 'messages');
    expect(messages.value).toBeGreaterThan(0);
    expect(messages.met).toBe(true);
    expect(messages.overruled).toEqual({ reason: 'All were given face to face.', counted: false });
  });

  it('seconds during a fault of the instructor’s are told apart', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    run(drill, 1);
    const kink = { id: 'k', kind: 'hose kinked', hose: 'lay', factor: 100 } as const;
    act(drill, 'instructor', { do: 'arm fault', fault: kink });
    run(drill, 15);
    act(drill, 'instructor', { do: 'lift fault', fault: 'k' });
    run(drill, 5);
    act(drill, 'attack operator', { do: 'set valve', valve: 'A1.discharge1', opening: 0 });
    run(drill, 10);
    const lost = judged(drill, 'water interrupted');
    expect(lost.duringFaultsS).toBeGreaterThan(10);
    expect(lost.duringFaultsS).toBeLessThanOrEqual(15.1);
    expect(lost.value! - lost.duringFaultsS!).toBeGreaterThan(8);
    expect(lost.moments[0]!.during).toBe('Supply hose kinked');
    expect(lost.moments.at(-1)!.during).toBeUndefined();
  });
});

describe('an extra line that is called', () => {
  const call = (drill: Drill) =>
    act(drill, 'instructor', {
      do: 'arm fault',
      fault: { id: 'x', kind: 'line called', nozzle: drill.scene.spareNozzle! },
    });

  it.each(evolutions.map((one) => [one.title, one] as const))(
    '%s: lies ready; everyone hears it, the computer obeys, and it is timed',
    (_, evolution) => {
      const scene = evolution.scene();
      const drill = createDrill(scene, 3);
      const play = (seconds: number) => {
        for (let n = 0; n < seconds * TICKS_PER_S; n++)
          step(
            drill,
            playedRoles.flatMap((role) => playedBy(role, scene, drill.state)),
          );
      };
      play(scene.start === 'water flowing' ? 150 : 420);
      expect(judged(drill, 'extra line')).toBeUndefined();
      const calledAt = drill.state.tick;
      call(drill);
      expect(drill.state.radio.at(-1)!.text).toMatch(/extra line/);
      let flowedAt = -1;
      for (let n = 0; n < 60 * TICKS_PER_S; n++) {
        play(1 / TICKS_PER_S);
        const spare = drill.state.nozzles.find(({ id }) => id === scene.spareNozzle)!;
        // 70 % of the 150 gpm that a usual line is rated for.
        if (flowedAt < 0 && spare.flowGpm >= 105) flowedAt = drill.state.tick - 1;
      }
      expect(flowedAt).toBeGreaterThan(calledAt);
      const line = judged(drill, 'extra line');
      expect(line.value).toBeCloseTo((flowedAt - calledAt) / TICKS_PER_S, 5);
      expect(line).toMatchObject({ benchmark: 60, met: true });
    },
  );

  it('and never comes is missed once its time is up', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    call(drill);
    run(drill, 59);
    expect(isJudged(judged(drill, 'extra line'))).toBe(false);
    run(drill, 2);
    expect(judged(drill, 'extra line')).toMatchObject({ value: undefined, met: false });
  });
});
