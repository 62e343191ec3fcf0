/**
 * Drills that older rules ran: a relay stored before there were relay operators, the hydrant operator at both
 * engines before the scene; and a boost by the second rules, its two hydrants named on one main but each on
 * its own curve, the air of its hose lost sight of. What each must come to is what was stored with it, by the
 * version that ran it: nobody's score of an old drill may change because the program did.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { DrillLog } from './log.ts';
import { mayDo } from './may-do.ts';
import { type Keyframe, replayThrough, replayTo } from './replay.ts';
import type { DrillScene } from './scene.ts';
import { rolesIn } from './scene-posts.ts';
import type { DrillState } from './state.ts';
import { viewFor } from './view.ts';

interface StoredDrill {
  scene: DrillScene;
  seed: number;
  tick: number;
  log: DrillLog;
  keyframe: Keyframe;
  state: DrillState;
}

const readStored = (name: string) =>
  JSON.parse(
    readFileSync(new URL(`../test-data/${name}.json`, import.meta.url), 'utf8'),
  ) as StoredDrill;
const stored = readStored('stored-relay-drill');
const { scene, seed, log, tick, keyframe } = stored;

/** Of the tally alone more may be counted than was. */
function asStored(state: DrillState): unknown {
  const { tally, ...rest } = JSON.parse(JSON.stringify(state)) as DrillState;
  const { lines, nozzles, boostTick, stepTicks, wrongConnections } = tally;
  return { ...rest, tally: { lines, nozzles, boostTick, stepTicks, wrongConnections } };
}

const told = (entries: DrillLog) =>
  entries.map((entry) =>
    entry.kind === 'event'
      ? [entry.seq, entry.tick, entry.event.kind, entry.event.piece]
      : [entry.seq, entry.tick, entry.kind, entry.action.do],
  );

describe('a drill stored before there were relay operators', () => {
  it('replays to the same end, to the last bit, from its beginning and from its keyframe', () => {
    for (const frames of [[], [keyframe]]) {
      const again = replayTo(scene, seed, log, tick, frames);
      expect(asStored(again.state)).toEqual(stored.state);
      expect(told(again.log)).toEqual(told(log));
    }
    const [last] = [...replayThrough(scene, seed, log, tick, 500)].slice(-1);
    expect(asStored(last!.state)).toEqual(stored.state);
  });

  it('has the roles and the reach that it had', () => {
    expect(rolesIn(scene)).toEqual(['hydrant operator', 'attack operator', 'nozzle crew']);
    const opens = { do: 'set valve', valve: 'P2.discharge1', opening: 1 } as const;
    expect(mayDo('hydrant operator', scene, opens)).toBeUndefined();
    expect(mayDo('relay operator', scene, opens)?.field).toBe('valve');
    expect(viewFor('relay operator', scene, stored.state).gauges).toEqual([]);
    expect(viewFor('hydrant operator', scene, stored.state).gauges.map(({ id }) => id)).toContain(
      'P2.intake',
    );
  });
});

describe('a drill of the second rules', () => {
  it('replays to the same end, to the last bit, tally and all', () => {
    const boost = readStored('stored-boost-drill');
    expect(boost.scene.settings.rules).toBe(2);
    for (const frames of [[], [boost.keyframe]]) {
      const again = replayTo(boost.scene, boost.seed, boost.log, boost.tick, frames);
      expect(JSON.parse(JSON.stringify(again.state))).toEqual(boost.state);
      expect(again.log).toEqual(boost.log);
    }
  });
});
