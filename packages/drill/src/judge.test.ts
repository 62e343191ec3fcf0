import { describe, expect, it } from 'vitest';
import type { DrillAction, Submitted } from './action.ts';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { type CriterionKey, judge } from './judge.ts';
import { playedBy } from './played-by.ts';
import { type PlayedRole, playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene } from './scene.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';

const start = (change: (scene: DrillScene) => void = () => {}) => {
  const scene = boostThroughValve.scene();
  change(scene);
  return createDrill(scene, 1);
};

function run(drill: Drill, seconds: number, who: (drill: Drill) => Submitted[] = () => []): void {
  for (let n = 0; n < seconds * TICKS_PER_S; n++) step(drill, who(drill));
}

const act = (drill: Drill, role: PlayedRole | 'instructor', action: DrillAction) =>
  step(drill, [{ role, action }]);

const judged = (drill: Drill, key: CriterionKey) =>
  judge(drill.scene, drill.state).find((one) => one.key === key)!;

describe('judge', () => {
  it('counts the seconds that an open nozzle is without its water, and says when', () => {
    const drill = start();
    run(drill, 2);
    // The pump out of gear for ten seconds: hydrant pressure alone does not make a stream.
    act(drill, 'attack operator', {
      do: 'set valve',
      valve: 'A1.discharge1',
      opening: 0,
      overS: 1,
    });
    run(drill, 10);
    act(drill, 'attack operator', {
      do: 'set valve',
      valve: 'A1.discharge1',
      opening: 1,
      overS: 1,
    });
    run(drill, 5);
    const interrupted = judged(drill, 'water interrupted');
    // Shut from 3 s to 12 s, and a part of each second of travel.
    expect(interrupted.value).toBeGreaterThan(9);
    expect(interrupted.value).toBeLessThan(11.2);
    expect(interrupted.met).toBe(false);
    expect(interrupted.worst).toEqual({ value: 0, unit: 'gpm', piece: 'N1' });
    const [moment] = interrupted.moments;
    expect(moment!.piece).toBe('N1');
    expect(moment!.toTick - moment!.fromTick).toBe(Math.round(interrupted.value! * TICKS_PER_S));
    // Its fall and its return are that interruption, and no swing beside it.
    expect(judged(drill, 'nozzle swing').met).toBe(true);
  });

  it('does not count a nozzle that its crew has shut', () => {
    const drill = start();
    run(drill, 1);
    act(drill, 'nozzle crew', { do: 'set valve', valve: 'N1.bale', opening: 0 });
    run(drill, 5);
    expect(judged(drill, 'water interrupted')).toMatchObject({ value: 0, met: true, moments: [] });
  });

  it('holds intake and main to the department’s benchmarks', () => {
    const strict = start(({ benchmarks }) => {
      benchmarks.intakePsi = 200;
      benchmarks.mainPsi = 200;
    });
    run(strict, 10);
    // Every tick is under: ten seconds each.
    expect(judged(strict, 'intake').value).toBe(10);
    expect(judged(strict, 'main').value).toBe(10);
    expect(judged(strict, 'intake').met).toBe(false);
    expect(judged(strict, 'intake').benchmarkFrom).toBe('department');
    expect(judged(strict, 'hose').benchmarkFrom).toBe('default');
    const usual = start();
    run(usual, 10);
    expect(judged(usual, 'intake')).toMatchObject({ value: 0, met: true });
    expect(judged(usual, 'main')).toMatchObject({ value: 0, met: true });
  });

  it('tells a hose over its limit, how far and how long', () => {
    const drill = start();
    act(drill, 'attack operator', { do: 'set governor', rig: 'A1', pdpPsi: 300 });
    run(drill, 30);
    const hose = judged(drill, 'hose');
    expect(hose.met).toBe(false);
    // Attack hose's limit is 250 psi: 10 s and more of 30 are over it.
    expect(hose.value).toBeGreaterThan(10);
    expect(hose.worst!.value).toBeGreaterThan(250);
    expect(hose.worst!.value).toBeLessThanOrEqual(300.5);
  });

  it('times the boost from the order for it to the pressure asked for, held 5 s, against a benchmark where there is one', () => {
    const quick = start(({ benchmarks }) => {
      benchmarks.boostWithinS = 120;
    });
    expect(judged(quick, 'time to boost')).toMatchObject({ value: undefined, met: false });
    /** By hand: when it was ordered, and when the discharge first stood within 2 psi of 120 for good. */
    let orderedAt = -1;
    let reachedAt = -1;
    for (let tick = 0; tick < 100 * TICKS_PER_S; tick++) {
      const acts = playedRoles.flatMap((role) => playedBy(role, quick.scene, quick.state));
      const asks = acts.some(
        ({ action }) =>
          action.do === 'radio' &&
          'preset' in action.message &&
          action.message.preset === 'pressure wanted',
      );
      if (asks) orderedAt = tick;
      step(quick, acts);
      const stands = quick.state.pumps.find(({ rigId }) => rigId === 'B1')!.dischargePsi >= 118;
      if (!stands) reachedAt = -1;
      else if (reachedAt < 0) reachedAt = tick;
    }
    expect(orderedAt).toBeGreaterThan(0);
    const time = judged(quick, 'time to boost');
    expect(time.met).toBe(true);
    expect(time.value).toBeCloseTo((reachedAt - orderedAt) / TICKS_PER_S, 5);
  });

  it('opening a discharge in gear is no boost, nor is a moment at the pressure asked for', () => {
    const drill = start();
    const hydrant = (action: DrillAction) => act(drill, 'hydrant operator', action);
    for (const [hose, end, port] of [
      ['suction', 'from', 'V1.pump-suction'],
      ['suction', 'to', 'B1.intake1'],
      ['discharge', 'from', 'B1.discharge1'],
      ['discharge', 'to', 'V1.pump-discharge'],
    ] as const)
      hydrant({ do: 'couple', hose, end, port });
    hydrant({ do: 'set valve', valve: 'B1.intake1.bleeder', opening: 1 });
    hydrant({ do: 'set valve', valve: 'V1.handle', opening: 1, overS: 10 });
    run(drill, 30);
    hydrant({ do: 'set valve', valve: 'B1.intake1', opening: 1 });
    hydrant({ do: 'set valve', valve: 'B1.discharge1', opening: 1 });
    hydrant({ do: 'pump in gear', rig: 'B1', inGear: true });
    run(drill, 10);
    expect(judged(drill, 'time to boost').value).toBeUndefined();
    hydrant({ do: 'set governor', rig: 'B1', pdpPsi: 140 });
    run(drill, 6);
    expect(drill.state.pumps.find(({ rigId }) => rigId === 'B1')!.dischargePsi).toBeGreaterThan(
      118,
    );
    hydrant({ do: 'set governor', rig: 'B1', pdpPsi: 60 });
    run(drill, 20);
    expect(judged(drill, 'time to boost').value).toBeUndefined();
  });

  it('finds a step done before one that comes first, and names both', () => {
    const drill = start();
    act(drill, 'hydrant operator', { do: 'set valve', valve: 'V1.handle', opening: 1 });
    run(drill, 5);
    expect(judged(drill, 'order')).toMatchObject({
      value: 1,
      met: false,
      moments: [{ piece: 'handle to boost', note: 'hooked up' }],
    });
  });

  it('counts wrong connections and messages that were not given', () => {
    const drill = start();
    act(drill, 'hydrant operator', {
      do: 'couple',
      hose: 'suction',
      end: 'to',
      port: 'B1.discharge2',
    });
    act(drill, 'hydrant operator', { do: 'radio', message: { preset: 'hooked up' } });
    expect(judged(drill, 'connections')).toMatchObject({ value: 1, met: false });
    expect(judged(drill, 'messages')).toMatchObject({ value: 3, met: false });
    expect(judged(drill, 'messages').moments.map(({ note }) => note)).toEqual([
      'pressure wanted',
      'boosting',
      'boost made',
    ]);
  });
});
