/**
 * A relay drill stored before there were relay operators: three roles, the hydrant operator at both engines
 * before the scene. What it must come to is what was stored with it, by the version that ran it: nobody's
 * score of an old drill may change because the program did.
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

const stored = JSON.parse(
  readFileSync(new URL('../test-data/stored-relay-drill.json', import.meta.url), 'utf8'),
) as StoredDrill;
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
