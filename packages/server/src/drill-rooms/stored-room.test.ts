/**
 * A room as it lies in the database from before there were keys to watch and relay operators: it opens, goes
 * on, and ends.
 */
import { readFileSync } from 'node:fs';
import { type DrillScene, type LogEntry, PROTOCOL, type Submitted } from '@plugside/drill';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hashOf } from './keys.ts';
import { joined, type RoomServer, roomServer, Tablet } from './test-room.ts';

interface StoredDrill {
  scene: DrillScene;
  seed: number;
  tick: number;
  log: LogEntry[];
  keyframe: { tick: number };
  state: { tick: number; hoses: { flowGpm: number }[] };
}

const stored = JSON.parse(
  readFileSync(
    new URL('../../../drill/test-data/stored-relay-drill.json', import.meta.url),
    'utf8',
  ),
) as StoredDrill;
const { scene, seed, log, keyframe, tick, state } = stored;
const keys = { instructor: 'instructor-key', operator: 'operator-key' };
const code = 'KTMRB';

let server: RoomServer;
beforeAll(async () => {
  server = await roomServer();
  const run = await server.store.drillRuns.add({
    code,
    title: scene.title,
    evolution: 'relay',
    seed,
    scene,
    // Just these: no key to watch, and the three roles that there were.
    seats: {
      instructor: hashOf(keys.instructor),
      guided: true,
      roles: {
        'hydrant operator': { keyHash: hashOf(keys.operator) },
        'attack operator': { computer: true },
        'nozzle crew': {},
      },
    },
  });
  await server.store.drillRuns.write([
    {
      id: run!.id,
      since: run!.changedAt,
      changedAt: new Date(Date.parse(run!.changedAt) + 1).toISOString(),
      tick,
      keyframe,
      log: log.map((entry) => ({ seq: entry.seq, entry })),
    },
  ]);
});
afterAll(() => server.close());

describe('a room of before', () => {
  it('opens where it stood, with its roles, its keys and its settings', async () => {
    const operator = await joined(server.url, code, {
      role: 'hydrant operator',
      key: keys.operator,
    });
    expect(operator.welcome!.view.tick).toBe(tick);
    expect(operator.roles!.roles.map(({ role, seat }) => [role, seat])).toEqual([
      ['hydrant operator', 'taken'],
      ['attack operator', 'computer'],
      ['nozzle crew', 'free'],
    ]);
    const lead = await joined(server.url, code, { role: 'instructor', key: keys.instructor });
    expect(lead.welcome!.settings).toEqual({
      guided: true,
      faultsShown: false,
      hasWatchKey: false,
    });
    // Within the few ticks since: nothing was done in between.
    const flows = lead.view!.truth!.hoses.map(({ flowGpm }) => flowGpm);
    flows.forEach((gpm, at) => {
      expect(Math.abs(gpm - state.hoses[at]!.flowGpm)).toBeLessThan(1);
    });
    // The hydrant operator has both engines before the scene, as then.
    const set = { do: 'set governor', rig: 'P2', pdpPsi: 145 } satisfies Submitted['action'];
    expect(await operator.act(set)).toMatchObject({ type: 'taken' });
  });

  it('has no relay operator', async () => {
    const other = await new Tablet(server.url, code).opened();
    const told = other.next('error');
    other.say({ type: 'hello', v: PROTOCOL, role: 'relay operator' });
    expect(await told).toMatchObject({ code: 'no such role' });
  });

  it('lets nobody watch until the instructor makes a key for it, and ends judged', async () => {
    const other = await new Tablet(server.url, code).opened();
    for (const key of [undefined, 'KTMRBWXZ', keys.instructor]) {
      const told = other.next('error');
      other.say({ type: 'hello', v: PROTOCOL, ...(key !== undefined && { key }) });
      expect(await told).toMatchObject({ code: 'wrong key' });
    }
    const lead = await joined(server.url, code, { role: 'instructor', key: keys.instructor });
    const made = lead.next('watch key');
    lead.say({ type: 'new watch key' });
    const { key } = await made;
    await other.hello({ key });
    expect(other.view).toHaveProperty('truth');
    const ended = other.next('ended');
    lead.say({ type: 'end' });
    const { result } = await ended;
    // Judged by what it was begun with.
    expect(result.map((one) => one.key)).not.toContain('surge');
    expect(result.find((one) => one.key === 'order')).toMatchObject({ met: true });
  });
});
