/** Every evolution by its guide: a crew that does what it is told, as fast or as slow as it may be. */
import { describe, expect, it } from 'vitest';
import type { DrillAction, Submitted } from '../action.ts';
import { createDrill } from '../drill.ts';
import { isJudged, judge } from '../judge.ts';
import { playedBy } from '../played-by.ts';
import { playedRoles } from '../role.ts';
import type { Drill } from '../running-drill.ts';
import { TICKS_PER_S } from '../state.ts';
import { step } from '../step.ts';
import { allStepsDone } from '../steps-standing.ts';
import { viewFor } from '../view.ts';
import { evolutions } from './index.ts';
import { relayPumping } from './relay-pumping.ts';

/** What a crew does at a moment, each role what its guide shows it, every so many seconds. */
function byTheGuide({ scene, state }: Drill, everyS: number): Submitted[] {
  if (state.tick === 0 || state.tick % (everyS * TICKS_PER_S) !== 0) return [];
  return playedRoles.flatMap((role) => {
    const how: readonly DrillAction[] =
      viewFor(role, scene, state, { guided: true }).next?.how ?? [];
    return how.map((action) => ({ role, action }));
  });
}

/** The same, one after another: the slowest crew there is. */
function inTurn(drill: Drill, everyS: number): Submitted[] {
  const [first] = byTheGuide(drill, everyS);
  return first ? byTheGuide(drill, everyS).filter(({ role }) => role === first.role) : [];
}

const byTheComputer = ({ scene, state }: Drill): Submitted[] =>
  playedRoles.flatMap((role) => playedBy(role, scene, state));

/** To its end and a minute more, 40 minutes at most. */
function play(drill: Drill, crew: (drill: Drill) => Submitted[]): void {
  let rest = 60 * TICKS_PER_S;
  for (let tick = 0; tick < 2_400 * TICKS_PER_S && rest > 0; tick++) {
    step(drill, crew(drill));
    if (allStepsDone(drill.scene, drill.state)) rest--;
  }
}

const ways = [
  ['at 15 s a step', (drill: Drill) => byTheGuide(drill, 15)],
  ['at 30 s a step', (drill: Drill) => byTheGuide(drill, 30)],
  ['at 60 s a step', (drill: Drill) => byTheGuide(drill, 60)],
  ['by the computer', byTheComputer],
] as const;

describe.each(evolutions.map((one) => [one.title, one] as const))('%s', (_, evolution) => {
  it.each(ways)('%s: all done, nothing deducted, refused or cautioned', (_way, crew) => {
    const drill = createDrill(evolution.scene(), 5);
    play(drill, crew);
    const { scene, state, log } = drill;
    expect(log.filter(({ kind }) => kind === 'refused')).toEqual([]);
    const cautions = log.flatMap((entry) =>
      entry.kind === 'event' && entry.event.level === 'caution'
        ? [`${entry.tick / TICKS_PER_S} s: ${entry.event.text}`]
        : [],
    );
    expect(cautions).toEqual([]);
    const unmet = judge(scene, state).filter((one) => isJudged(one) && !one.met);
    expect(unmet.map(({ key, value, moments }) => ({ key, value, moments }))).toEqual([]);
    expect(allStepsDone(scene, state)).toBe(true);
  });
});

describe('the relay, one step of anyone’s after another', () => {
  it.each([30, 60])('at %d s a step: no pump is held shut', (everyS) => {
    const drill = createDrill(relayPumping.scene(), 5);
    play(drill, (now) => inTurn(now, everyS));
    const { scene, state } = drill;
    expect(state.tally.unsafe ?? []).toEqual([]);
    expect(allStepsDone(scene, state)).toBe(true);
  });
});
