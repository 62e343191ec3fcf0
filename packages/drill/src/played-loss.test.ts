/** The computer's crews when the supply fails, and what free words on the radio count as. */
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import type { Evolution } from './evolutions/evolution.ts';
import { forwardLayAttack } from './evolutions/forward-lay-attack.ts';
import type { Fault } from './fault.ts';
import { playedBy } from './played-by.ts';
import { presetInWords } from './radio.ts';
import { playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';
import { allStepsDone } from './steps-standing.ts';

function play(drill: Drill, seconds: number): void {
  for (let n = 0; n < seconds * TICKS_PER_S; n++)
    step(
      drill,
      playedRoles.flatMap((role) => playedBy(role, drill.scene, drill.state)),
    );
}

/** An evolution played to its end by the computer. */
function atItsEnd(evolution: Evolution): Drill {
  const drill = createDrill(evolution.scene(), 3);
  for (let s = 0; s < 600 && !allStepsDone(drill.scene, drill.state); s += 5) play(drill, 5);
  expect(allStepsDone(drill.scene, drill.state)).toBe(true);
  play(drill, 10);
  return drill;
}

function arm(drill: Drill, fault: Fault): number {
  step(drill, [{ role: 'instructor', action: { do: 'arm fault', fault } }]);
  return drill.state.tick;
}

const pumpOf = (drill: Drill, rig: string) => drill.state.pumps.find(({ rigId }) => rigId === rig)!;
const opening = (drill: Drill, id: string) =>
  drill.state.valves.find((valve) => valve.id === id)!.opening;
const said = (drill: Drill, from: string, since: number) =>
  drill.state.radio
    .filter((one) => one.from === from && one.tick >= since)
    .map(({ preset, text }) => preset ?? text);

describe('the supply line bursts, the tank full', () => {
  const drill = atItsEnd(forwardLayAttack);
  const since = arm(drill, { id: 'b', kind: 'hose burst', hose: 'lay' });
  play(drill, 15);

  it('the attack operator goes to the tank, shuts the burst hose’s intake, and says so', () => {
    expect(opening(drill, 'A1.tankToPump')).toBe(1);
    expect(opening(drill, 'A1.intake1')).toBe(0);
    expect(said(drill, 'attack operator', since)).toEqual(['going to tank']);
    expect(pumpOf(drill, 'A1').condition).toBe('pumping');
    expect(drill.state.nozzles.slice(0, 2).every(({ flowGpm }) => flowGpm > 140)).toBe(true);
  });

  it('the hydrant operator shuts the hydrant, slowly, and says why', () => {
    play(drill, 5);
    expect(opening(drill, 'H1.stem')).toBe(0);
    expect(said(drill, 'hydrant operator', since)).toEqual(['hose burst']);
  });

  it('once a new length is laid it is charged again without its air, and the tank is shut', () => {
    step(drill, [{ role: 'instructor', action: { do: 'lift fault', fault: 'b' } }]);
    play(drill, 240);
    expect(opening(drill, 'A1.tankToPump')).toBe(0);
    expect(pumpOf(drill, 'A1').intakePsi).toBeGreaterThan(20);
    expect(allStepsDone(drill.scene, drill.state)).toBe(true);
  });
});

describe('the booster dies', () => {
  it('the attack operator asks for more, hears that there is none, and eases to 20 psi at the intake', () => {
    const drill = atItsEnd(boostThroughValve);
    const since = arm(drill, { id: 'd', kind: 'pump dies', rig: 'B1' });
    play(drill, 2);
    expect(pumpOf(drill, 'A1').intakePsi).toBeLessThan(20);
    play(drill, 15);
    expect(said(drill, 'attack operator', since)[0]).toBe('more needed');
    expect(said(drill, 'hydrant operator', since)).toEqual(['no more']);
    expect(pumpOf(drill, 'A1').intakePsi).toBeGreaterThanOrEqual(20);
    expect(pumpOf(drill, 'A1').targetPdpPsi).toBeLessThan(150);
  });
});

describe('the supply line kinks behind a boost', () => {
  it('the booster is raised as far as its hose bears, the last line is taken off first, and comes on again', () => {
    const drill = atItsEnd(boostThroughValve);
    const since = arm(drill, { id: 'k', kind: 'hose kinked', hose: 'lay', factor: 10 });
    play(drill, 40);
    expect(said(drill, 'hydrant operator', since)).toContain('pressure set');
    const { limitPsi } = drill.scene.hoses.find(({ id }) => id === 'discharge')!;
    expect(pumpOf(drill, 'B1').targetPdpPsi).toBeGreaterThan(120);
    expect(pumpOf(drill, 'B1').targetPdpPsi).toBeLessThan(limitPsi);
    expect(said(drill, 'attack operator', since)).toContain('Short of water: I shut discharge 3.');
    expect(opening(drill, 'A1.discharge3')).toBe(0);
    expect(opening(drill, 'A1.discharge1')).toBe(1);
    expect(pumpOf(drill, 'A1').intakePsi).toBeGreaterThanOrEqual(20);
    // Two lines of 150 gpm stand as they should.
    expect(drill.state.nozzles.slice(0, 2).every(({ flowGpm }) => flowGpm > 140)).toBe(true);
    step(drill, [{ role: 'instructor', action: { do: 'lift fault', fault: 'k' } }]);
    play(drill, 120);
    // Gated as it was: 25 psi off 150 psi at 250 gpm by a 2½ in valve, 1/√(1 + (25/250²)·(29.84·2.5²)²).
    expect(opening(drill, 'A1.discharge3')).toBeCloseTo(0.259, 3);
    expect(drill.state.nozzles[2]!.flowGpm).toBeGreaterThan(200);
  });
});

describe('a step that is undone', () => {
  it.each([
    ['the hydrant is shut again while the hose fills', 'H1.stem'],
    ['the bleeder is shut before the air is out', 'A1.intake1.bleeder'],
  ])('comes again: %s', (_, valve) => {
    const drill = createDrill(forwardLayAttack.scene(), 3);
    const lay = () => drill.state.hoses.find(({ id }) => id === 'lay')!;
    while (lay().from.waterGal < 100) play(drill, 1);
    const role = valve.startsWith('H1') ? 'hydrant operator' : 'attack operator';
    step(drill, [{ role, action: { do: 'set valve', valve, opening: 0 } }]);
    play(drill, 180);
    expect(lay().phase).toBe('full');
    expect(allStepsDone(drill.scene, drill.state)).toBe(true);
  });

  it('comes again: the discharge hose is taken off', () => {
    const drill = createDrill(boostThroughValve.scene(), 3);
    play(drill, 10);
    step(drill, [
      { role: 'hydrant operator', action: { do: 'uncouple', hose: 'discharge', end: 'from' } },
    ]);
    expect(drill.state.hoses.find(({ id }) => id === 'discharge')!.from.port).toBeNull();
    play(drill, 120);
    expect(allStepsDone(drill.scene, drill.state)).toBe(true);
  });
});

describe('free words', () => {
  it('count where they plainly say it', () => {
    expect(presetInWords('Loss of water! Loss of water on line 2')).toBe('loss of water');
    expect(presetInWords('We lost water up here')).toBe('loss of water');
    expect(presetInWords('Loss of water, going to tank')).toBe('going to tank');
    expect(presetInWords('Attack engine is switching to tank water.')).toBe('going to tank');
    expect(presetInWords('I am on tank')).toBe('on tank');
    expect(presetInWords('I am not going to tank')).toBeUndefined();
    expect(presetInWords('Tank is full')).toBeUndefined();
  });
});

describe('a pump that runs dry', () => {
  it('is taken out of gear by the computer before it is judged, and in again once it has water', () => {
    const drill = atItsEnd(forwardLayAttack);
    arm(drill, { id: 'b', kind: 'hose burst', hose: 'lay' });
    // 750 gal and more at 300 gpm are gone within four minutes.
    play(drill, 300);
    expect(drill.state.tanks[0]!.gal).toBeLessThan(5);
    expect(pumpOf(drill, 'A1').inGear).toBe(false);
    expect(drill.state.tally.unsafe ?? []).toEqual([]);
    step(drill, [{ role: 'instructor', action: { do: 'lift fault', fault: 'b' } }]);
    play(drill, 300);
    expect(pumpOf(drill, 'A1')).toMatchObject({ inGear: true, condition: 'pumping' });
    expect(drill.state.nozzles.slice(0, 2).every(({ flowGpm }) => flowGpm > 140)).toBe(true);
  });
});

describe('a clapper that sticks open in a boost', () => {
  it('is said once, with that there is no more; the pump does not go up and down, and is cautioned once', () => {
    const drill = createDrill(boostThroughValve.scene(), 3);
    arm(drill, { id: 'c', kind: 'clapper stuck open', valve: 'V1' });
    const doneAt = (id: string) =>
      drill.state.tally.stepTicks.find(({ step: one }) => one === id)?.tick;
    for (let s = 0; s < 300 && doneAt('boosting said') === undefined; s++) play(drill, 1);
    let turns = 0;
    let rising: boolean | undefined;
    let before = pumpOf(drill, 'B1').targetPdpPsi;
    for (let s = 0; s < 120; s++) {
      play(drill, 1);
      const now = pumpOf(drill, 'B1').targetPdpPsi;
      if (now !== before) {
        if (rising !== undefined && now > before !== rising) turns++;
        rising = now > before;
      }
      before = now;
    }
    expect(drill.state.assistValves[0]!.clapper).toBe('stuck open');
    expect(turns).toBeLessThanOrEqual(4);
    const texts = drill.state.radio.map(({ text }) => text);
    expect(texts.filter((text) => /clapper does not shut/.test(text)).length).toBe(1);
    const cautions = drill.log.filter(
      (one) => one.kind === 'event' && one.event.kind === 'intake under limit',
    );
    expect(cautions.length).toBeLessThanOrEqual(2);
  });
});
