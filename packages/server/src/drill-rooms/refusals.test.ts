/** Who should not act cannot, and whatever is sent, the room goes on for the others. */
import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { type FromRoom, PROTOCOL } from '@plugside/drill';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { LONGEST_MESSAGE_BYTES } from '../upgrade.ts';
import { joined, type Made, makeDrill, type RoomServer, roomServer, Tablet } from './test-room.ts';

let server: RoomServer;
let made: Made;
let instructor: Tablet;
let operator: Tablet;

beforeAll(async () => {
  server = await roomServer();
  made = await makeDrill(server.url, { evolution: 'boost through valve', seed: 1 });
  const { code, keys } = made;
  instructor = await joined(server.url, code, { role: 'instructor', key: keys.instructor });
  operator = await joined(server.url, code, { role: 'hydrant operator' });
});
afterAll(() => server.close());

const tablet = () => new Tablet(server.url, made.code).opened();

/** The others are still shown a clock that runs, and may act. */
async function expectGoingOn(): Promise<void> {
  const { tick } = instructor.view!;
  await instructor.until('later ticks', () => instructor.view!.tick > tick + 5);
  const said = await operator.act({ do: 'radio', message: { preset: 'copied' } });
  expect(said.type).toBe('taken');
}

/** Answer to a request that would become a WebSocket; 101 where it does. */
function statusOf(path: string, headers: Record<string, string>): Promise<number> {
  return new Promise((resolve, reject) => {
    const asked = request(new URL(path, server.url), {
      headers: {
        connection: 'Upgrade',
        upgrade: 'websocket',
        'sec-websocket-version': '13',
        'sec-websocket-key': 'dGhlIHNhbXBsZSBub25jZQ==',
        ...headers,
      },
    });
    asked.on('upgrade', (answer, socket) => {
      socket.destroy();
      resolve(answer.statusCode ?? 0);
    });
    asked.on('response', (answer) => {
      answer.resume();
      resolve(answer.statusCode ?? 0);
    });
    asked.on('error', reject).end();
  });
}

describe('a role', () => {
  it('is taken once, and comes back with its own key alone', async () => {
    const other = await tablet();
    const refusals = [
      [{ role: 'hydrant operator' }, 'role taken'],
      [{ role: 'hydrant operator', key: 'AAAAAAAAAAAAAAAAAAAAAA' }, 'wrong key'],
      [{ role: 'hydrant operator', key: made.keys.instructor }, 'wrong key'],
      [{ role: 'attack operator', key: operator.key }, 'wrong key'],
      [{ role: 'instructor' }, 'wrong key'],
      [{ role: 'instructor', key: operator.key }, 'wrong key'],
      [{ role: 'instructor', key: made.keys.watch }, 'wrong key'],
      [{ role: 'hydrant operator', key: made.keys.watch }, 'wrong key'],
      // The drill has no relay.
      [{ role: 'relay operator' }, 'no such role'],
      [{ role: 'relay operator', key: operator.key }, 'no such role'],
    ] as const;
    for (const [hello, code] of refusals) {
      const told = other.next('error');
      other.say({ type: 'hello', v: PROTOCOL, ...hello });
      expect(await told, JSON.stringify(hello)).toMatchObject({ code });
    }
    // Refused, it has not joined, and what it does is nobody's.
    const told = other.next('error');
    other.say({ type: 'action', clientSeq: 1, action: { do: 'pause' } });
    expect(await told).toMatchObject({ code: 'not understood' });
    expect(other.heard.every(({ type }) => type === 'error')).toBe(true);
    other.drop();
    await expectGoingOn();
  });

  it('does what is in its reach, and nothing for the instructor', async () => {
    const attack = await joined(server.url, made.code, { role: 'attack operator' });
    const before = JSON.stringify(instructor.view!.truth!.state.valves);
    const refused = [
      [{ do: 'set valve', valve: 'V1.handle', opening: 1 }, 'valve'],
      [{ do: 'pump in gear', rig: 'B1', inGear: true }, 'rig'],
      [{ do: 'pause' }, 'role'],
      [{ do: 'set speed', speed: 8 }, 'role'],
      [{ do: 'arm fault', fault: { id: 'f', kind: 'pump dies', rig: 'A1' } }, 'role'],
    ] as const;
    for (const [action, field] of refused) {
      const answer = await attack.act(action);
      expect(answer, action.do).toMatchObject({ type: 'refused', problem: { field } });
    }
    for (const message of [
      { type: 'end' },
      { type: 'free', role: 'hydrant operator' },
      { type: 'computer', role: 'hydrant operator', plays: true },
      { type: 'show faults', on: true },
      { type: 'new watch key' },
    ]) {
      const told = attack.next('error');
      attack.say(message);
      expect(await told).toMatchObject({ code: 'not allowed' });
    }
    attack.say({ type: 'leave' });
    await attack.whenClosed();
    await expectGoingOn();
    expect(JSON.stringify(instructor.view!.truth!.state.valves)).toBe(before);
  });

  it('of a watcher does nothing', async () => {
    const wall = await joined(server.url, made.code, { key: made.keys.watch });
    const answer = await wall.act({ do: 'radio', message: { text: 'I am the chief' } });
    expect(answer).toMatchObject({ type: 'refused', problem: { field: 'role' } });
    expect(JSON.stringify(wall.view!.radio)).not.toContain('chief');
    wall.drop();
  });
});

describe('to watch', () => {
  const faults = [
    { id: 'kink', kind: 'hose kinked', hose: 'lay', factor: 5 },
    { id: 'waits', kind: 'clapper stuck', valve: 'V1', atTick: 900_000 },
  ];
  const strictly = (one: Tablet) => JSON.stringify([one.view, one.scene, one.heard]);

  it('needs its key: none, a forged one and another’s are refused, and nothing is shown', async () => {
    const other = await tablet();
    const forged = ['KTMRBWXZ', made.keys.watch.slice(1), made.keys.watch.toLowerCase()];
    for (const key of [undefined, ...forged, made.keys.instructor, operator.key, made.code]) {
      for (const role of [{}, { role: 'observer' }]) {
        const told = other.next('error');
        other.say({ type: 'hello', v: PROTOCOL, ...role, ...(key !== undefined && { key }) });
        expect(await told, String(key)).toMatchObject({ code: 'wrong key' });
      }
    }
    // Refused, it is not in the room: no view comes, however long it waits.
    await expectGoingOn();
    expect(other.heard.every(({ type }) => type === 'error')).toBe(true);
    expect(other.view).toBeUndefined();
    // And at the same connection it may still take a free role.
    await other.hello({ role: 'nozzle crew' });
    expect(other.view).not.toHaveProperty('truth');
    other.say({ type: 'leave' });
    await other.whenClosed();
  });

  it('shows what the instructor made go wrong only when the instructor shows it', async () => {
    const drill = await makeDrill(server.url, { evolution: 'boost through valve', faults });
    const { code, keys } = drill;
    const lead = await joined(server.url, code, { role: 'instructor', key: keys.instructor });
    const wall = await joined(server.url, code, { key: keys.watch });
    const strikes = { id: 'dies', kind: 'pump dies', rig: 'A1', atTick: lead.view!.tick + 20 };
    await lead.act({ do: 'arm fault', fault: strikes });
    await lead.until('it strikes', () => lead.events.some(({ kind }) => kind === 'fault'));
    await lead.act({ do: 'lift fault', fault: 'kink' });
    const { tick } = lead.view!;
    await wall.until('later views', () => wall.view!.tick > tick + 10);
    expect(wall.view!.truth!.state.faults).toEqual([]);
    for (const word of ['kink', 'clapper', 'dies', 'dead', 'Fault', 'fault lifted']) {
      const said = strictly(wall).replaceAll(/"clapper(Gpm|Loss)?":/g, '');
      expect(said.includes(`${word}"`) || said.includes(`"${word}`), word).toBe(false);
    }
    const settings = lead.next('settings');
    lead.say({ type: 'show faults', on: true });
    expect(await settings).toMatchObject({ faultsShown: true, guided: false, hasWatchKey: true });
    // Those in effect; what waits is nobody’s but the instructor’s.
    await wall.until('shown', () => wall.view!.truth!.state.faults.length === 1);
    expect(wall.view!.truth!.state.faults[0]).toMatchObject({ id: 'dies' });
    expect(wall.scene!.faults).toEqual([]);
    lead.say({ type: 'show faults', on: false });
    await wall.until('hidden', () => wall.view!.truth!.state.faults.length === 0);
    // A player is not shown them either way.
    const crew = await joined(server.url, code, { role: 'nozzle crew' });
    expect(strictly(crew)).not.toContain('"faults":[{');
  });

  it('is let go by a new key, which alone holds from then on', async () => {
    const { code, keys } = await makeDrill(server.url, { evolution: 'boost through valve' });
    const lead = await joined(server.url, code, { role: 'instructor', key: keys.instructor });
    const wall = await joined(server.url, code, { key: keys.watch });
    const out = wall.next('error');
    const told = lead.next('watch key');
    lead.say({ type: 'new watch key' });
    expect(await out).toMatchObject({ code: 'wrong key' });
    expect(await wall.whenClosed()).toBe(4000);
    const { key } = await told;
    expect(key).not.toBe(keys.watch);
    const back = await new Tablet(server.url, code).opened();
    const refused = back.next('error');
    back.say({ type: 'hello', v: PROTOCOL, key: keys.watch });
    expect(await refused).toMatchObject({ code: 'wrong key' });
    await back.hello({ key });
    expect(back.view).toHaveProperty('truth');
    // To nobody else.
    const heard = (one: Tablet): FromRoom[] => one.heard.filter((m) => m.type === 'watch key');
    expect(heard(back)).toEqual([]);
    expect(heard(lead)).toHaveLength(1);
    expect(JSON.stringify(await server.store.drillRuns.running())).not.toContain(key);
  });

  it('is not found by trying, and those who act go on', async () => {
    const strict = await roomServer({ missesPerMin: 3 });
    try {
      const { code, keys } = await makeDrill(strict.url, { evolution: 'boost through valve' });
      const lead = await joined(strict.url, code, { role: 'instructor', key: keys.instructor });
      const guesser = await new Tablet(strict.url, code).opened();
      const answers: string[] = [];
      for (const key of ['BBBBBBBB', 'CCCCCCCC', 'DDDDDDDD', 'FFFFFFFF', keys.watch]) {
        const told = guesser.next('error');
        guesser.say({ type: 'hello', v: PROTOCOL, key });
        answers.push((await told).message);
      }
      // The right one after too many wrong ones is not told from another wrong one.
      expect(answers.map((text) => text.startsWith('Too many'))).toEqual([
        ...[false, false, false],
        ...[true, true],
      ]);
      expect(await lead.act({ do: 'say', text: 'Go on.' })).toMatchObject({ type: 'taken' });
    } finally {
      await strict.close();
    }
  });
});

describe('a message that is none', () => {
  const odd: [what: string, text: string][] = [
    ['broken JSON', '{"type":'],
    ['no object', '[1,2]'],
    ['nothing', ''],
    ['an unknown type', '{"type":"shutdown"}'],
    ['no number', '{"type":"action","clientSeq":"1","action":{}}'],
    ['a number of no use', '{"type":"action","clientSeq":1e99,"action":{}}'],
    ['a role that is none', '{"type":"hello","v":2,"role":"chief"}'],
    ['names of objects', '{"type":"__proto__","role":"constructor"}'],
    ['deep nesting', `{"type":"hello","v":${'['.repeat(5000)}${']'.repeat(5000)}}`],
    ['a NUL in a name', '{"type":"hello","v":2,"device":"a\\u0000b"}'],
  ];
  it.each(odd)('%s is told so', async (_, text) => {
    const other = await tablet();
    const told = other.next('error');
    other.socket.send(text);
    expect(await told).toMatchObject({ code: 'not understood' });
    other.drop();
  });

  it('and a version to come, or bytes', async () => {
    const other = await tablet();
    const version = other.next('error');
    other.say({ type: 'hello', v: PROTOCOL + 1 });
    expect(await version).toMatchObject({ code: 'version' });
    // One that watched without a key, before there was one.
    const older = other.next('error');
    other.say({ type: 'hello', v: 1 });
    expect(await older).toMatchObject({ code: 'version' });
    const binary = other.next('error');
    other.socket.send(Buffer.from('{"type":"hello","v":2}'));
    expect(await binary).toMatchObject({ code: 'not understood' });
    other.drop();
    await expectGoingOn();
  });

  it('an action of no meaning is refused with the field', async () => {
    const answer = await operator.act({ do: 'set valve', valve: 'V1.handle', opening: 2 });
    expect(answer).toMatchObject({ type: 'refused', problem: { field: 'opening' } });
  });

  it('anything at all harms nobody', async () => {
    const other = await joined(server.url, made.code, { key: made.keys.watch });
    const anything = fc.oneof(
      fc.json(),
      fc.string(),
      fc
        .record({
          type: fc.constantFrom(
            ...['hello', 'action', 'computer', 'free', 'guide', 'end', 'ping', ''],
            ...['show faults', 'new watch key'],
          ),
          v: fc.oneof(fc.integer(), fc.anything()),
          clientSeq: fc.oneof(fc.nat(100), fc.anything()),
          role: fc.constantFrom('hydrant operator', 'nozzle crew', 'observer', 7, null),
          key: fc.string(),
          action: fc.oneof(
            fc.record({ do: fc.constantFrom('couple', 'radio', 'pause'), hose: fc.string() }),
            fc.jsonValue(),
          ),
          at: fc.double(),
        })
        .map((one) => JSON.stringify(one) ?? ''),
    );
    for (const text of fc.sample(anything, { numRuns: 150, seed: 20_261_125 })) {
      other.socket.send(text);
      if (other.socket.bufferedAmount === 0) await new Promise((go) => setTimeout(go, 30));
    }
    other.drop();
    await expectGoingOn();
    expect(instructor.closed).toBeUndefined();
  });
});

describe('too much', () => {
  it('in one message closes that connection alone', async () => {
    const other = await tablet();
    other.socket.send('x'.repeat(LONGEST_MESSAGE_BYTES + 1));
    // RFC 6455, section 7.4.1: 1009, too big to process.
    expect(await other.whenClosed()).toBe(1009);
    await expectGoingOn();
  });

  it('of messages is left out, and closes that connection alone in the end', async () => {
    const other = await joined(server.url, made.code, { role: 'nozzle crew' });
    const before = instructor.view!.radio.length;
    for (let n = 1; n <= 2000; n += 1) {
      const action = { do: 'radio', message: { preset: 'say again' } };
      other.say({ type: 'action', clientSeq: n, action });
    }
    // RFC 6455, section 7.4.1: 1008, against the rules.
    expect(await other.whenClosed()).toBe(1008);
    expect(other.heard.some((one) => one.type === 'error' && one.code === 'too fast')).toBe(true);
    await expectGoingOn();
    const said = instructor.view!.radio.length - before;
    expect(said).toBeLessThan(200);
  });
});

describe('the way in', () => {
  const live = () => `/api/drills/${made.code}/live`;
  const host = () => new URL(server.url).host;

  it('is for this server’s own pages, under its own names', async () => {
    expect(await statusOf(live(), {})).toBe(101);
    expect(await statusOf(live(), { origin: `http://${host()}` })).toBe(101);
    expect(await statusOf(live(), { origin: 'http://evil.example' })).toBe(403);
    expect(await statusOf(live(), { origin: 'null' })).toBe(403);
    expect(await statusOf(live(), { host: 'evil.example' })).toBe(403);
    expect(await statusOf(live(), { host: 'evil.example', origin: 'http://evil.example' })).toBe(
      403,
    );
    await expectGoingOn();
  });

  it('is a code that runs, and a WebSocket', async () => {
    expect(await statusOf('/api/drills/BBBBB/live', {})).toBe(404);
    expect(await statusOf('/api/drills/%00/live', {})).toBe(404);
    expect(await statusOf('/api/records/hydrants', {})).toBe(200);
    expect(await statusOf('/nowhere/live', {})).toBe(404);
    // RFC 6455, section 4.4: the version that is understood is told with 426; ws answers so.
    expect(await statusOf(live(), { 'sec-websocket-version': '99' })).toBeGreaterThanOrEqual(400);
    expect(await statusOf(live(), { 'sec-websocket-key': 'short' })).toBe(400);
    expect((await fetch(new URL(live(), server.url))).status).toBe(426);
    // Asked for another protocol, HTTP goes on: RFC 9110, section 7.8.
    expect(await statusOf('/health', { upgrade: 'h2c' })).toBe(503);
    expect(await statusOf(live(), { upgrade: 'h2c' })).toBe(426);
  });

  it('is no hindrance to a request that asks for a newer HTTP in passing', async () => {
    const { port } = new URL(server.url);
    const body = JSON.stringify({
      name: 'H',
      longitude: -71,
      latitude: 42,
      note: 'x'.repeat(3000),
    });
    const headers = [
      'POST /api/records/hydrants HTTP/1.1',
      `Host: ${host()}`,
      'Connection: Upgrade, HTTP2-Settings',
      'Upgrade: h2c',
      'HTTP2-Settings: AAMAAABkAARAAAAAAAIAAAAA',
      'Content-Type: application/json',
      `Content-Length: ${body.length}`,
    ];
    const answer = await new Promise<string>((resolve, reject) => {
      let text = '';
      const socket = connect(Number(port), '127.0.0.1', () => {
        socket.write(`${headers.join('\r\n')}\r\n\r\n${body.slice(0, 100)}`);
        setTimeout(() => socket.write(body.slice(100)), 100);
      });
      socket.setEncoding('utf8').on('data', (part) => {
        text += part;
      });
      socket.on('end', () => resolve(text));
      socket.on('error', reject);
    });
    // RFC 9110, section 7.8: a server may ignore Upgrade.
    expect(answer).toMatch(/^HTTP\/1\.1 201 /);
    expect((await server.store.list('hydrants')).records[0]).toMatchObject({ name: 'H' });
  });

  it('answers bare connections that break off, or speak no HTTP', async () => {
    const { port } = new URL(server.url);
    for (const text of [
      `GET ${live()} HTTP/1.1\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n`,
      `GET ${live()} HTTP/1.1\r\nHost: ${host()}\r\nUpgrade: websocket\r\n`,
      `GET //evil HTTP/1.1\r\nHost: ${host()}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n`,
      `OPTIONS * HTTP/1.1\r\nHost: ${host()}\r\nConnection: Upgrade\r\nUpgrade: x\r\n\r\n`,
    ]) {
      await new Promise<void>((resolve) => {
        const socket = connect(Number(port), '127.0.0.1', () => socket.end(text));
        socket.resume().on('close', () => resolve());
        socket.on('error', () => {});
      });
    }
    await expectGoingOn();
  });

  it('is not found by trying', async () => {
    const strict = await roomServer({ missesPerMin: 3 });
    try {
      const { code } = await makeDrill(strict.url, { evolution: 'boost through valve' });
      const status = async (one: string) => (await strict.ask(`/drills/${one}`)).status;
      expect(await status(code.toLowerCase())).toBe(200);
      for (const one of ['BBBBB', 'CCCCC', 'x']) expect(await status(one)).toBe(404);
      expect(await status('DDDDD')).toBe(429);
      expect(await status(code)).toBe(429);
    } finally {
      await strict.close();
    }
  });

  it('lets so many in', async () => {
    const small = await roomServer({ mostInRoom: 2, mostConnections: 3, mostRooms: 1 });
    try {
      const { code, keys } = await makeDrill(small.url, { evolution: 'boost through valve' });
      const watching = { key: keys.watch };
      const second = await small.ask('/drills', { json: { evolution: 'boost through valve' } });
      expect(second.status).toBe(503);
      const here = [
        await joined(small.url, code, watching),
        await joined(small.url, code, watching),
      ];
      const third = new Tablet(small.url, code);
      const told = third.next('error');
      await third.opened();
      third.say({ type: 'hello', v: PROTOCOL, ...watching });
      expect(await told).toMatchObject({ code: 'full' });
      expect(await third.whenClosed()).toBe(4000);
      expect(here.map(({ closed }) => closed)).toEqual([undefined, undefined]);
    } finally {
      await small.close();
    }
  });

  it('closes on who says nothing', async () => {
    const brisk = await roomServer({ silentMs: 50 });
    try {
      const { code, keys } = await makeDrill(brisk.url, { evolution: 'boost through valve' });
      const hello = { type: 'hello', v: PROTOCOL, key: keys.watch };
      const mute = await new Tablet(brisk.url, code).opened();
      const dead = new WebSocket(`${brisk.url.replace('http', 'ws')}api/drills/${code}/live`, {
        autoPong: false,
      });
      dead.once('open', () => dead.send(JSON.stringify(hello)));
      const gone = new Promise((resolve) => dead.once('close', resolve));
      const awake = await joined(brisk.url, code, { key: keys.watch });
      await mute.whenClosed();
      await gone;
      const { tick } = awake.view!;
      await awake.until('later ticks', () => awake.view!.tick > tick + 5);
    } finally {
      await brisk.close();
    }
  });
});

describe('a request for a drill', () => {
  it.each([
    [{}, 422, 'evolution'],
    [{ evolution: 'boost through valve', plan: 'x' }, 422, 'evolution'],
    [{ evolution: 'nothing of the kind' }, 422, 'evolution'],
    [{ planId: '01ARZ3NDEKTSV4RRFFQ69G5FAV' }, 422, 'planId'],
    [{ plan: 'hydrants: 7' }, 422, 'plan:'],
    [{ evolution: 'boost through valve', start: 'hose laid' }, 422, 'start'],
    [{ evolution: 'boost through valve', seed: -1 }, 422, 'seed'],
    [{ evolution: 'boost through valve', crew: 'a\0b' }, 422, 'crew'],
    [{ evolution: 'boost through valve', benchmarks: { intakePsi: 'low' } }, 422, 'benchmarks'],
    [{ evolution: 'boost through valve', faults: [{ id: 'f', kind: 'fire' }] }, 422, 'faults[0]'],
    [
      { evolution: 'boost through valve', faults: [{ id: 'f', kind: 'pump dies', rig: 'Z' }] },
      422,
      'faults[0].rig',
    ],
  ])('%j is answered with %i, naming %s', async (json, status, field) => {
    const answer = await server.ask('/drills', { json });
    expect(answer.status).toBe(status);
    const { issues } = (await answer.json()) as { issues: { path: string }[] };
    expect(issues[0]!.path.startsWith(field)).toBe(true);
  });

  it('is met from a plan, as a file or among the records', async () => {
    const plan = readFileSync(
      new URL('../../../../examples/cold-store.yaml', import.meta.url),
      'utf8',
    );
    const record = await server.store.create('plans', { name: 'Cold store', text: plan });
    const faults = [
      { id: 'weak', kind: 'hydrant weak', hydrant: 'H-114', share: 0.5, atTick: 100 },
    ];
    for (const asked of [{ plan }, { planId: record.id, start: 'hose laid' }]) {
      const more = { title: 'Monday', seed: 1, benchmarks: { boostWithinS: 90 }, faults };
      const { code, keys } = await makeDrill(server.url, { ...asked, ...more });
      const leader = await joined(server.url, code, { role: 'instructor', key: keys.instructor });
      expect(leader.scene).toMatchObject({
        title: 'Monday',
        start: 'start' in asked ? 'hose laid' : 'hose connected',
        benchmarks: { boostWithinS: 90 },
        faults,
      });
      // What waits for them the crews are not told.
      const crew = await joined(server.url, code, { role: 'attack operator' });
      expect(crew.scene!.faults).toEqual([]);
      expect(crew.scene!.plan.title).toBe(leader.scene!.plan.title);
      leader.drop();
      crew.drop();
    }
  });

  it('to end it, or to look into it while it runs, needs the instructor’s key', async () => {
    for (const key of [undefined, 'wrong', operator.key]) {
      const with_ = key === undefined ? {} : { key };
      const end = await server.ask(`/drills/${made.code}`, { method: 'DELETE', ...with_ });
      expect(end.status).toBe(401);
      expect((await server.ask(`/drills/${made.roomId}/replay`, with_)).status).toBe(401);
    }
    const key = made.keys.instructor;
    expect((await server.ask(`/drills/${made.roomId}/replay`, { key })).status).toBe(200);
    const listed = await (await server.ask('/drills')).text();
    expect(listed).toContain(made.roomId);
    expect(listed).not.toContain(made.code);
    expect(JSON.stringify(await server.store.drillRuns.get(made.roomId))).not.toContain(key);
    await expectGoingOn();
  });
});
