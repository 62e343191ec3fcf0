import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problemIn, type TestServer, testServer } from '../test-server.ts';

let server: TestServer;

beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

interface Runs {
  runs: { roomId: string; endedAt?: string }[];
}

const runs = async () => ((await (await server.ask('/drill-runs')).json()) as Runs).runs;

const make = async () => {
  const json = { evolution: 'boost through valve' };
  return (await (await server.ask('/drills', { json })).json()) as {
    roomId: string;
    code: string;
    keys: { instructor: string };
  };
};

const end = async ({ code, keys }: Awaited<ReturnType<typeof make>>) => {
  const headers = { authorization: `Bearer ${keys.instructor}` };
  expect((await server.ask(`/drills/${code}`, { method: 'DELETE', headers })).status).toBe(200);
};

const remove = (roomId: string, ifMatch?: string) =>
  server.ask(`/drill-runs/${roomId}`, {
    method: 'DELETE',
    headers: ifMatch === undefined ? {} : { 'if-match': ifMatch },
  });

describe('removing a drill', () => {
  it('takes one that has ended away with its log, and no other', async () => {
    const [one, other] = [await make(), await make()];
    await end(one);
    await end(other);
    const { endedAt } = (await runs()).find(({ roomId }) => roomId === one.roomId)!;
    expect((await remove(one.roomId, `"${endedAt}"`)).status).toBe(204);
    expect((await runs()).map(({ roomId }) => roomId)).toEqual([other.roomId]);
    expect(await server.store.drillRuns.log(one.roomId)).toEqual([]);
    expect((await server.ask(`/drills/${one.roomId}/replay`)).status).toBe(404);
    expect((await server.ask(`/drills/${other.roomId}/replay`)).status).toBe(200);
    expect((await remove(one.roomId, `"${endedAt}"`)).status).toBe(404);
  });

  it('refuses one that runs, one that was not read, and one that ended at another moment', async () => {
    const running = await make();
    const refused = await remove(running.roomId, '"2026-11-30T19:20:03.511Z"');
    expect(refused.status).toBe(409);
    expect((await problemIn(refused)).detail).toContain('still runs');
    await end(running);
    const { endedAt } = (await runs()).find(({ roomId }) => roomId === running.roomId)!;
    expect((await remove(running.roomId)).status).toBe(428);
    expect((await remove(running.roomId, endedAt)).status).toBe(400);
    expect((await remove(running.roomId, '"2020-01-01T00:00:00.000Z"')).status).toBe(409);
    expect((await remove('01ARZ3NDEKTSV4RRFFQ69G5FAV', `"${endedAt}"`)).status).toBe(404);
    expect((await remove('..%2f', `"${endedAt}"`)).status).toBe(404);
    expect((await runs()).map(({ roomId }) => roomId)).toContain(running.roomId);
  });
});
