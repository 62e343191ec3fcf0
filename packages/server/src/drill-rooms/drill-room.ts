/** One drill that several devices share. The room alone runs it; devices ask and are shown. */
import {
  type Drill,
  type FromRoom,
  type HeldBy,
  type Judgement,
  judge,
  type LogEntry,
  notices,
  type PlayedRole,
  PROTOCOL,
  playedBy,
  playedRoles,
  type Role,
  type RoomRoles,
  readAction,
  type Submitted,
  step,
  TICKS_PER_S,
  viewFor,
} from '@plugside/drill';
import type { DrillLogRow, DrillRun } from '@plugside/records';
import { type Device, senderOf } from './device.ts';
import type { Rebuilt } from './rebuild.ts';
import { RoomLog } from './room-log.ts';
import type { RoomSettings } from './room-settings.ts';
import { scenePartFor } from './scene-part.ts';
import { type Seats, standing } from './seats.ts';
import { ViewFrames } from './view-frames.ts';

/** Real time that a room makes up for at most after the machine was held up [s]; more is let go. */
const MOST_OWED_S = 0.5;
/** Number of the frame that a device has which has none: the next one is whole. */
const NONE = -1;
/** Actions that wait for the next tick. */
const MOST_WAITING = 200;

interface Asked extends Submitted {
  sender?: string;
  clientSeq?: number;
  device?: Device;
}

export class DrillRoom {
  readonly id: string;
  readonly code: string;
  readonly startedAt: string;
  readonly crew: string | undefined;
  readonly drill: Drill;
  readonly log: RoomLog;
  readonly seats: Seats;
  readonly devices = new Set<Device>();
  readonly #settings: RoomSettings;
  readonly #frames = new Map<Role, ViewFrames>();
  #asked: Asked[] = [];
  #result: Judgement[] | undefined;
  #owedTicks = 0;
  #emptySinceMs = Number.NEGATIVE_INFINITY;
  #toldHeld: HeldBy | undefined;

  constructor(run: DrillRun, { drill, lastSeqs }: Rebuilt, settings: RoomSettings) {
    this.id = run.id;
    this.code = run.code;
    this.startedAt = run.startedAt;
    this.crew = run.crew;
    this.drill = drill;
    this.seats = run.seats as Seats;
    this.log = new RoomLog(run, drill, lastSeqs, settings);
    this.#settings = settings;
  }

  get result(): Judgement[] | undefined {
    return this.#result;
  }

  /** Since when nobody is connected [ms]; undefined while somebody is. */
  get emptySinceMs(): number | undefined {
    return this.devices.size === 0 ? this.#emptySinceMs : undefined;
  }

  /** Why its clock stands. */
  heldBy(nowMs: number): HeldBy | undefined {
    if (this.log.notKept) return 'not kept';
    if (this.devices.size === 0 && nowMs - this.#emptySinceMs > this.#settings.heldAfterMs) {
      return 'nobody here';
    }
    return this.drill.state.paused ? 'instructor' : undefined;
  }

  get roles(): RoomRoles {
    const here = [...this.devices];
    return {
      roles: playedRoles.map((role) => ({
        role,
        seat: standing(this.seats.roles[role]),
        connected: here.some((one) => one.role === role),
      })),
      instructors: here.filter(({ role }) => role === 'instructor').length,
      observers: here.filter(({ role }) => role === 'observer').length,
    };
  }

  get #isGuided(): boolean {
    return this.seats.guided === true;
  }

  lastSeq(device: Device): number {
    return this.log.lastWritten(senderOf(device.role, device.name));
  }

  /** Lets a device in, in its role; one that had a role of persons before is let go. */
  enter(device: Device, key?: string): void {
    const { drill } = this;
    const { role } = device;
    if (role !== 'observer' && role !== 'instructor') {
      for (const other of [...this.devices]) {
        if (other === device || other.role !== role) continue;
        this.devices.delete(other);
        other.end({
          type: 'error',
          code: 'replaced',
          message: 'The role goes on at another connection of this device.',
        });
      }
    }
    this.devices.add(device);
    device.frame = NONE;
    device.send({
      type: 'welcome',
      v: PROTOCOL,
      role,
      ...(key !== undefined && { key }),
      roomId: this.id,
      code: this.code,
      ...(this.crew !== undefined && { crew: this.crew }),
      scene: scenePartFor(role, drill.scene),
      lastSeq: this.lastSeq(device),
      roles: this.roles,
      n: 0,
      view: viewFor(role, drill.scene, drill.state, { guided: this.#isGuided }),
    });
    if (this.log.notKept) device.send({ type: 'paused', paused: true, by: 'not kept' });
    this.tellRoles();
  }

  leave(device: Device): void {
    if (!this.devices.delete(device)) return;
    if (this.devices.size === 0) this.#emptySinceMs = performance.now();
    this.tellRoles();
  }

  /** Takes an action in, for the next tick; the answer comes when it is on the disk. */
  ask(device: Device, clientSeq: number, given: unknown): void {
    const refuse = (field: string, message: string) =>
      device.send({ type: 'refused', clientSeq, problem: { field, message } });
    const sender = senderOf(device.role, device.name);
    const last = this.log.lastAsked(sender);
    if (clientSeq <= last) {
      refuse(
        'clientSeq',
        `clientSeq is ${clientSeq}, and ${last} has come already. Go on above it.`,
      );
      return;
    }
    const read = readAction(given);
    if ('problem' in read) {
      device.send({ type: 'refused', clientSeq, problem: read.problem });
      return;
    }
    if (this.#asked.length >= MOST_WAITING) {
      refuse('action', 'Too many actions wait in this drill. Do it again in a moment.');
      return;
    }
    this.log.takeIn(sender, clientSeq);
    this.#asked.push({ role: device.role, action: read.action, sender, clientSeq, device });
  }

  /** Something of the seats has changed; what follows happens when that is on the disk. */
  changeSeats(then: () => void): void {
    this.log.changeSeats(this.seats, then);
  }

  /** Nothing waits to be done or to be written. */
  get isWritten(): boolean {
    return this.#asked.length === 0 && this.log.isWritten;
  }

  end(): void {
    if (this.#result) return;
    const { scene, state } = this.drill;
    this.#result = judge(scene, state);
    this.log.end({ at: new Date().toISOString(), result: this.#result });
  }

  /** Lets real time pass: does what was asked, and the ticks that are due. @returns ticks done */
  pass(elapsedMs: number, nowMs: number): number {
    if (this.#result) return 0;
    const held = this.heldBy(nowMs);
    this.#tellHeld(held);
    if (held === 'not kept') return 0;
    const { state } = this.drill;
    if (held !== undefined) {
      this.#owedTicks = 0;
      if (this.#asked.length > 0) this.#step();
      return 0;
    }
    const perS = TICKS_PER_S * state.speed;
    this.#owedTicks = Math.min(this.#owedTicks + (elapsedMs / 1000) * perS, MOST_OWED_S * perS);
    let done = 0;
    for (; this.#owedTicks >= 1 && !state.paused; done += 1) {
      this.#owedTicks -= 1;
      this.#step();
    }
    return done;
  }

  #step(): void {
    const { drill } = this;
    const asked = this.#asked;
    this.#asked = [];
    for (const role of playedRoles) {
      if (standing(this.seats.roles[role]) !== 'computer') continue;
      asked.push(...playedBy(role, drill.scene, drill.state));
    }
    const submitted = asked.map(
      ({ role, action, byComputer }): Submitted =>
        byComputer ? { role, action, byComputer } : { role, action },
    );
    let at = 0;
    for (const entry of step(drill, submitted)) {
      if (entry.kind === 'event') {
        this.log.add({ seq: entry.seq, entry });
        this.#tellEvent(entry);
        continue;
      }
      const { sender, clientSeq, device } = asked[at++] ?? {};
      const row: DrillLogRow = { seq: entry.seq, entry };
      if (sender !== undefined) row.sender = sender;
      if (clientSeq !== undefined) row.clientSeq = clientSeq;
      this.log.add(row);
      if (device && clientSeq !== undefined) {
        this.log.afterwards(() => device.send(answerTo(entry, clientSeq)));
      }
    }
  }

  /** Shows every device what its role sees. */
  show(): void {
    const here = [...this.devices];
    for (const role of new Set(here.map((one) => one.role))) {
      const reading = here.filter(
        (one) => one.role === role && one.waitingBytes < this.#settings.mostWaitingBytes,
      );
      if (reading.length === 0) continue;
      let frames = this.#frames.get(role);
      if (!frames) {
        frames = new ViewFrames(role);
        this.#frames.set(role, frames);
      }
      const frame = frames.next(this.drill.scene, this.drill.state, this.#isGuided);
      for (const device of reading) {
        device.sendText(device.frame === frame.n - 1 ? frame.delta : frame.whole());
        device.frame = frame.n;
      }
    }
  }

  tell(message: FromRoom): void {
    const text = JSON.stringify(message);
    for (const device of this.devices) device.sendText(text);
  }

  tellRoles(): void {
    this.tell({ type: 'roles', ...this.roles });
  }

  #tellHeld(by: HeldBy | undefined): void {
    if (by === this.#toldHeld) return;
    this.#toldHeld = by;
    this.tell(by ? { type: 'paused', paused: true, by } : { type: 'paused', paused: false });
  }

  #tellEvent(entry: Extract<LogEntry, { kind: 'event' }>): void {
    const { scene, state } = this.drill;
    const message = { type: 'event', event: { ...entry.event, tick: entry.tick } } as const;
    for (const device of this.devices) {
      if (notices(device.role, scene, state, entry)) device.send(message);
    }
  }

  /** Frees a role, and lets whoever had it watch no more. */
  freeRole(role: PlayedRole): void {
    const seat = this.seats.roles[role];
    delete seat.keyHash;
    for (const device of [...this.devices]) {
      if (device.role !== role) continue;
      this.devices.delete(device);
      device.end({
        type: 'error',
        code: 'freed',
        message: `The role of ${role} was given free. Take it again, or another one.`,
      });
    }
  }
}

function answerTo(
  entry: Extract<LogEntry, { kind: 'action' | 'refused' }>,
  clientSeq: number,
): FromRoom {
  return entry.kind === 'action'
    ? { type: 'taken', clientSeq, tick: entry.tick }
    : { type: 'refused', clientSeq, problem: entry.problem };
}
