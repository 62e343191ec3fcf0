/** What one address may take of a server, and what it may not do to a role's device. */
import { request } from 'node:http';
import { readAction } from '@plugside/drill';
import { afterEach, describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { addressKey, fromAddress } from './from-address.ts';
import { defaultRoomSettings, type RoomSettings } from './room-settings.ts';
import { joined, makeDrill, type RoomServer, roomServer } from './test-room.ts';

let server: RoomServer | undefined;
afterEach(async () => {
  await server?.close();
  server = undefined;
});

const started = async (settings: Partial<RoomSettings> = {}) => {
  server = await roomServer(settings);
  return server;
};

interface Problem {
  status: number;
  title: string;
  detail: string;
}

/** Asks for a drill from an address of this machine. */
function makeFrom(url: string, localAddress: string): Promise<{ status: number; body: Problem }> {
  return new Promise((resolve, reject) => {
    const sent = request(
      new URL('api/drills', url),
      { method: 'POST', localAddress, headers: { 'content-type': 'application/json' } },
      (answer) => {
        let text = '';
        answer.setEncoding('utf8').on('data', (part: string) => {
          text += part;
        });
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, body: JSON.parse(text) as Problem }),
        );
      },
    );
    sent.on('error', reject);
    sent.end(JSON.stringify({ evolution: 'boost through valve' }));
  });
}

/** The answer to a connection: 101 where it is taken. */
function connectFrom(url: string, code: string, localAddress: string) {
  return new Promise<{ status: number; body: string; socket: WebSocket }>((resolve) => {
    const socket = new WebSocket(`${url.replace('http', 'ws')}api/drills/${code}/live`, {
      localAddress,
    });
    socket.on('error', () => {});
    socket.once('open', () => resolve({ status: 101, body: '', socket }));
    socket.once('unexpected-response', (_, answer) => {
      let body = '';
      answer.setEncoding('utf8').on('data', (part: string) => {
        body += part;
      });
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, body, socket }));
    });
  });
}

describe('one address', () => {
  it('has its own share of the drills, and leaves the others theirs', async () => {
    const { url, ask } = await started({ mostRoomsFromAddress: 3, mostRooms: 5 });
    // All at once: none slips through between looking and taking.
    const made = await Promise.all(Array.from({ length: 8 }, () => makeFrom(url, '127.0.0.1')));
    expect(made.map(({ status }) => status).sort()).toEqual([
      201, 201, 201, 429, 429, 429, 429, 429,
    ]);
    const { body } = made.find(({ status }) => status === 429)!;
    expect(body.title).toBe('Too many from one address');
    expect(body.detail).toMatch(/^3 drills .* allowed: 3\. End one/);
    expect((await makeFrom(url, '127.0.0.2')).status).toBe(201);
    // One that has ended counts no more.
    const { code, keys } = made.find(({ status }) => status === 201)!.body as unknown as {
      code: string;
      keys: { instructor: string };
    };
    expect((await ask(`/drills/${code}`, { method: 'DELETE', key: keys.instructor })).status).toBe(
      200,
    );
    expect((await makeFrom(url, '127.0.0.1')).status).toBe(201);
    expect((await makeFrom(url, '127.0.0.1')).status).toBe(429);
  });

  it('has its own share of the connections, joined or idle, and has it back when one closes', async () => {
    const { url } = await started({ mostConnectionsFromAddress: 2 });
    const { code } = await makeDrill(url, { evolution: 'boost through valve' });
    const one = await connectFrom(url, code, '127.0.0.1');
    const two = await connectFrom(url, code, '127.0.0.1');
    expect([one.status, two.status]).toEqual([101, 101]);
    const three = await connectFrom(url, code, '127.0.0.1');
    expect(three.status).toBe(429);
    expect(JSON.parse(three.body)).toMatchObject({ title: 'Too many from one address' });
    expect((JSON.parse(three.body) as Problem).detail).toMatch(/^2 devices .* allowed: 2\. Close/);
    const other = await connectFrom(url, code, '127.0.0.2');
    expect(other.status).toBe(101);
    const gone = new Promise((resolve) => one.socket.once('close', resolve));
    one.socket.close();
    await gone;
    await expect
      .poll(async () => {
        const again = await connectFrom(url, code, '127.0.0.1');
        again.socket.terminate();
        return again.status;
      })
      .toBe(101);
    for (const { socket } of [two, other]) socket.terminate();
  });

  it('leaves a classroom behind one router its rooms and devices, and others some', () => {
    const { mostRooms, mostRoomsFromAddress, mostConnections, mostConnectionsFromAddress } =
      defaultRoomSettings;
    // Fifty rooms of four devices, as measured (bench/rooms.bench.ts).
    expect(mostRoomsFromAddress).toBeGreaterThanOrEqual(50);
    expect(mostConnectionsFromAddress).toBeGreaterThanOrEqual(50 * 4);
    expect(mostRoomsFromAddress).toBeLessThan(mostRooms);
    expect(mostConnectionsFromAddress).toBeLessThan(mostConnections / 2);
  });

  // RFC 4291, sections 2.2, 2.5.1 and 2.5.5.2; documentation addresses of RFC 3849 and RFC 5737.
  it.each([
    ['192.0.2.7', '::ffff:192.0.2.7', true],
    ['2001:db8:1:2::1', '2001:db8:1:2:ffff:1:2:3', true],
    ['2001:0db8:0001:0002::1', '2001:db8:1:2::9', true],
    ['2001:db8:1:2::1', '2001:db8:1:3::1', false],
    ['2001:db8::1', '2001:db8::ffff:2', true],
    ['192.0.2.7', '192.0.2.8', false],
    ['::1', '127.0.0.1', false],
    ['fe80::1%eth0', 'fe80::2', true],
  ])('%s and %s are one: %s', (a, b, same) => {
    expect(addressKey(a) === addressKey(b)).toBe(same);
    const counted = fromAddress();
    const giveBack = counted.take(a);
    expect(counted.has(b)).toBe(same ? 1 : 0);
    giveBack();
    giveBack();
    expect(counted.has(a)).toBe(0);
  });
});

describe('an action’s number', () => {
  it('that is far above the last one is refused, and the role goes on below it', async () => {
    const { url } = await started();
    const { code } = await makeDrill(url, { evolution: 'boost through valve' });
    const tablet = await joined(url, code, { role: 'hydrant operator', device: 'tablet 1' });
    const copied = { do: 'radio', message: { preset: 'copied' } } as const;
    tablet.lastSeq = 2_147_483_646;
    const refused = await tablet.act(copied);
    expect(refused).toMatchObject({ type: 'refused', problem: { field: 'clientSeq' } });
    expect(refused.type === 'refused' && refused.problem.message).toMatch(/allowed: 1 to 10000/);
    // The same role, by the same name: neither is lost.
    tablet.lastSeq = 0;
    expect(await tablet.act(copied)).toMatchObject({ type: 'taken', clientSeq: 1 });
    tablet.lastSeq = 10_000;
    expect(await tablet.act(copied)).toMatchObject({ type: 'taken', clientSeq: 10_001 });
    tablet.drop();
  });
});

describe('what others see of a text', () => {
  it('is plain: a crew’s name, and words on the radio', async () => {
    const { ask } = await started();
    const bell = String.fromCharCode(7);
    const turned = String.fromCharCode(0x202e);
    for (const crew of [`B${turned}shift`, `B${bell}shift`, 'B\nshift']) {
      const answer = await ask('/drills', { json: { evolution: 'boost through valve', crew } });
      expect(answer.status, JSON.stringify(crew)).toBe(422);
      expect(await answer.text()).toMatch(/crew/);
    }
    expect(readAction({ do: 'say', text: `Stop${turned}` })).toMatchObject({
      problem: { field: 'text' },
    });
  });
});

describe('a drill asked for with two sources, or none', () => {
  it.each([
    [{ evolution: 'relay', planId: 'x' }, /evolution and planId are given/],
    [{ evolution: 'relay', plan: 'x', planId: 'y' }, /evolution and plan and planId are given/],
    [{}, /none of them is given/],
  ])('%j says which were given', async (json, words) => {
    const { ask } = await started();
    const answer = await ask('/drills', { json });
    expect(answer.status).toBe(422);
    const { detail } = (await answer.json()) as Problem;
    expect(detail).toMatch(words);
    expect(detail).not.toMatch(/is \d/);
  });
});
