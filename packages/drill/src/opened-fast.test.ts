/** Valves opened too fast: told and counted, as those shut too fast are. */
import { describe, expect, it } from 'vitest';
import type { DrillAction } from './action.ts';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { forwardLayAttack } from './evolutions/forward-lay-attack.ts';
import { isJudged, judge } from './judge.ts';
import type { PlayedRole } from './role.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene } from './scene.ts';
import { act, run } from './test-drill.ts';

const opening = (drill: Drill) =>
  judge(drill.scene, drill.state).find(({ key }) => key === 'opening')!;
const told = (drill: Drill) =>
  drill.log.flatMap((one) =>
    one.kind === 'event' && one.event.kind === 'opened fast' ? [one.event.text] : [],
  );

/** The attack pump holds 170 psi on its tank; its lines are empty. */
function pressed(change: (scene: DrillScene) => void = () => {}): Drill {
  const scene = forwardLayAttack.scene();
  change(scene);
  const drill = createDrill(scene, 1);
  const attack = (action: DrillAction) => act(drill, 'attack operator', action);
  attack({ do: 'set valve', valve: 'A1.tankToPump', opening: 1 });
  attack({ do: 'pump in gear', rig: 'A1', inGear: true });
  attack({ do: 'set governor', rig: 'A1', pdpPsi: 170 });
  run(drill, 20);
  return drill;
}

const opens = (drill: Drill, overS: number, to = 1) =>
  act(drill, 'attack operator', {
    do: 'set valve',
    valve: 'A1.discharge1',
    opening: to,
    overS,
  });

describe('a line charged at 170 psi', () => {
  it('in 1 s is told and counted once; in 3 s it is not', () => {
    for (const [overS, times] of [
      [1, 1],
      [2.5, 1],
      [3, 0],
      [8, 0],
    ] as const) {
      const drill = pressed();
      opens(drill, overS);
      run(drill, 12);
      expect(told(drill).length, `in ${overS} s`).toBe(times);
      expect(opening(drill)).toMatchObject({ value: times, met: times === 0 });
      expect(isJudged(opening(drill))).toBe(true);
    }
  });

  it('by ten moves of a tenth of a second counts as one of a second', () => {
    const drill = pressed();
    for (let n = 1; n <= 10; n++) {
      opens(drill, 0, n / 10);
      run(drill, 0.05);
    }
    run(drill, 5);
    expect(told(drill).length).toBe(1);
    expect(opening(drill).value).toBe(1);
  });

  it('may be cracked at once, and opened once the air has gone ahead', () => {
    const drill = pressed();
    opens(drill, 0, 0.2);
    run(drill, 6);
    opens(drill, 0);
    run(drill, 5);
    expect(told(drill)).toEqual([]);
  });

  it('counts again once it has been shut, and against the department’s own time', () => {
    const drill = pressed(({ benchmarks }) => {
      benchmarks.lineOpenS = 10;
      benchmarks.openedFast = 1;
    });
    opens(drill, 5);
    run(drill, 6);
    expect(opening(drill)).toMatchObject({ value: 1, met: true, benchmarkFrom: 'department' });
    opens(drill, 5, 0);
    run(drill, 6);
    // Full now: nothing rushes.
    opens(drill, 5);
    run(drill, 6);
    expect(opening(drill).value).toBe(1);
  });
});

describe('large hose', () => {
  const couple = (drill: Drill, role: PlayedRole, end: 'from' | 'to', port: string) =>
    act(drill, role, { do: 'couple', hose: 'lay', end, port });

  it('from a hydrant opened in 12 s is told and counted; in 20 s it is not', () => {
    for (const [overS, times] of [
      [0, 1],
      [20, 0],
    ] as const) {
      const drill = createDrill(forwardLayAttack.scene(), 1);
      couple(drill, 'hydrant operator', 'from', 'H1.steamer');
      couple(drill, 'attack operator', 'to', 'A1.intake1');
      act(drill, 'hydrant operator', { do: 'set valve', valve: 'H1.stem', opening: 1, overS });
      run(drill, 25);
      expect(told(drill).length).toBe(times);
      expect(opening(drill).value).toBe(times);
    }
  });

  it('nothing rushes where no hose is on: not judged', () => {
    const drill = createDrill(forwardLayAttack.scene(), 1);
    act(drill, 'hydrant operator', { do: 'set valve', valve: 'H1.stem', opening: 1 });
    run(drill, 15);
    expect(told(drill)).toEqual([]);
    expect(isJudged(opening(drill))).toBe(false);
  });
});

describe('an assist valve’s handle', () => {
  it('to boost in 3 s on an empty suction hose is told and counted; in 20 s it is not', () => {
    for (const [overS, times] of [
      [0, 1],
      [20, 0],
    ] as const) {
      const drill = createDrill(boostThroughValve.scene(), 1);
      const hydrant = (action: DrillAction) => act(drill, 'hydrant operator', action);
      hydrant({ do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' });
      hydrant({ do: 'couple', hose: 'suction', end: 'to', port: 'B1.intake1' });
      hydrant({ do: 'set valve', valve: 'B1.intake1.bleeder', opening: 1 });
      hydrant({ do: 'set valve', valve: 'V1.handle', opening: 1, overS });
      run(drill, 30);
      expect(told(drill).length).toBe(times);
      // An intake opened at hand speed onto the pump: 3 s.
      hydrant({ do: 'set valve', valve: 'B1.intake1', opening: 1 });
      run(drill, 5);
      expect(opening(drill).value).toBe(times + 1);
      expect(told(drill).at(-1)).toMatch(/hits the pump. Take 5 s or more/);
    }
  });
});

describe('a drill of older rules', () => {
  it('is not judged on it', () => {
    const drill = pressed(({ settings }) => {
      settings.rules = 2;
    });
    opens(drill, 1);
    run(drill, 5);
    expect(opening(drill)).toBeUndefined();
    expect(told(drill)).toEqual([]);
  });
});
