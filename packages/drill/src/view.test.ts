import { nozzleRatedGpm } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import type { Submitted } from './action.ts';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import type { Fault } from './fault.ts';
import { gaugeNoise } from './gauge-noise.ts';
import { step } from './step.ts';
import { notices, viewFor } from './view.ts';

const scene = boostThroughValve.scene();

describe('viewFor', () => {
  const drill = createDrill(scene, 5);
  for (let n = 0; n < 40; n++) step(drill);
  const { state } = drill;
  const hydrant = viewFor('hydrant operator', scene, state);
  const attack = viewFor('attack operator', scene, state);

  it('shows each operator the gauges, valves and hose ends at their own place, and no truth', () => {
    expect(hydrant.gauges.map(({ id }) => id)).toEqual(['B1.intake', 'B1.discharge', 'B1.flow']);
    // The third line wants less than the pump holds: it is gated by a gauge of its own.
    const engine = ['A1.intake', 'A1.discharge', 'A1.flow', 'A1.discharge3'];
    expect(attack.gauges.map(({ id }) => id)).toEqual(engine);
    expect(new Set(hydrant.valves.map(({ pieceId }) => pieceId))).toEqual(
      new Set(['H1', 'V1', 'B1']),
    );
    expect(new Set(attack.valves.map(({ pieceId }) => pieceId))).toEqual(new Set(['A1']));
    const ends = (view: typeof hydrant) => view.hoseEnds.map(({ hose, end }) => `${hose} ${end}`);
    expect(ends(hydrant)).toContain('lay from');
    expect(ends(hydrant)).not.toContain('lay to');
    expect(ends(attack)).toContain('lay to');
    expect(hydrant.truth).toBeUndefined();
  });

  it('shows a nozzle crew its streams, and no figure that it has no gauge for', () => {
    const crew = viewFor('nozzle crew', scene, state);
    expect(crew.gauges).toEqual([]);
    expect(crew.streams?.map(({ nozzle }) => nozzle)).toEqual(['N1', 'N2', 'N3', 'N4']);
    expect(viewFor('attack operator', scene, state).streams).toBeUndefined();
    const watched = viewFor('instructor', scene, state);
    expect(watched.streams).toBeUndefined();
    expect(watched.gauges.map(({ id }) => id)).toContain('N1.pressure');
  });

  it('tells a stream that is full, weak or none by the flow that the nozzle is rated for', () => {
    const play = structuredClone(state);
    const streamAt = (flowGpm: number, opening: number) => {
      play.nozzles[0]!.flowGpm = flowGpm;
      play.valves.find(({ id }) => id === 'N1.bale')!.opening = opening;
      return viewFor('nozzle crew', scene, play).streams![0]!.stream;
    };
    const ratedGpm = nozzleRatedGpm(scene.plan.nozzles[0]!);
    expect(streamAt(ratedGpm, 1)).toBe('full');
    expect(streamAt(0.6 * ratedGpm, 1)).toBe('weak');
    // Half open, it is asked for half.
    expect(streamAt(0.5 * ratedGpm, 0.5)).toBe('full');
    expect(streamAt(2, 1)).toBe('none');
    expect(streamAt(0, 0)).toBe('shut');
    play.nozzles[0]!.overTicks = 1;
    expect(streamAt(1.2 * ratedGpm, 1)).toBe('hard to hold');
  });

  it('tells the operator at a hydrant of a main that is drawn down, and nobody else', () => {
    const play = structuredClone(state);
    expect(viewFor('hydrant operator', scene, play).mainsUnder).toBeUndefined();
    play.hydrants[0]!.mainPsi = scene.benchmarks.mainPsi - 1;
    expect(viewFor('hydrant operator', scene, play).mainsUnder).toEqual(['H1']);
    expect(viewFor('attack operator', scene, play).mainsUnder).toBeUndefined();
    play.hydrants[0]!.flowGpm = 0;
    expect(viewFor('hydrant operator', scene, play).mainsUnder).toBeUndefined();
  });

  it('shows instructor and observer all of it, the truth beside it', () => {
    for (const role of ['instructor', 'observer'] as const) {
      const view = viewFor(role, scene, state);
      expect(view.valves.length).toBe(scene.valves.length);
      expect(view.truth?.state.hydrants[0]?.mainPsi).toBe(state.hydrants[0]!.mainPsi);
      expect(view.truth?.hoses.find(({ id }) => id === 'lay')?.fillShare).toBe(1);
    }
  });

  it('shows a watcher no fault but by what follows from it, until faults are shown; one that waits never', () => {
    const faulty = createDrill(scene, 5);
    const arm = (fault: Fault): Submitted => ({
      role: 'instructor',
      action: { do: 'arm fault', fault },
    });
    step(faulty, [
      arm({ id: 'stuck', kind: 'clapper stuck', valve: 'V1' }),
      arm({ id: 'kink', kind: 'hose kinked', hose: 'lay', factor: 5 }),
      arm({ id: 'dies', kind: 'pump dies', rig: 'A1' }),
      arm({ id: 'waits', kind: 'hydrant weak', hydrant: 'H1', share: 0.5, atTick: 9000 }),
    ]);
    for (let n = 0; n < 40; n++) step(faulty);
    const truth = (faultsShown?: boolean) =>
      viewFor('observer', scene, faulty.state, faultsShown ? { faultsShown } : {}).truth!;
    const hidden = truth();
    expect(hidden.state.faults).toEqual([]);
    expect(hidden.state.assistValves[0]!.clapper).toBe('open');
    expect(hidden.state.assistValves[0]!.stuck).toBeUndefined();
    for (const pumps of [hidden.pumps, hidden.state.pumps])
      expect(pumps.find(({ rigId }) => rigId === 'A1')!.condition).toMatch(/^(passing|no flow)$/);
    // What follows is there: the intake is dry behind the shut clapper.
    const intakePsi = ({ state }: typeof hidden) => state.pumps.find((p) => p.rigId === 'A1')!;
    expect(intakePsi(hidden).intakePsi).toBe(intakePsi(truth(true)).intakePsi);
    const shown = truth(true);
    expect(shown.state.faults.map(({ id }) => id)).toEqual(['stuck', 'kink', 'dies']);
    expect(shown.state.assistValves[0]!.clapper).toBe('stuck open');
    expect(shown.pumps.find(({ rigId }) => rigId === 'A1')!.condition).toBe('dead');
    const led = viewFor('instructor', scene, faulty.state).truth!;
    expect(led.state.faults.map(({ id }) => id)).toEqual(['stuck', 'kink', 'dies', 'waits']);
    expect(led.state.assistValves[0]!.clapper).toBe('stuck open');
  });

  it('stands still once it is taken, whatever the drill does after', () => {
    const going = createDrill(scene, 5);
    const view = viewFor('instructor', scene, going.state);
    const before = JSON.stringify(view);
    step(going, [
      { role: 'nozzle crew', action: { do: 'set valve', valve: 'N1.bale', opening: 0 } },
      { role: 'nozzle crew', action: { do: 'radio', message: { preset: 'copied' } } },
    ]);
    for (let n = 0; n < 40; n++) step(going);
    expect(JSON.stringify(view)).toBe(before);
  });

  it('says which ports are free and what is on the others', () => {
    const port = (name: string) => hydrant.ports.find((one) => one.port === name);
    expect(port('V1.pump-suction')).toMatchObject({ free: true, hose: null });
    expect(port('V1.supply')).toMatchObject({ free: false, hose: 'lay' });
    expect(port('H1.steamer')).toMatchObject({ free: false, hose: 'V1' });
  });

  it('has gauges that read the truth within their noise and a tenth', () => {
    const truth = state.pumps.find(({ rigId }) => rigId === 'A1')!;
    const shown = attack.gauges.find(({ id }) => id === 'A1.intake')!.value;
    expect(Math.abs(shown - truth.intakePsi)).toBeLessThan(0.01 * truth.intakePsi + 0.1);
  });

  it('has gauges that lag: a tenth of a second after a jump they show less than half of it', () => {
    const late = createDrill(scene, 5);
    const before = late.state.pumps[1]!.dischargeGaugePsi;
    step(late, [
      { role: 'attack operator', action: { do: 'pump in gear', rig: 'A1', inGear: false } },
    ]);
    step(late);
    const { dischargePsi, dischargeGaugePsi } = late.state.pumps[1]!;
    expect(before - dischargePsi).toBeGreaterThan(30);
    expect(before - dischargeGaugePsi).toBeLessThan((before - dischargePsi) / 2);
    expect(before - dischargeGaugePsi).toBeGreaterThan(0);
  });

  it('keeps what the instructor says to one role from the others', () => {
    step(drill, [
      {
        role: 'instructor',
        action: { do: 'say', text: 'Watch your intake.', to: 'attack operator' },
      },
      { role: 'hydrant operator', action: { do: 'radio', message: { preset: 'copied' } } },
    ]);
    const heard = (role: 'hydrant operator' | 'attack operator' | 'observer') =>
      viewFor(role, scene, drill.state).radio.map(({ text }) => text);
    expect(heard('attack operator')).toEqual(['Watch your intake.', 'Copied.']);
    expect(heard('hydrant operator')).toEqual(['Copied.']);
    expect(heard('observer')).toEqual(['Watch your intake.', 'Copied.']);
  });

  it('shows the next step to whom it is asked for, and nothing to one who has to wait', () => {
    const fresh = createDrill(scene, 5);
    const next = (role: 'hydrant operator' | 'attack operator') =>
      viewFor(role, scene, fresh.state, { guided: true }).next?.id;
    expect(next('hydrant operator')).toBe('suction on valve');
    expect(next('attack operator')).toBeUndefined();
    expect(viewFor('hydrant operator', scene, fresh.state).next).toBeUndefined();
    expect(viewFor('hydrant operator', scene, fresh.state)).not.toHaveProperty('guided');
    // One who waits is told so, and one who has done everything.
    const guided = (state: typeof fresh.state) =>
      viewFor('attack operator', scene, state, { guided: true });
    expect(guided(fresh.state)).toMatchObject({ guided: true });
    expect(guided(fresh.state)).not.toHaveProperty('done');
    const over = structuredClone(fresh.state);
    over.tally.stepTicks = scene.steps.map(({ id }) => ({ step: id, tick: 0 }));
    // The third line was charged, and is shut again.
    expect(guided(over)).not.toHaveProperty('done');
    const third = over.valves.find(({ id }) => id === 'A1.discharge3')!;
    third.opening = 1;
    third.target = 1;
    expect(guided(over)).toMatchObject({ guided: true, done: true });
  });
});

describe('notices', () => {
  it('tells an event to those at the piece or at either end of the hose, and faults to nobody who is drilled', () => {
    const { state } = createDrill(scene, 5);
    const event = (piece: string, kind: 'cavitating' | 'fault' = 'cavitating') =>
      ({
        tick: 0,
        seq: 0,
        kind: 'event',
        event: { kind, level: 'caution', piece, text: '' },
      }) as const;
    expect(notices('hydrant operator', scene, state, event('B1'))).toBe(true);
    expect(notices('attack operator', scene, state, event('B1'))).toBe(false);
    expect(notices('hydrant operator', scene, state, event('lay'))).toBe(true);
    expect(notices('attack operator', scene, state, event('lay'))).toBe(true);
    expect(notices('nozzle crew', scene, state, event('lay'))).toBe(false);
    expect(notices('attack operator', scene, state, event('B1', 'fault'))).toBe(false);
    expect(notices('instructor', scene, state, event('B1', 'fault'))).toBe(true);
    expect(notices('observer', scene, state, event('B1'))).toBe(true);
    expect(notices('observer', scene, state, event('B1', 'fault'))).toBe(false);
    const shown = { faultsShown: true };
    expect(notices('observer', scene, state, event('B1', 'fault'), shown)).toBe(true);
    expect(notices('attack operator', scene, state, event('B1', 'fault'), shown)).toBe(false);
  });
});

describe('gaugeNoise', () => {
  it('stays from −1 to 1, about nothing, and moves with gauge, seed and moment', () => {
    const values = Array.from({ length: 4000 }, (_, n) => gaugeNoise(3, n * 5, 'B1.intake'));
    for (const value of values) {
      expect(value).toBeGreaterThanOrEqual(-1);
      expect(value).toBeLessThanOrEqual(1);
    }
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    // An even spread over [−1, 1] has a standard error of 0.577/√4000 = 0.009.
    expect(Math.abs(mean)).toBeLessThan(0.04);
    expect(gaugeNoise(3, 0, 'B1.intake')).not.toBe(gaugeNoise(4, 0, 'B1.intake'));
    expect(gaugeNoise(3, 0, 'B1.intake')).not.toBe(gaugeNoise(3, 0, 'A1.intake'));
    expect(gaugeNoise(3, 0, 'B1.intake')).toBe(gaugeNoise(3, 4, 'B1.intake'));
  });
});
