/** All the drills of this server: found, made, run by one clock, written together, put aside, ended. */
import { createDrill, type DrillScene, rolesIn } from '@plugside/drill';
import {
  type DrillRun,
  type DrillRunFacts,
  DrillTakenError,
  type RecordStore,
} from '@plugside/records';
import { ProblemError } from '../problem.ts';
import { type Guesses, guesses } from './allowance.ts';
import { DrillRoom } from './drill-room.ts';
import { fromAddress } from './from-address.ts';
import { newCode } from './keys.ts';
import { rebuilt } from './rebuild.ts';
import { type Beat, startClock } from './room-clock.ts';
import { laterThan, type RoomWrite } from './room-log.ts';
import { defaultRoomSettings, type RoomSettings } from './room-settings.ts';
import { emptySeats, type MadeKeys } from './seats.ts';

/** After a write that failed [ms]. */
const WRITE_AGAIN_MS = 1_000;
/** Drills that nobody comes to are looked for so often [ms]. */
const SWEEP_MS = 10 * 60_000;

export interface NewDrill {
  scene: DrillScene;
  seed: number;
  crew?: string;
  guided?: boolean;
}

interface Due {
  room: DrillRoom;
  write: RoomWrite;
}

export interface DrillRooms {
  readonly settings: RoomSettings;
  /** Wrong keys to watch with. */
  readonly watchGuesses: Guesses;
  /**
   * @param address that it is asked for from
   * @throws ProblemError 503 where too many drills run, 429 where too many of one address do
   */
  make(drill: NewDrill, address: string): Promise<{ run: DrillRun; keys: MadeKeys }>;
  /** The room of a running drill, rebuilt where it is not in memory; undefined for a code of none. */
  open(code: string): Promise<DrillRoom | undefined>;
  running(): Promise<DrillRunFacts[]>;
  /** Ends a drill: judged, written, and told to all who are there. */
  end(room: DrillRoom): Promise<void>;
  /** Writes all that waits and lets everybody go. The drills go on when the server starts again. */
  close(): Promise<void>;
}

/** Rooms over the records' store. Nothing runs until one is opened. */
export function drillRooms(store: RecordStore, given: Partial<RoomSettings> = {}): DrillRooms {
  const settings = { ...defaultRoomSettings, ...given };
  const rooms = new Map<string, DrillRoom>();
  const opening = new Map<string, Promise<DrillRoom | undefined>>();
  /** By address, those that were made since the server started; and what gives each one's place back. */
  const fromEach = fromAddress();
  const madeFrom = new Map<string, () => void>();
  let writing: Promise<void> | undefined;
  let writeAgainAtMs = 0;
  let sweptAtMs = 0;
  let closed = false;

  const drop = (room: DrillRoom) => {
    if (rooms.get(room.code) === room) rooms.delete(room.code);
  };
  const lose = (room: DrillRoom, message: string) => {
    drop(room);
    for (const device of [...room.audience.devices]) {
      room.audience.leave(device);
      device.end({ type: 'error', code: 'gone', message });
    }
  };

  const finish = (room: DrillRoom, write: RoomWrite) => {
    room.log.wrote(write);
    if (!room.result) return;
    room.audience.tell({ type: 'ended', result: room.result });
    drop(room);
    for (const device of [...room.audience.devices]) {
      room.audience.leave(device);
      device.close();
    }
  };

  /** All of them or, where one of them is another server's, each by itself. */
  const writeThese = async (due: readonly Due[]): Promise<void> => {
    try {
      await store.drillRuns.write(due.map(({ write }) => write.change));
    } catch (error) {
      const isTaken = error instanceof DrillTakenError;
      if (isTaken && due.length > 1) {
        for (const one of due) await writeThese([one]);
        return;
      }
      if (isTaken) {
        for (const { room } of due) lose(room, error.message);
        return;
      }
      console.error(error);
      writeAgainAtMs = performance.now() + WRITE_AGAIN_MS;
      for (const { room, write } of due) room.log.putBack(write, room.seats);
      return;
    }
    for (const { room, write } of due) finish(room, write);
  };

  const writeAll = async (all: boolean): Promise<void> => {
    const nowMs = performance.now();
    const due = [...rooms.values()].flatMap((room) => {
      const write = room.log.take(nowMs, all);
      return write ? [{ room, write }] : [];
    });
    if (due.length > 0) await writeThese(due);
  };

  /** One write at a time: entries go to the disk in order. */
  const write = async (all = false): Promise<void> => {
    while (writing) await writing;
    writing = writeAll(all).finally(() => {
      writing = undefined;
    });
    await writing;
  };

  /** Drills that run. Those that have ended count for no address any more. */
  const stillRunning = async (): Promise<number> => {
    const before = [...madeFrom.keys()];
    const running = await store.drillRuns.running();
    const ids = new Set(running.map(({ id }) => id));
    for (const id of before) {
      if (ids.has(id)) continue;
      madeFrom.get(id)?.();
      madeFrom.delete(id);
    }
    return running.length;
  };

  const beat = (elapsedMs: number, count: number, behind: boolean) => {
    const nowMs = performance.now();
    const done = { ticks: 0, stepsMs: 0 };
    const everyBeats = behind ? settings.beatsPerView * 2 : settings.beatsPerView;
    let at = count;
    for (const room of rooms.values()) {
      at += 1;
      try {
        const fromMs = performance.now();
        done.ticks += room.pass(elapsedMs, nowMs);
        done.stepsMs += performance.now() - fromMs;
        if (at % everyBeats === 0) room.audience.show();
      } catch (error) {
        console.error(error);
        lose(room, 'The server failed on this drill; its log says why. Join again.');
        continue;
      }
      const { emptySinceMs } = room.audience;
      if (emptySinceMs !== undefined && nowMs - emptySinceMs > settings.asideAfterMs) {
        // Only when all of it is written: whoever joins has it back from the records.
        if (!writing && room.isWritten) drop(room);
      }
    }
    if (!writing && nowMs >= writeAgainAtMs) write().catch((error) => console.error(error));
    if (nowMs - sweptAtMs > SWEEP_MS) {
      sweptAtMs = nowMs;
      sweep().catch((error) => console.error(error));
    }
    return done;
  };

  const clock = startClock(settings.beatMs, {
    isIdle: () => rooms.size === 0,
    beat,
    told: (one: Beat) => settings.onBeat?.(one),
  });

  const load = async (code: string): Promise<DrillRoom | undefined> => {
    const run = await store.drillRuns.runningAs(code);
    if (!run || closed) return undefined;
    const room = new DrillRoom(run, rebuilt(run, await store.drillRuns.log(run.id)), settings);
    rooms.set(code, room);
    clock.wake();
    return room;
  };

  const open = async (code: string) => {
    const here = rooms.get(code);
    if (here) return here;
    let loading = opening.get(code);
    if (!loading) {
      loading = load(code).finally(() => opening.delete(code));
      opening.set(code, loading);
    }
    return loading;
  };

  const end = async (room: DrillRoom) => {
    room.end();
    await write();
    if (room.log.notKept) throw notKept();
  };

  /** A drill that this version cannot play on must not keep the others' place. */
  const giveUp = async (run: DrillRunFacts, error: unknown): Promise<undefined> => {
    console.error(error);
    const { id, tick, changedAt: since } = run;
    const changedAt = laterThan(since);
    const ended = { at: changedAt, result: [] };
    await store.drillRuns.write([{ id, since, changedAt, tick, log: [], ended }]);
  };

  const sweep = async () => {
    const oldest = new Date(Date.now() - settings.endedAfterMs).toISOString();
    for (const one of await store.drillRuns.running()) {
      if (one.changedAt > oldest) continue;
      const room = await open(one.code).catch((error) => giveUp(one, error));
      if (room?.audience.devices.size === 0) await end(room);
    }
  };

  const makeOne = async (
    { scene, seed, crew, guided }: NewDrill,
    giveBack: () => void,
  ): Promise<{ run: DrillRun; keys: MadeKeys }> => {
    const { seats, keys } = emptySeats(rolesIn(scene));
    if (guided) seats.guided = true;
    // Also a check that it runs at all, before anything is kept.
    const drill = createDrill(scene, seed);
    for (;;) {
      const run = await store.drillRuns.add({
        code: newCode(),
        title: scene.title,
        ...(scene.evolution !== undefined && { evolution: scene.evolution }),
        ...(crew !== undefined && { crew }),
        seed,
        scene,
        seats,
      });
      if (!run) continue;
      madeFrom.set(run.id, giveBack);
      rooms.set(run.code, new DrillRoom(run, { drill, lastSeqs: new Map() }, settings));
      clock.wake();
      return { run, keys };
    }
  };

  return {
    settings,
    watchGuesses: guesses(settings.missesPerMin, settings.missesOfAllPerMin),
    make: async (asked, address) => {
      const isMuch = () => fromEach.has(address) >= settings.mostRoomsFromAddress;
      if ((await stillRunning()) >= settings.mostRooms || isMuch()) {
        await sweep();
        if ((await stillRunning()) >= settings.mostRooms) throw tooMany(settings);
      }
      // Looked at and taken in one go: those that are asked for at once count each other.
      if (isMuch()) throw tooManyOfYours(settings);
      const giveBack = fromEach.take(address);
      try {
        return await makeOne(asked, giveBack);
      } catch (error) {
        giveBack();
        throw error;
      }
    },
    open,
    running: () => store.drillRuns.running(),
    end,
    close: async () => {
      closed = true;
      clock.stop();
      await write(true);
      for (const room of [...rooms.values()]) {
        lose(room, 'The server stops. The drill goes on when it is back: join again.');
      }
    },
  };
}

function tooMany({ mostRooms }: RoomSettings): ProblemError {
  return new ProblemError({
    status: 503,
    title: 'Busy',
    detail: `${mostRooms} drills run already. End one, or wait until one has ended.`,
    headers: { 'Retry-After': '60' },
  });
}

function tooManyOfYours({ mostRoomsFromAddress: most }: RoomSettings): ProblemError {
  return new ProblemError({
    status: 429,
    title: 'Too many from one address',
    detail: `${most} drills that were made from your address run already; allowed: ${most}. End one that nobody uses, or wait until one has ended.`,
    headers: { 'Retry-After': '60' },
  });
}

function notKept(): ProblemError {
  return new ProblemError({
    status: 503,
    title: 'Not kept',
    detail: 'The drill cannot be written just now: its clock stands. Try again in a moment.',
    headers: { 'Retry-After': '2' },
  });
}
