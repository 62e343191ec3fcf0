import { evolutionOf, playedRoles } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { type LocalTold, openLocalDrill } from './local-drill.ts';

const open = () =>
  openLocalDrill(evolutionOf('boost through valve')!.scene(), 1, 'hydrant operator');
const viewIn = (told: LocalTold[]) => {
  const found = told.findLast((one) => one.told === 'view');
  return found?.told === 'view' ? found.view : undefined;
};

describe('a local drill', () => {
  it('tells what the role sees, its clock by elapsed time and speed', () => {
    const drill = open();
    expect(viewIn(drill.advance(1000))?.timeS).toBeCloseTo(1, 1);
    drill.clock({ do: 'set speed', speed: 4 });
    drill.advance(0);
    expect(viewIn(drill.advance(500))!.timeS).toBeGreaterThan(2.9);
  });

  it('stands still while paused: nobody works anything, the radio can be used', () => {
    const drill = open();
    drill.clock({ do: 'pause' });
    drill.advance(0);
    drill.act({ do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' });
    const told = drill.advance(5000);
    const refused = told.find((one) => one.told === 'refused');
    expect(refused?.told === 'refused' && refused.problem.message).toMatch(/clock is stopped/);
    expect(viewIn(told)?.timeS).toBe(0);
    drill.act({ do: 'radio', message: { preset: 'copied' } });
    expect(viewIn(drill.advance(0))?.radio.at(-1)?.preset).toBe('copied');
    drill.clock({ do: 'resume' });
    drill.act({ do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' });
    const after = viewIn(drill.advance(100));
    expect(after?.ports.find(({ port }) => port === 'V1.pump-suction')?.hose).toBe('suction');
  });

  it('tells a refusal with its reason and the action', () => {
    const drill = open();
    drill.act({ do: 'couple', hose: 'suction', end: 'from', port: 'H1.steamer' });
    const refused = drill.advance(100).find((one) => one.told === 'refused');
    expect(refused?.told === 'refused' && refused.problem.message).toMatch(/taken by V1/);
  });

  it('shows another role its own gauges', () => {
    const drill = open();
    drill.take('attack operator');
    const ids = viewIn(drill.advance(100))!.gauges.map(({ id }) => id);
    expect(ids).toContain('A1.intake');
    expect(ids).not.toContain('B1.intake');
  });

  it('runs to the end of the script when the computer plays everyone', () => {
    const drill = open();
    drill.giveToComputer(playedRoles);
    const steps = evolutionOf('boost through valve')!.scene().steps.length;
    let done = 0;
    for (let second = 0; second < 240 && done < steps; second++)
      for (const one of drill.advance(1000))
        if (one.told === 'progress') done = one.progress.done.length;
    expect(done).toBe(steps);
  });

  it('left and come back to stands where it was, stopped, and goes on as it would have', () => {
    const scene = evolutionOf('boost through valve')!.scene();
    const placeIn = (told: LocalTold[]) => {
      const found = told.findLast((one) => one.told === 'place');
      return found?.told === 'place' ? found.state : undefined;
    };
    const drill = open();
    // Nothing was done: there is no place to keep.
    expect(placeIn(drill.advance(1500))).toBeUndefined();
    drill.act({ do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' });
    const after = drill.advance(100);
    const left = JSON.parse(JSON.stringify(placeIn(after)));
    const back = openLocalDrill(scene, 1, 'hydrant operator', left);
    const stands = viewIn(back.advance(5000))!;
    expect(stands).toEqual({ ...viewIn(after)!, paused: true });
    const progress = back.advance(0).concat(drill.advance(0));
    expect(progress.filter(({ told }) => told === 'refused')).toEqual([]);
    for (const one of [back, drill]) one.giveToComputer(playedRoles);
    back.clock({ do: 'resume' });
    // To let it go on takes a tick.
    back.advance(0);
    const there = viewIn(drill.advance(50))!;
    expect(there.tick).toBe(stands.tick + 1);
    for (let second = 0; second < 60; second++) {
      drill.advance(1000);
      back.advance(1000);
    }
    const [a, b] = [drill, back].map((one) => placeIn(one.advance(1000))!);
    expect({ ...b!, seq: 0 }).toEqual({ ...a!, seq: 0 });
  });

  it('does not rush after a sleep', () => {
    const drill = open();
    expect(viewIn(drill.advance(3_600_000))!.timeS).toBeLessThanOrEqual(2.01);
  });
});
