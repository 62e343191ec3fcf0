/** One drill that several devices share. The room alone runs it; devices ask and are shown. */
import {
  type Drill,
  type Judgement,
  judge,
  keyframeOf,
  type LogEntry,
  notices,
  type PlayedRole,
  playedBy,
  playedRoles,
  type Role,
  readAction,
  type Submitted,
  step,
  TICKS_PER_S,
  viewFor,
} from '@plugside/drill';
import type { DrillLogRow, DrillRun, DrillRunChange } from '@plugside/records';
import { type Device, senderOf } from './device.ts';
import { type HeldBy, PROTOCOL, type RoomRoles, type ServerMessage } from './messages.ts';
import type { Rebuilt } from './rebuild.ts';
import type { RoomSettings } from './room-settings.ts';
import { scenePartFor } from './scene-part.ts';
import { type Seats, standing } from './seats.ts';
import { ViewFrames } from './view-frames.ts';

/** Real time that a room makes up for at most after the machine was held up [s]; more is let go. */
const MOST_OWED_S = 0.5;
/** Actions that wait for the next tick. */
const MOST_WAITING = 200;

interface Asked extends Submitted {
  sender?: string;
  clientSeq?: number;
  device?: Device;
}

/** What is to be written, and what is done once it is. */
export interface RoomWrite {
  change: DrillRunChange;
  then: (() => void)[];
}

export class DrillRoom {
  readonly id: string;
  readonly code: string;
  readonly startedAt: string;
  readonly crew: string | undefined;
  readonly drill: Drill;
  readonly seats: Seats;
  readonly devices = new Set<Device>();
  readonly #settings: RoomSettings;
  readonly #frames = new Map<Role, ViewFrames>();
  readonly #lastSeqs: Map<string, number>;
  #asked: Asked[] = [];
  #rows: DrillLogRow[] = [];
  #then: (() => void)[] = [];
  #seatsChanged = false;
  #isBeingWritten = false;
  #ended: { at: string; result: Judgement[] } | undefined;
  #owedTicks = 0;
  #emptySinceMs = Number.NEGATIVE_INFINITY;
  #writtenAtMs = performance.now();
  #writtenTick: number;
  #keyframeTick: number;
  #toldHeld: HeldBy | undefined;
  /** What happens cannot be written just now. */
  notKept = false;

  constructor(run: DrillRun, { drill, lastSeqs }: Rebuilt, settings: RoomSettings) {
    this.id = run.id;
    this.code = run.code;
    this.startedAt = run.startedAt;
    this.crew = run.crew;
    this.drill = drill;
    this.seats = run.seats as Seats;
    this.#lastSeqs = lastSeqs;
    this.#settings = settings;
    this.#writtenTick = run.tick;
    this.#keyframeTick = (run.keyframe as { tick: number } | undefined)?.tick ?? 0;
  }

  get result(): Judgement[] | undefined {
    return this.#ended?.result;
  }

  /** Since when nobody is connected [ms]; undefined while somebody is. */
  get emptySinceMs(): number | undefined {
    return this.devices.size === 0 ? this.#emptySinceMs : undefined;
  }

  /** Why its clock stands. */
  heldBy(nowMs: number): HeldBy | undefined {
    if (this.notKept) return 'not kept';
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
    return this.#lastSeqs.get(senderOf(device.role, device.name)) ?? 0;
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
    device.frame = 0;
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
    if (this.notKept) device.send({ type: 'paused', paused: true, by: 'not kept' });
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
    const last = this.#lastSeqs.get(sender) ?? 0;
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
    this.#lastSeqs.set(sender, clientSeq);
    this.#asked.push({ role: device.role, action: read.action, sender, clientSeq, device });
  }

  /** Something of the seats has changed; what follows happens when that is on the disk. */
  changeSeats(then: () => void): void {
    this.#seatsChanged = true;
    this.#then.push(then);
  }

  /** Once all that was asked until now is done and on the disk: what is told then, holds. */
  whenWritten(then: () => void): void {
    const waits = this.#asked.length > 0 || this.#rows.length > 0 || this.#isBeingWritten;
    if (waits) this.#then.push(() => this.whenWritten(then));
    else then();
  }

  end(): void {
    const { scene, state } = this.drill;
    this.#ended ??= { at: new Date().toISOString(), result: judge(scene, state) };
  }

  /** Lets real time pass: does what was asked, and the ticks that are due. @returns ticks done */
  pass(elapsedMs: number, nowMs: number): number {
    if (this.#ended) return 0;
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
        this.#rows.push({ seq: entry.seq, entry });
        this.#tellEvent(entry);
        continue;
      }
      const { sender, clientSeq, device } = asked[at++] ?? {};
      const row: DrillLogRow = { seq: entry.seq, entry };
      if (sender !== undefined) row.sender = sender;
      if (clientSeq !== undefined) row.clientSeq = clientSeq;
      this.#rows.push(row);
      if (device && clientSeq !== undefined) {
        this.#then.push(() => device.send(answerTo(entry, clientSeq)));
      }
    }
  }

  /** What to write now; undefined where nothing is pressing. */
  takeWrite(nowMs: number, all = false): RoomWrite | undefined {
    const { tick } = this.drill.state;
    const pressing = this.#then.length > 0 || this.#seatsChanged || this.#ended !== undefined;
    const moved = tick !== this.#writtenTick || this.#rows.length > 0;
    const due = moved && nowMs - this.#writtenAtMs >= this.#settings.writtenEveryMs;
    if (!pressing && !due && !(all && moved)) return undefined;
    const change: DrillRunChange = { id: this.id, tick, log: this.#rows };
    const then = this.#then;
    if (this.#seatsChanged) change.seats = structuredClone(this.seats);
    const far = tick - this.#keyframeTick >= this.#settings.keyframeEveryTicks;
    if (far || (all && tick !== this.#keyframeTick)) {
      change.keyframe = keyframeOf(this.drill);
      this.#keyframeTick = tick;
    }
    if (this.#ended) change.ended = this.#ended;
    this.#rows = [];
    this.#then = [];
    this.#isBeingWritten = true;
    this.#seatsChanged = false;
    this.#writtenTick = tick;
    this.#writtenAtMs = nowMs;
    return { change, then };
  }

  /** It is on the disk. */
  written({ then }: RoomWrite): void {
    this.#isBeingWritten = false;
    this.notKept = false;
    for (const one of then) one();
  }

  /** Nothing waits to be written. */
  get isWritten(): boolean {
    const waits = this.#then.length > 0 || this.#rows.length > 0 || this.#asked.length > 0;
    return !waits && !this.notKept && this.drill.state.tick === this.#writtenTick;
  }

  /** It could not be written: it is to be tried again, before what has come since. */
  putBack({ change, then }: RoomWrite): void {
    this.#isBeingWritten = false;
    this.notKept = true;
    this.#rows.unshift(...change.log);
    this.#then.unshift(...then);
    this.#seatsChanged ||= change.seats !== undefined;
    if (change.keyframe !== undefined) this.#keyframeTick = Number.NEGATIVE_INFINITY;
    this.#writtenTick = -1;
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

  tell(message: ServerMessage): void {
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
): ServerMessage {
  return entry.kind === 'action'
    ? { type: 'taken', clientSeq, tick: entry.tick }
    : { type: 'refused', clientSeq, problem: entry.problem };
}
