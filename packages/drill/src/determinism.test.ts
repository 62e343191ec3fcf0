import { describe, expect, it } from 'vitest';
import type { Submitted } from './action.ts';
import { createDrill, restoreDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { forwardLayAttack } from './evolutions/forward-lay-attack.ts';
import { playedBy } from './played-by.ts';
import { type Keyframe, keyframeOf, replayTo } from './replay.ts';
import { playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import { step } from './step.ts';
import { viewFor } from './view.ts';

const TICKS = 1600;

/** What the computer does, and an instructor's faults on top of it: enough to reach every part of the engine. */
function script(drill: Drill): Submitted[] {
  const { state, scene } = drill;
  const acts = playedRoles.flatMap((role) => playedBy(role, scene, state));
  const instruct = (tick: number, action: Submitted['action']) => {
    if (state.tick === tick) acts.push({ role: 'instructor', action });
  };
  instruct(300, {
    do: 'arm fault',
    fault: { id: 'kink', kind: 'hose kinked', hose: 'lay', factor: 3 },
  });
  instruct(700, { do: 'lift fault', fault: 'kink' });
  instruct(900, {
    do: 'arm fault',
    fault: { id: 'weak', kind: 'hydrant weak', hydrant: 'H1', share: 0.6 },
  });
  // Refused: there is none of that name.
  instruct(950, { do: 'lift fault', fault: 'nothing' });
  return acts;
}

function run(from: Drill, ticks: number, keep?: (drill: Drill) => void): Drill {
  while (from.state.tick < ticks) {
    keep?.(from);
    step(from, script(from));
  }
  return from;
}

const text = (drill: Drill) => JSON.stringify(drill.state);

describe.each([
  ['boost', boostThroughValve.scene()],
  ['forward lay', forwardLayAttack.scene()],
])('the same drill: %s', (_name, scene) => {
  const frames: Keyframe[] = [];
  const first = run(createDrill(scene, 42), TICKS, (drill) => {
    if (drill.state.tick % 400 === 0) frames.push(keyframeOf(drill));
  });

  it('comes of the same scene, seed and actions, to the last bit, log and views with it', () => {
    const again = run(createDrill(scene, 42), TICKS);
    expect(text(again)).toBe(text(first));
    expect(again.log).toEqual(first.log);
    expect(viewFor('hydrant operator', scene, again.state)).toEqual(
      viewFor('hydrant operator', scene, first.state),
    );
  });

  it('goes on from any state that was written down and read back', () => {
    for (const at of [1, 137, 351, 702, 905, 1203]) {
      const drill = run(createDrill(scene, 42), at);
      const written = JSON.stringify(drill.state);
      const restored = restoreDrill(scene, JSON.parse(written), drill.log);
      expect(JSON.stringify(restored.state)).toBe(written);
      run(restored, TICKS);
      expect(text(restored)).toBe(text(first));
      expect(restored.log).toEqual(first.log);
    }
  });

  it('can be gone back in by its log, from the start and from keyframes', () => {
    const upTo = run(createDrill(scene, 42), 1111);
    const fromStart = replayTo(scene, 42, first.log, 1111);
    const fromFrame = replayTo(scene, 42, first.log, 1111, frames);
    expect(text(fromStart)).toBe(text(upTo));
    expect(text(fromFrame)).toBe(text(upTo));
    expect(fromStart.log).toEqual(upTo.log);
    expect(fromFrame.log).toEqual(upTo.log);
    expect(text(replayTo(scene, 42, first.log, TICKS, frames))).toBe(text(first));
  });

  it('is not changed by pauses, by the speed of the clock, or by what is refused', () => {
    const paused = createDrill(scene, 42);
    const instructor = (action: Submitted['action']): Submitted[] => [
      { role: 'instructor', action },
    ];
    while (paused.state.tick < TICKS) {
      if (paused.state.tick % 500 === 250) {
        step(paused, instructor({ do: 'pause' }));
        for (let n = 0; n < 7; n++) step(paused);
        expect(paused.state.tick % 500).toBe(250);
        step(paused, [
          ...instructor({ do: 'set speed', speed: 4 }),
          ...instructor({ do: 'resume' }),
          ...script(paused),
        ]);
        continue;
      }
      step(paused, script(paused));
    }
    const { seq: _a, speed: _b, ...rest } = paused.state;
    const { seq: _c, speed: _d, ...other } = first.state;
    expect(JSON.stringify(rest)).toBe(JSON.stringify(other));
    expect(text(replayTo(scene, 42, paused.log, TICKS))).toBe(text(paused));
  });

  it('differs with the seed in what gauges show, and in nothing else', () => {
    const other = run(createDrill(scene, 43), TICKS);
    const { seed: _a, ...rest } = other.state;
    const { seed: _b, ...mine } = first.state;
    expect(JSON.stringify(rest)).toBe(JSON.stringify(mine));
    const gauges = (drill: Drill) => viewFor('attack operator', scene, drill.state).gauges;
    expect(gauges(other)).not.toEqual(gauges(first));
  });
});
