/** A drill goes on after its server was killed in the middle of it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type DrillScene,
  type LogEntry,
  replayTo,
  type Submitted,
  step,
  viewFor,
} from '@plugside/drill';
import { openStore } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServed, type Served, serve } from '../crash/served-process.ts';
import { askAt, joined, makeDrill, type Tablet } from './test-room.ts';

const ROUNDS = 6;
/** Longest that the drill is left to run before the server is killed [ms]. */
const LONGEST_MS = 700;

const folder = mkdtempSync(join(tmpdir(), 'plugside-crash-drill-'));
let built = '';
let server: Served | undefined;
beforeAll(async () => {
  built = await buildServed();
}, 180_000);
afterAll(async () => {
  await server?.kill();
  for (const one of [folder, built]) rmSync(one, { recursive: true, force: true });
});

interface Replay {
  scene: DrillScene;
  seed: number;
  tick: number;
  log: LogEntry[];
}

/** Plain JSON, as it comes over the wire. */
const plain = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** Moves a valve to and fro and talks, as fast as it is acknowledged, until the server is gone. */
async function play(tablet: Tablet, valve: string, acknowledged: Map<number, number>) {
  try {
    for (let turn = 0; ; turn += 1) {
      const action =
        turn % 3 === 2
          ? { do: 'radio', message: { text: `Turn ${tablet.lastSeq + 1}.` } }
          : { do: 'set valve', valve, opening: (turn % 3) / 2 };
      const answer = await tablet.act(action);
      if (answer.type === 'taken') acknowledged.set(answer.clientSeq, answer.tick);
      else if (!answer.problem.message) throw new Error('Refused without a word.');
    }
  } catch (error) {
    // The connection breaks when the server is killed; anything else is a fault.
    if (!(error as Error).message.startsWith('Closed')) throw error;
  }
}

describe('a server killed with SIGKILL in the middle of a drill', () => {
  it('has every acknowledged action at its tick when it is back, the same state, and play goes on', async () => {
    const file = join(folder, 'records.sqlite');
    server = await serve(built, file);
    const made = await makeDrill(server.url, { evolution: 'boost through valve', seed: 5 });
    const { code, roomId, keys } = made;
    const instructorKey = { role: 'instructor', key: keys.instructor } as const;
    let operatorKey: string | undefined;
    const acknowledged = new Map<number, number>();
    let shownTick = 0;

    for (let round = 0; round < ROUNDS; round += 1) {
      const instructor = await joined(server.url, code, instructorKey);
      const operator = await joined(server.url, code, {
        role: 'hydrant operator',
        device: 'tablet 1',
        ...(operatorKey !== undefined && { key: operatorKey }),
      });
      // The first view is that of the log, replayed here from the very beginning.
      const answer = await askAt(server.url, `/drills/${roomId}/replay`, {
        key: keys.instructor,
      });
      const { scene, seed, log } = (await answer.json()) as Replay;
      expect(log.map(({ seq }) => seq)).toEqual(log.map((_, at) => at));
      const { view: first } = instructor.welcome!;
      const again = replayTo(scene, seed, log, first.tick);
      // Paused, much may have been done at this very tick.
      const rest = log.filter((one) => one.kind !== 'event' && one.seq >= again.state.seq);
      if (first.paused) step(again, rest as Submitted[]);
      expect(plain(viewFor('instructor', scene, again.state))).toEqual(first);
      // A second of the drill at its speed may be lost, where nothing was done.
      expect(first.tick).toBeGreaterThan(shownTick - 20 * first.speed * 2);

      // Every acknowledged action is there, once, at its tick.
      const mine = log.filter(
        (one) => one.kind !== 'event' && one.role === 'hydrant operator' && !one.byComputer,
      );
      const ticks = new Map(
        (await logRows(file, roomId))
          .filter(({ sender }) => sender === 'hydrant operator/tablet 1')
          .map(({ clientSeq, entry }) => [clientSeq!, (entry as LogEntry).tick]),
      );
      expect(ticks.size).toBe(mine.length);
      for (const [clientSeq, tick] of acknowledged) expect(ticks.get(clientSeq)).toBe(tick);
      expect(operator.lastSeq).toBe(Math.max(0, ...ticks.keys()));

      if (round === 0) {
        operatorKey = operator.key;
        for (const role of ['attack operator', 'nozzle crew']) {
          instructor.say({ type: 'computer', role, plays: true });
        }
        await instructor.act({ do: 'set speed', speed: 4 });
      }
      expect(operator.roles!.roles).toContainEqual({
        role: 'hydrant operator',
        seat: 'taken',
        connected: true,
      });
      const before = acknowledged.size;
      const playing = play(operator, 'V1.handle', acknowledged);
      const leading = round === 3 ? stopAndGo(instructor) : Promise.resolve();
      await operator.until('acknowledged', () => acknowledged.size > before);
      await new Promise((go) => setTimeout(go, Math.random() * LONGEST_MS));
      await server.kill();
      await Promise.all([playing, leading]);
      shownTick = instructor.view!.tick;
      expect(acknowledged.size).toBeGreaterThan(before);
      server = await serve(built, file);
    }

    const instructor = await joined(server.url, code, instructorKey);
    const ended = instructor.next('ended');
    instructor.say({ type: 'end' });
    expect((await ended).result.length).toBeGreaterThan(0);
    await server.kill();
    server = await serve(built, file);
    const runs = await askAt(server.url, '/drill-runs');
    expect(await runs.json()).toMatchObject({
      runs: [{ roomId, endedAt: expect.any(String), result: expect.any(Array) }],
    });
    expect((await askAt(server.url, `/drills/${code}`)).status).toBe(404);
    await server.kill();
  }, 300_000);
});

/** The log as it is in the file. */
async function logRows(file: string, roomId: string) {
  const store = await openStore({ file });
  try {
    return await store.drillRuns.log(roomId);
  } finally {
    await store.close();
  }
}

/** Pauses the drill and lets it go, so that one of the kills finds it paused. */
async function stopAndGo(instructor: Tablet): Promise<void> {
  try {
    for (;;) {
      await instructor.act({ do: 'pause' });
      await instructor.act({ do: 'say', text: 'Stand fast.' });
      await instructor.act({ do: 'resume' });
    }
  } catch (error) {
    if (!(error as Error).message.startsWith('Closed')) throw error;
  }
}
