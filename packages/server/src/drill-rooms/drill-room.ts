/** One drill that several devices share. The room alone runs it; devices ask and are shown. */
import {
  type Drill,
  type FromRoom,
  type HeldBy,
  type Judgement,
  judge,
  type LogEntry,
  type PlayedRole,
  playedBy,
  readAction,
  rolesIn,
  type Submitted,
  step,
  TICKS_PER_S,
} from '@plugside/drill';
import type { DrillLogRow, DrillRun } from '@plugside/records';
import { type Device, senderOf } from './device.ts';
import type { Rebuilt } from './rebuild.ts';
import { RoomAudience } from './room-audience.ts';
import { RoomLog } from './room-log.ts';
import type { RoomSettings } from './room-settings.ts';
import { type Seats, seatOf, standing } from './seats.ts';

/** Real time that a room makes up for at most after the machine was held up [s]; more is let go. */
const MOST_OWED_S = 0.5;
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
  readonly audience: RoomAudience;
  readonly #settings: RoomSettings;
  #asked: Asked[] = [];
  #result: Judgement[] | undefined;
  #owedTicks = 0;
  #toldHeld: HeldBy | undefined;

  constructor(run: DrillRun, { drill, lastSeqs }: Rebuilt, settings: RoomSettings) {
    this.id = run.id;
    this.code = run.code;
    this.startedAt = run.startedAt;
    this.crew = run.crew;
    this.drill = drill;
    this.seats = run.seats as Seats;
    this.audience = new RoomAudience(drill, this.seats, settings.mostWaitingBytes);
    this.log = new RoomLog(run, drill, lastSeqs, settings);
    this.#settings = settings;
  }

  get result(): Judgement[] | undefined {
    return this.#result;
  }

  /** Why its clock stands. */
  heldBy(nowMs: number): HeldBy | undefined {
    if (this.log.notKept) return 'not kept';
    const { emptySinceMs } = this.audience;
    if (emptySinceMs !== undefined && nowMs - emptySinceMs > this.#settings.heldAfterMs) {
      return 'nobody here';
    }
    return this.drill.state.paused ? 'instructor' : undefined;
  }

  /** Lets a device in, in its role. @param key of a role that it has just taken */
  enter(device: Device, key?: string): void {
    const { id: roomId, code, crew, log } = this;
    const lastSeq = log.lastWritten(senderOf(device.role, device.name));
    this.audience.enter(device, { roomId, code, crew, lastSeq, key });
    if (log.notKept) device.send({ type: 'paused', paused: true, by: 'not kept' });
    this.audience.tellRoles();
  }

  leave(device: Device): void {
    if (this.audience.leave(device)) this.audience.tellRoles();
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
    const most = last + this.#settings.mostSeqJump;
    // Past a number that is far off, nothing of this device could be told from what it sends again.
    if (clientSeq > most) {
      refuse(
        'clientSeq',
        `clientSeq is ${clientSeq}; allowed: ${last + 1} to ${most}. Go on above the last one, in small steps.`,
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
    for (const role of rolesIn(drill.scene)) {
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
        this.audience.tellEvent(entry);
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

  #tellHeld(by: HeldBy | undefined): void {
    if (by === this.#toldHeld) return;
    this.#toldHeld = by;
    this.audience.tell(
      by ? { type: 'paused', paused: true, by } : { type: 'paused', paused: false },
    );
  }

  /** Frees a role, and lets whoever had it play no more. */
  freeRole(role: PlayedRole): void {
    delete seatOf(this.seats, role).keyHash;
    const message = `The role of ${role} was given free. Take it again, or another one.`;
    this.audience.letGo(role, 'freed', message);
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
