/** Devices that drop out, come late, come back, or do not keep up. */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DrillView, LogEntry } from '@plugside/drill';
import { openStore } from '@plugside/records';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  joined,
  type Made,
  makeDrill,
  type RoomServer,
  roomServer,
  type Tablet,
} from './test-room.ts';

/** What waits a minute waits no time here. */
const hasty = { heldAfterMs: 0, asideAfterMs: 0 };
const evolution = 'boost through valve';
let server: RoomServer;

beforeAll(async () => {
  server = await roomServer(hasty);
});
afterAll(() => server.close());

const make = () => makeDrill(server.url, { evolution, seed: 3 });
const lead = ({ code, keys }: Made) =>
  joined(server.url, code, { role: 'instructor', key: keys.instructor });
const seat = (tablet: Tablet, role: string) =>
  tablet.roles!.roles.find((one) => one.role === role)!;

interface Facts {
  state: string;
  timeS: number;
}

async function factsOf(code: string): Promise<Facts> {
  return (await (await server.ask(`/drills/${code}`)).json()) as Facts;
}

describe('a device that drops out', () => {
  it('comes back to the present, its role kept for it meanwhile', async () => {
    const made = await make();
    const instructor = await lead(made);
    const operator = await joined(server.url, made.code, { role: 'hydrant operator' });
    const { key } = operator;
    await operator.act({ do: 'radio', message: { preset: 'hooked up' } });
    const tick = operator.view!.tick;
    operator.drop();
    await instructor.until('gone', () => !seat(instructor, 'hydrant operator').connected);
    expect(seat(instructor, 'hydrant operator').seat).toBe('taken');

    // 30 s of the drill, as it would be of the clock on the wall.
    await instructor.act({ do: 'set speed', speed: 8 });
    await instructor.until('30 s', () => instructor.view!.tick > tick + 30 * 20);
    const thief = await joined(server.url, made.code, { key: made.keys.watch });
    expect(seat(thief, 'hydrant operator').seat).toBe('taken');
    await instructor.act({ do: 'set speed', speed: 1 });

    const back = await joined(server.url, made.code, { role: 'hydrant operator', key: key! });
    expect(back.view!.tick).toBeGreaterThan(tick + 30 * 20);
    expect(back.view!.radio.map(({ preset }) => preset)).toEqual(['hooked up']);
    expect(back.lastSeq).toBe(1);
    expect(await back.act({ do: 'radio', message: { preset: 'copied' } })).toMatchObject({
      type: 'taken',
      clientSeq: 2,
    });
  });

  it('does nothing twice that it says again', async () => {
    const { code } = await make();
    const operator = await joined(server.url, code, { role: 'attack operator' });
    await operator.act({ do: 'radio', message: { preset: 'on tank' } });
    operator.say({
      type: 'action',
      clientSeq: 1,
      action: { do: 'radio', message: { preset: 'on tank' } },
    });
    expect(await operator.next('refused')).toMatchObject({ problem: { field: 'clientSeq' } });
    await operator.act({ do: 'radio', message: { preset: 'copied' } });
    await operator.until('the second', () => operator.view!.radio.length === 2);
    expect(operator.view!.radio.map(({ preset }) => preset)).toEqual(['on tank', 'copied']);
  });

  it('is at one place at a time', async () => {
    const { code } = await make();
    const first = await joined(server.url, code, { role: 'nozzle crew' });
    const replaced = first.next('error');
    const second = await joined(server.url, code, { role: 'nozzle crew', key: first.key! });
    expect(await replaced).toMatchObject({ code: 'replaced' });
    expect(await first.whenClosed()).toBe(4000);
    expect(await second.act({ do: 'radio', message: { preset: 'copied' } })).toMatchObject({
      type: 'taken',
    });
    expect(seat(second, 'nozzle crew')).toMatchObject({ seat: 'taken', connected: true });
  });
});

describe('one who comes late', () => {
  it('hears what was said before, and sees the truth where it watches', async () => {
    const made = await make();
    const instructor = await lead(made);
    const operator = await joined(server.url, made.code, { role: 'hydrant operator' });
    await operator.act({ do: 'radio', message: { preset: 'pressure set', psi: 120 } });
    await instructor.act({ do: 'say', text: 'Begin.', to: 'hydrant operator' });
    await instructor.until('both said', () => instructor.view!.radio.length === 2);

    const wall = await joined(server.url, made.code, { key: made.keys.watch });
    expect(wall.view!.radio).toEqual(instructor.view!.radio);
    expect(wall.view).toHaveProperty('truth');
    expect(wall.scene).toEqual(instructor.scene);
    // What was said to another role alone it does not hear.
    const attack = await joined(server.url, made.code, { role: 'attack operator' });
    expect(attack.view!.radio.map(({ text }) => text)).toEqual([expect.stringContaining('120')]);
    expect(wall.roles).toMatchObject({ instructors: 1, observers: 1 });
  });
});

describe('a role', () => {
  it('is freed by the instructor, and taken by another', async () => {
    const made = await make();
    const instructor = await lead(made);
    const lost = await joined(server.url, made.code, { role: 'attack operator' });
    const freed = lost.next('error');
    // It goes on as if nothing had been said to it.
    lost.socket.on('message', (data) => {
      if (!String(data).includes('"freed"')) return;
      const action = { do: 'radio', message: { preset: 'stop' } };
      lost.say({ type: 'action', clientSeq: 9, action });
    });
    instructor.say({ type: 'free', role: 'attack operator' });
    expect(await freed).toMatchObject({ code: 'freed' });
    await instructor.until('free', () => seat(instructor, 'attack operator').seat === 'free');
    const other = await joined(server.url, made.code, { role: 'attack operator' });
    expect(other.key).not.toBe(lost.key);
    await other.act({ do: 'radio', message: { preset: 'copied' } });
    await instructor.until('said', () => instructor.view!.radio.length > 0);
    expect(instructor.view!.radio.map(({ preset }) => preset)).toEqual(['copied']);
    const wall = await joined(server.url, made.code, { key: made.keys.watch });
    wall.say({ type: 'leave' });
    await wall.whenClosed();
  });

  it('is played by the computer until somebody takes it', async () => {
    const made = await make();
    const instructor = await lead(made);
    const scene = instructor.scene!;
    instructor.say({ type: 'computer', role: 'hydrant operator', plays: true });
    await instructor.until(
      'computer',
      () => seat(instructor, 'hydrant operator').seat === 'computer',
    );
    await instructor.act({ do: 'set speed', speed: 8 });
    const first = scene.steps.find(({ role }) => role === 'hydrant operator')!.how[0]!;
    if (first.do !== 'couple') throw new Error('The evolution begins otherwise.');
    await instructor.until('coupled', () =>
      instructor.view!.hoseEnds.some(
        ({ hose, end, port }) => hose === first.hose && end === first.end && port === first.port,
      ),
    );
    const person = await joined(server.url, made.code, { role: 'hydrant operator' });
    await instructor.until('taken', () => seat(instructor, 'hydrant operator').seat === 'taken');
    const { tick } = instructor.view!;
    await instructor.until('5 s', () => instructor.view!.tick > tick + 100);
    const key = made.keys.instructor;
    const replay = await server.ask(`/drills/${made.roomId}/replay`, { key });
    const { log } = (await replay.json()) as { log: LogEntry[] };
    const played = log.filter((one) => one.kind === 'action' && one.byComputer);
    expect(played.length).toBeGreaterThan(0);
    expect(played.every((one) => one.tick <= tick)).toBe(true);
    person.drop();
  });

  it('is shown its next step where the drill is guided', async () => {
    const made = await make();
    const instructor = await lead(made);
    const operator = await joined(server.url, made.code, { role: 'hydrant operator' });
    expect(operator.view).not.toHaveProperty('next');
    instructor.say({ type: 'guide', on: true });
    const step = instructor.scene!.steps.find(({ role }) => role === 'hydrant operator')!;
    await operator.until('guided', () => operator.view!.next?.id === step.id);
    instructor.say({ type: 'guide', on: false });
    await operator.until('no more', () => !('next' in operator.view!));
  });
});

describe('the clock', () => {
  it('stands until somebody is here, and while nobody is', async () => {
    const made = await make();
    expect(await factsOf(made.code)).toMatchObject({ state: 'paused', timeS: 0 });
    const first = await lead(made);
    await first.until('a second', () => first.view!.tick > 20);
    first.drop();
    let facts = await factsOf(made.code);
    while (facts.state !== 'paused') facts = await factsOf(made.code);
    await new Promise((go) => setTimeout(go, 300));
    const { timeS } = await factsOf(made.code);
    // Out of memory and back: it is where it stood.
    expect(timeS).toBe(facts.timeS);
    const back = await lead(made);
    expect(back.view!.tick).toBeGreaterThanOrEqual(timeS * 20);
    expect(back.lastSeq).toBe(first.lastSeq);
    await back.until('on', () => back.view!.tick > timeS * 20 + 20);
  });

  it('is stopped and let go by the instructor, and others are told', async () => {
    const made = await make();
    const instructor = await lead(made);
    const operator = await joined(server.url, made.code, { role: 'hydrant operator' });
    const stops = operator.next('paused');
    await instructor.act({ do: 'pause' });
    expect(await stops).toMatchObject({ paused: true, by: 'instructor' });
    // Hands may be laid on all the same; the water waits.
    expect(await operator.act({ do: 'radio', message: { preset: 'copied' } })).toMatchObject({
      type: 'taken',
    });
    const stood = (await factsOf(made.code)).timeS;
    expect((await factsOf(made.code)).timeS).toBe(stood);
    const goes = operator.next('paused');
    await instructor.act({ do: 'resume' });
    expect(await goes).toMatchObject({ paused: false });
    await operator.until('on', () => operator.view!.tick > stood * 20 + 20);
  });

  it('ends a drill that nobody comes to', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plugside-idle-'));
    const target = { file: join(folder, 'records.sqlite') };
    try {
      const first = await roomServer({}, target);
      const made = await makeDrill(first.url, { evolution });
      await first.close();
      const later = await roomServer({ endedAfterMs: 0, mostRooms: 1 }, target);
      // Room is made for another one.
      const other = await makeDrill(later.url, { evolution });
      expect(other.code).not.toBe(made.code);
      expect(await later.store.drillRuns.get(made.roomId)).toMatchObject({
        endedAt: expect.any(String),
        result: expect.any(Array),
      });
      await later.close();
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe('a server that is stopped', () => {
  it('says so, and goes on from that very tick when it is back', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plugside-stop-'));
    const target = { file: join(folder, 'records.sqlite') };
    try {
      const first = await roomServer({}, target);
      const made = await makeDrill(first.url, { evolution, seed: 4 });
      const crew = await joined(first.url, made.code, { role: 'attack operator' });
      await crew.act({ do: 'set valve', valve: 'A1.discharge1', opening: 0.5, overS: 5 });
      await crew.until('a second', () => crew.view!.tick > 20);
      const gone = crew.next('error');
      await first.close();
      expect(await gone).toMatchObject({ code: 'gone' });
      // RFC 6455, section 7.4.1: 1001, going away.
      expect(await crew.whenClosed()).toBe(1001);

      const second = await roomServer({}, target);
      const back = await joined(second.url, made.code, { role: 'attack operator', key: crew.key! });
      expect(back.view!.tick).toBeGreaterThanOrEqual(crew.view!.tick);
      expect(back.view!.valves.find(({ id }) => id === 'A1.discharge1')!.target).toBe(0.5);
      await second.close();
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe('a disk that takes nothing', () => {
  it('acknowledges nothing, stops the clock, and all goes on when it takes again', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plugside-full-'));
    const file = join(folder, 'records.sqlite');
    const kept = await roomServer({}, { file });
    const other = new Database(file);
    try {
      const made = await makeDrill(kept.url, { evolution });
      const operator = await joined(kept.url, made.code, { role: 'hydrant operator' });
      // Another program writes, and does not end.
      other.exec('begin immediate');
      const stands = operator.next('paused', ({ by }) => by === 'not kept');
      const answer = operator.act({ do: 'radio', message: { preset: 'hooked up' } });
      await stands;
      expect(operator.heard.some(({ type }) => type === 'taken')).toBe(false);
      const goes = operator.next('paused', ({ paused }) => !paused);
      other.exec('rollback');
      expect(await answer).toMatchObject({ type: 'taken' });
      await goes;
      expect(await kept.store.drillRuns.log(made.roomId)).toContainEqual(
        expect.objectContaining({ sender: 'hydrant operator/', clientSeq: 1 }),
      );
      const { tick } = operator.view!;
      await operator.until('on', () => operator.view!.tick > tick + 20);
    } finally {
      other.close();
      await kept.close();
      rmSync(folder, { recursive: true });
    }
  });
});

describe('a device that does not keep up', () => {
  it('is left out of views, and shown all of it when it reads again', async () => {
    const quick = await roomServer({ beatMs: 4, beatsPerView: 1, mostWaitingBytes: 20_000 });
    try {
      const { code, keys } = await makeDrill(quick.url, { evolution });
      const slow = await joined(quick.url, code, { key: keys.watch });
      const fast = await joined(quick.url, code, { role: 'instructor', key: keys.instructor });
      // Many views with much new in each.
      await fast.act({ do: 'set speed', speed: 8 });
      slow.socket.pause();
      const before = slow.viewBytes.length;
      // The system's own buffers between the two hold up to 4 MB (tcp_wmem).
      let bytes = 0;
      for (let read = 0; bytes < 6_000_000; ) {
        await fast.until('views', () => fast.viewBytes.length > read);
        bytes += fast.viewBytes.slice(read).reduce((sum, one) => sum + one, 0);
        read = fast.viewBytes.length;
      }
      const shown = fast.viewBytes.length;
      slow.socket.resume();
      await slow.until('the present', () => slow.view!.tick >= fast.view!.tick);
      expect(slow.viewBytes.length - before).toBeLessThan(shown);
    } finally {
      await quick.close();
    }
  }, 180_000);
});

describe('the same drill on two servers', () => {
  it('of one database is one server’s: the other lets its devices go, and nothing is mixed', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plugside-both-'));
    const target = { file: join(folder, 'records.sqlite') };
    const one = await roomServer({}, target);
    const two = await roomServer({}, target);
    try {
      const { code, roomId, keys } = await makeDrill(one.url, { evolution, seed: 8 });
      const leader = await joined(one.url, code, { role: 'instructor', key: keys.instructor });
      const here = await joined(one.url, code, { role: 'hydrant operator' });
      await here.act({ do: 'radio', message: { preset: 'hooked up' } });
      // Paused, the first has nothing to write.
      await leader.act({ do: 'pause' });
      const there = await joined(two.url, code, { role: 'attack operator' });
      // Taking a role was written, so the second has the drill by now.
      here.say({
        type: 'action',
        clientSeq: 2,
        action: { do: 'radio', message: { text: 'Lost' } },
      });
      expect(await here.whenClosed()).toBe(1001);
      expect(here.heard.at(-1)).toMatchObject({ type: 'error', code: 'gone' });
      await there.act({ do: 'radio', message: { preset: 'copied' } });
      await there.until('said', () => there.view!.radio.length > 1);
      expect(there.view!.radio.map(({ preset }) => preset)).toEqual(['hooked up', 'copied']);
      const log = (await one.store.drillRuns.log(roomId)).map(({ entry }) => entry as LogEntry);
      expect(log.map(({ seq }) => seq)).toEqual(log.map((_, at) => at));
      expect(log.map(({ tick }) => tick)).toEqual(
        log.map(({ tick }) => tick).sort((a, b) => a - b),
      );
    } finally {
      await one.close();
      await two.close();
      rmSync(folder, { recursive: true });
    }
  });

  it('shows the same at every tick', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plugside-two-'));
    const file = (name: string) => join(folder, `${name}.sqlite`);
    try {
      const origin = await roomServer({}, { file: file('one') });
      const made = await makeDrill(origin.url, { evolution, seed: 99 });
      const instructor = await joined(origin.url, made.code, {
        role: 'instructor',
        key: made.keys.instructor,
      });
      for (const role of ['hydrant operator', 'attack operator', 'nozzle crew']) {
        instructor.say({ type: 'computer', role, plays: true });
      }
      await instructor.act({ do: 'set speed', speed: 4 });
      await instructor.until('under way', () => instructor.view!.tick > 100);
      await origin.close();
      copyFileSync(file('one'), file('two'));

      const seen: Map<number, DrillView>[] = [];
      for (const name of ['one', 'two']) {
        const twin = await roomServer({ beatMs: 10, beatsPerView: 1 }, { file: file(name) });
        const wall = await joined(twin.url, made.code, { key: made.keys.watch });
        const views = new Map([[wall.view!.tick, wall.view!]]);
        const until = wall.view!.tick + 600;
        await wall.until('30 s', () => {
          views.set(wall.view!.tick, wall.view!);
          return wall.view!.tick > until;
        });
        seen.push(views);
        await twin.close();
      }
      const both = [...seen[0]!.keys()].filter((tick) => seen[1]!.has(tick));
      expect(both.length).toBeGreaterThan(50);
      for (const tick of both) expect(seen[1]!.get(tick)).toEqual(seen[0]!.get(tick));
      const store = await openStore({ file: file('two') });
      const log = await store.drillRuns.log(made.roomId);
      expect(log.map(({ seq }) => seq)).toEqual(log.map((_, at) => at));
      await store.close();
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
