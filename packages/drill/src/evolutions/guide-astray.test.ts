/** A crew that does not go by the script, and what guide and computer make of it. */
import { describe, expect, it } from 'vitest';
import type { DrillAction } from '../action.ts';
import type { CriterionKey } from '../criteria.ts';
import { createDrill } from '../drill.ts';
import { judge } from '../judge.ts';
import { playedBy } from '../played-by.ts';
import { type PlayedRole, playedRoles } from '../role.ts';
import type { Drill } from '../running-drill.ts';
import { TICKS_PER_S } from '../state.ts';
import { step } from '../step.ts';
import { allStepsDone } from '../steps-standing.ts';
import { viewFor } from '../view.ts';
import { boostThroughValve } from './boost-through-valve.ts';
import { forwardLayAttack } from './forward-lay-attack.ts';
import { secondHydrant } from './second-hydrant.ts';
import { tankToHydrant } from './tank-to-hydrant.ts';

const attack = 'attack operator';
const hydrant = 'hydrant operator';

/** @returns why something was refused */
function act(drill: Drill, role: PlayedRole, action: DrillAction): string | undefined {
  const entry = step(drill, [{ role, action }]).find(({ kind }) => kind === 'refused');
  return entry?.kind === 'refused' ? entry.problem.message : undefined;
}

function play(drill: Drill, seconds: number, roles: readonly PlayedRole[] = playedRoles): void {
  for (let n = 0; n < seconds * TICKS_PER_S; n++)
    step(
      drill,
      roles.flatMap((role) => playedBy(role, drill.scene, drill.state)),
    );
}

function toTheEnd(drill: Drill): void {
  for (let s = 0; s < 900 && !allStepsDone(drill.scene, drill.state); s += 5) play(drill, 5);
  expect(allStepsDone(drill.scene, drill.state)).toBe(true);
}

const next = (drill: Drill, role: PlayedRole) =>
  viewFor(role, drill.scene, drill.state, { guided: true }).next;
const judged = (drill: Drill, key: CriterionKey) =>
  judge(drill.scene, drill.state).find((one) => one.key === key)!;
const refused = (drill: Drill) => drill.log.filter(({ kind }) => kind === 'refused');
const doneAt = (drill: Drill, id: string) =>
  drill.state.tally.stepTicks.find((one) => one.step === id)?.tick;

describe('a hydrant', () => {
  it.each([
    [forwardLayAttack, 'H1', 'hydrant', 'lay on hydrant'],
    [secondHydrant, 'H2', 'second hydrant', 'second lay on hydrant'],
  ] as const)('is flushed and shut before hose goes on: %#', (evolution, id, stem, couples) => {
    const drill = createDrill(evolution.scene(), 1);
    expect(next(drill, hydrant)?.what).toMatch(/until it runs clear/);
    play(drill, 60, [hydrant]);
    expect(doneAt(drill, `${stem} flushed`)).toBeGreaterThan(4 * TICKS_PER_S);
    expect(doneAt(drill, couples)).toBeGreaterThan(doneAt(drill, `${stem} flushing shut`)!);
    expect(drill.state.valves.find((valve) => valve.id === `${id}.stem`)!.opening).toBe(0);
    expect(judged(drill, 'order').value).toBe(0);
  });

  it('that hose went on at once has it taken off again while it is dry', () => {
    const drill = createDrill(forwardLayAttack.scene(), 1);
    act(drill, hydrant, { do: 'couple', hose: 'lay', end: 'from', port: 'H1.steamer' });
    expect(next(drill, hydrant)?.what).toMatch(/^Take the hose off the hydrant again/);
    expect(next(drill, hydrant)?.how[0]).toEqual({ do: 'uncouple', hose: 'lay', end: 'from' });
    toTheEnd(drill);
    expect(refused(drill)).toEqual([]);
    expect(judged(drill, 'order').moments.map(({ piece }) => piece)).toEqual(['lay on hydrant']);
  });

  it('that feeds hose is not flushed any more: the guide goes on, the judgement tells', () => {
    const drill = createDrill(forwardLayAttack.scene(), 1);
    act(drill, hydrant, { do: 'couple', hose: 'lay', end: 'from', port: 'H1.steamer' });
    act(drill, attack, { do: 'couple', hose: 'lay', end: 'to', port: 'A1.intake1' });
    act(drill, hydrant, { do: 'set valve', valve: 'H1.stem', opening: 1, overS: 25 });
    for (let n = 0; n < 10 * TICKS_PER_S; n++) step(drill);
    expect(next(drill, hydrant)).toBeUndefined();
    for (let s = 0; s < 300; s += 5) play(drill, 5);
    expect(doneAt(drill, 'second nozzle open')).toBeGreaterThan(0);
    expect(judged(drill, 'steps').moments.map(({ piece }) => piece)).toEqual([
      'hydrant flushed',
      'hydrant flushing shut',
    ]);
    expect(judged(drill, 'order').moments.map(({ piece }) => piece)).toContain('lay on hydrant');
  });

  it('that stands open while hose is to go on is shut first: nothing is refused, and it goes on', () => {
    const drill = createDrill(forwardLayAttack.scene(), 1);
    play(drill, 9, [hydrant]);
    expect(doneAt(drill, 'hydrant flushed')).toBeDefined();
    act(drill, hydrant, { do: 'set valve', valve: 'H1.stem', opening: 0, overS: 3 });
    for (let n = 0; n < 4 * TICKS_PER_S; n++) step(drill);
    expect(next(drill, hydrant)?.id).toBe('lay on hydrant');
    act(drill, hydrant, { do: 'set valve', valve: 'H1.stem', opening: 1 });
    for (let n = 0; n < 13 * TICKS_PER_S; n++) step(drill);
    const step1 = next(drill, hydrant)!;
    expect(step1.what + step1.how[0]!.do).toMatch(/hut/);
    expect(step1.how[0]).toMatchObject({ do: 'set valve', valve: 'H1.stem', opening: 0 });
    toTheEnd(drill);
    expect(refused(drill)).toEqual([]);
  });
});

describe('a hose that pours', () => {
  it('is shut at its other end before it is coupled, by whoever has that', () => {
    const drill = createDrill(forwardLayAttack.scene(), 1);
    play(drill, 30, [hydrant]);
    expect(act(drill, hydrant, { do: 'set valve', valve: 'H1.stem', opening: 1 })).toBeUndefined();
    for (let n = 0; n < 120 * TICKS_PER_S; n++) step(drill);
    expect(
      act(drill, attack, { do: 'couple', hose: 'lay', end: 'to', port: 'A1.intake1' }),
    ).toMatch(/pours/);
    const before = refused(drill).length;
    expect(before).toBe(1);
    for (let s = 0; s < 60; s += 5) play(drill, 5, [attack]);
    expect(refused(drill).length).toBe(before);
  });
});

describe('"I am on tank water"', () => {
  it('said at the start, when it is true, is not what is said before going back to it', () => {
    const drill = createDrill(tankToHydrant.scene(), 7);
    act(drill, attack, { do: 'radio', message: { preset: 'on tank' } });
    expect(doneAt(drill, 'on tank')).toBeUndefined();
    expect(doneAt(drill, 'tank open again')).toBeUndefined();
    toTheEnd(drill);
    expect(judged(drill, 'order')).toMatchObject({ value: 0, met: true });
    expect(judged(drill, 'messages').value).toBe(0);
    expect(drill.state.radio.filter(({ preset }) => preset === 'on tank').length).toBe(2);
    // Its intake was worked three times at most: opened, shut, and no more.
    const moves = drill.log.filter(
      (one) =>
        one.kind === 'action' && one.action.do === 'set valve' && one.action.valve === 'A1.intake1',
    );
    expect(moves.length).toBeLessThan(4);
  });

  it('said at the start alone is missed at the end', () => {
    const drill = createDrill(tankToHydrant.scene(), 7);
    act(drill, attack, { do: 'radio', message: { preset: 'on tank' } });
    for (let s = 0; s < 900 && doneAt(drill, 'fill shut') === undefined; s += 1 / TICKS_PER_S)
      play(drill, 1 / TICKS_PER_S);
    expect(judged(drill, 'messages').moments.map(({ note }) => note)).toEqual(['on tank']);
  });
});

describe('the boost', () => {
  it('is announced before the handle moves', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    toTheEnd(drill);
    const handle = drill.log.find(
      (one) =>
        one.kind === 'action' && one.action.do === 'set valve' && one.action.valve === 'V1.handle',
    )!;
    const said = drill.state.said.find(({ preset }) => preset === 'hooked up')!;
    expect(said.tick).toBeLessThan(handle.tick);
  });

  it.each([
    [60, 76],
    [100, 100],
    [140, 140],
    // The hose's limit is 185 psi: 5 psi under it and no more.
    [400, 180],
  ])('to %d psi asked for comes to %d psi, in the guide’s words too', (askedPsi, comesTo) => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    for (let s = 0; s < 300 && doneAt(drill, 'boosting said') === undefined; s++) {
      play(drill, 1, [hydrant]);
      if (
        doneAt(drill, 'hooked up') !== undefined &&
        doneAt(drill, 'pressure wanted') === undefined
      )
        act(drill, attack, { do: 'radio', message: { preset: 'pressure wanted', psi: askedPsi } });
    }
    for (let s = 0; s < 60 && doneAt(drill, 'boosted') === undefined; s++) {
      const raises = next(drill, hydrant);
      if (raises?.id === 'boosted') expect(raises.what).toMatch(`${Math.min(askedPsi, 180)} psi`);
      play(drill, 1, [hydrant]);
    }
    expect(doneAt(drill, 'boosted')).toBeGreaterThanOrEqual(doneAt(drill, 'first step up')!);
    expect(judged(drill, 'order').value).toBe(0);
    play(drill, 20, [hydrant]);
    const booster = drill.state.pumps.find(({ rigId }) => rigId === 'B1')!;
    expect(booster.targetPdpPsi).toBe(Math.min(askedPsi, 180));
    if (askedPsi !== 60) expect(Math.abs(booster.dischargePsi - comesTo)).toBeLessThan(2);
    else expect(booster.dischargePsi).toBeLessThan(90);
    expect(
      drill.log.some((one) => one.kind === 'event' && one.event.kind === 'more than asked'),
    ).toBe(false);
  });

  it('past what was asked for is told, once, and is no boost to it', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    for (let s = 0; s < 300 && doneAt(drill, 'boosting said') === undefined; s++) {
      play(drill, 1, [hydrant]);
      if (
        doneAt(drill, 'hooked up') !== undefined &&
        doneAt(drill, 'pressure wanted') === undefined
      )
        act(drill, attack, { do: 'radio', message: { preset: 'pressure wanted', psi: 100 } });
    }
    act(drill, hydrant, { do: 'set governor', rig: 'B1', pdpPsi: 150 });
    for (let n = 0; n < 30 * TICKS_PER_S; n++) step(drill);
    const told = drill.log.flatMap((one) =>
      one.kind === 'event' && one.event.kind === 'more than asked' ? [one.event.text] : [],
    );
    expect(told.length).toBe(1);
    expect(told[0]).toMatch(/100 psi was asked for/);
    expect(judged(drill, 'time to boost').value).toBeUndefined();
  });
});
