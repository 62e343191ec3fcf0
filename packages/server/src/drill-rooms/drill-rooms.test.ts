/** Several devices on one drill, over real connections to a real server. */
import {
  type Condition,
  type DrillLog,
  type DrillScene,
  type DrillState,
  holds,
  type PlayedRole,
  postOf,
  replayTo,
  rolesIn,
  viewFor,
} from '@plugside/drill';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { joined, makeDrill, type RoomServer, roomServer, type Tablet } from './test-room.ts';

const evolution = 'boost through valve';
let server: RoomServer;

beforeAll(async () => {
  server = await roomServer();
});
afterAll(() => server.close());

const make = (more: object = {}) => makeDrill(server.url, { evolution, seed: 7, ...more });
const join = (...[code, given]: [string, Parameters<typeof joined>[2]?]) =>
  joined(server.url, code, given);

/** A condition on the truth as the instructor is shown it; what was said is answered for by `act`. */
function isDone(done: Condition, { scene, view }: Tablet): boolean {
  if (done.is === 'said') return true;
  const heard = { said: [], radio: view!.radio, tally: { stepTicks: [] } };
  return holds(done, scene!, { ...view!.truth!.state, ...heard } as unknown as DrillState);
}

interface Replay {
  scene: DrillScene;
  seed: number;
  tick: number;
  log: DrillLog;
  result?: { key: string; value?: number; met: boolean }[];
}

describe.each([
  ['boost through valve', 'B shift'],
  ['relay', 'C shift'],
])('a drill on several devices: %s', (key, crew) => {
  it('is played through, each seeing what is in reach and what it needs to hear', async () => {
    const { code, roomId, keys } = await make({ evolution: key, crew });
    const instructor = await join(code, { role: 'instructor', key: keys.instructor });
    const players = {} as Record<PlayedRole, Tablet>;
    const { scene } = instructor;
    const played = rolesIn(scene!);
    for (const role of played) players[role] = await join(code, { role });
    await instructor.act({ do: 'set speed', speed: 8 });

    for (const step of scene!.steps) {
      for (const action of step.how) {
        expect(await players[step.role].act(action), step.id).toMatchObject({ type: 'taken' });
      }
      await instructor.until(step.id, () => isDone(step.done, instructor));
    }

    // What each was shown at the end: its own place, and no truth.
    for (const role of played) {
      const { view, scene: part, heard } = players[role];
      const post = postOf(scene!, role);
      expect(view).not.toHaveProperty('truth');
      expect(view!.valves.map(({ pieceId }) => pieceId).filter((id) => !post.includes(id))).toEqual(
        [],
      );
      expect(view!.pumps.map(({ rigId }) => rigId).filter((id) => !post.includes(id))).toEqual([]);
      expect(part!.steps.every((step) => step.role === role)).toBe(true);
      expect(heard.filter(({ type }) => type === 'error')).toEqual([]);
      expect(view!.radio.map(({ preset }) => preset)).toEqual(
        scene!.expectedMessages.map(({ preset }) => preset),
      );
    }
    const heard = (tablet: Tablet, what: string) =>
      tablet.until(what, () => tablet.events.some(({ kind }) => kind === what));
    await heard(players['nozzle crew'], 'water at nozzle');
    await heard(players['hydrant operator'], 'hose filled');
    await heard(instructor, 'water at nozzle');
    expect(players['hydrant operator'].events.map(({ kind }) => kind)).not.toContain(
      'water at nozzle',
    );
    // Deltas are merged into just what the server had.
    const ended = players['nozzle crew'].next('ended');
    instructor.say({ type: 'end' });
    const { result } = await ended;
    expect(result.find(({ key }) => key === 'order')).toMatchObject({ value: 0, met: true });
    expect(result.find(({ key }) => key === 'messages')).toMatchObject({ value: 0, met: true });

    const answer = await server.ask(`/drills/${roomId}/replay`);
    const replay = (await answer.json()) as Replay;
    expect(replay.result).toEqual(JSON.parse(JSON.stringify(result)));
    // Asked before all is played again: a connection that rests so long meanwhile is closed.
    const list = (await (
      await server.ask(`/drill-runs?crew=${encodeURIComponent(crew)}`)
    ).json()) as {
      runs: object[];
    };
    expect((await server.ask(`/drills/${code}`)).status).toBe(404);
    for (const role of played) {
      const { view } = players[role];
      const again = replayTo(replay.scene, replay.seed, replay.log, view!.tick);
      expect(JSON.parse(JSON.stringify(viewFor(role, replay.scene, again.state)))).toEqual(view);
    }
    expect(list.runs).toEqual([
      expect.objectContaining({ roomId, crew, endedAt: expect.any(String), result }),
    ]);
  });
});
