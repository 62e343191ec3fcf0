/** What of a room is on the disk, and what is on its way there. */
import { type Drill, keyframeOf } from '@plugside/drill';
import type { DrillLogRow, DrillRun, DrillRunChange } from '@plugside/records';
import type { RoomSettings } from './room-settings.ts';
import type { Seats } from './seats.ts';

/** What is to be written, and what is done once it is. */
export interface RoomWrite {
  change: DrillRunChange;
  afterwards: (() => void)[];
}

export class RoomLog {
  readonly #drill: Drill;
  readonly #id: string;
  readonly #settings: RoomSettings;
  /** By sender: greatest number of an action that was taken in, and of one that is on the disk. */
  readonly #asked: Map<string, number>;
  readonly #written: Map<string, number>;
  #rows: DrillLogRow[] = [];
  #afterwards: (() => void)[] = [];
  #seats: Seats | undefined;
  #ended: DrillRunChange['ended'];
  #writtenAtMs = performance.now();
  #writtenTick: number;
  #changedAt: string;
  #keyframeTick: number;
  /** It could not be written just now. */
  notKept = false;

  constructor(run: DrillRun, drill: Drill, lastSeqs: Map<string, number>, settings: RoomSettings) {
    this.#drill = drill;
    this.#id = run.id;
    this.#settings = settings;
    this.#asked = new Map(lastSeqs);
    this.#written = new Map(lastSeqs);
    this.#writtenTick = run.tick;
    this.#changedAt = run.changedAt;
    this.#keyframeTick = (run.keyframe as { tick: number } | undefined)?.tick ?? 0;
  }

  /** Greatest number of a sender's actions that was taken in; 0: none. */
  lastAsked(sender: string): number {
    return this.#asked.get(sender) ?? 0;
  }

  /** Greatest number of a sender's actions that is on the disk; 0: none. */
  lastWritten(sender: string): number {
    return this.#written.get(sender) ?? 0;
  }

  takeIn(sender: string, clientSeq: number): void {
    this.#asked.set(sender, clientSeq);
  }

  add(row: DrillLogRow): void {
    this.#rows.push(row);
  }

  /** Does it once all that has been added is on the disk. */
  afterwards(work: () => void): void {
    this.#afterwards.push(work);
  }

  /** Once every action that a sender has asked for is on the disk. */
  whenWritten(sender: string, work: () => void): void {
    if (this.lastAsked(sender) > this.lastWritten(sender)) {
      this.#afterwards.push(() => this.whenWritten(sender, work));
    } else work();
  }

  changeSeats(seats: Seats, then: () => void): void {
    this.#seats = seats;
    this.#afterwards.push(then);
  }

  end(ended: NonNullable<DrillRunChange['ended']>): void {
    this.#ended = ended;
  }

  /** What to write now; undefined where nothing is pressing. @param all whatever is not there yet */
  take(nowMs: number, all = false): RoomWrite | undefined {
    const { tick } = this.#drill.state;
    const pressing =
      this.#afterwards.length > 0 || this.#seats !== undefined || this.#ended !== undefined;
    const moved = tick !== this.#writtenTick || this.#rows.length > 0;
    const due = moved && (all || nowMs - this.#writtenAtMs >= this.#settings.writtenEveryMs);
    if (!pressing && !due) return undefined;
    const since = this.#changedAt;
    const changedAt = laterThan(since);
    const change: DrillRunChange = { id: this.#id, since, changedAt, tick, log: this.#rows };
    const afterwards = this.#afterwards;
    if (this.#seats) change.seats = structuredClone(this.#seats);
    const far = tick - this.#keyframeTick >= this.#settings.keyframeEveryTicks;
    if (far || (all && tick !== this.#keyframeTick)) {
      change.keyframe = keyframeOf(this.#drill);
      this.#keyframeTick = tick;
    }
    if (this.#ended) change.ended = this.#ended;
    this.#rows = [];
    this.#afterwards = [];
    this.#seats = undefined;
    this.#writtenTick = tick;
    this.#writtenAtMs = nowMs;
    return { change, afterwards };
  }

  /** It is on the disk. */
  wrote({ change, afterwards }: RoomWrite): void {
    this.notKept = false;
    this.#changedAt = change.changedAt;
    for (const { sender, clientSeq } of change.log) {
      if (sender !== undefined && clientSeq !== undefined) this.#written.set(sender, clientSeq);
    }
    for (const work of afterwards) work();
  }

  /** It could not be written: it is to be tried again, before what has come since. */
  putBack({ change, afterwards }: RoomWrite, seats: Seats): void {
    this.notKept = true;
    this.#rows.unshift(...change.log);
    this.#afterwards.unshift(...afterwards);
    if (change.seats !== undefined) this.#seats = seats;
    if (change.keyframe !== undefined) this.#keyframeTick = Number.NEGATIVE_INFINITY;
    this.#writtenTick = -1;
  }

  /** Nothing waits. */
  get isWritten(): boolean {
    const waits = this.#afterwards.length > 0 || this.#rows.length > 0 || this.#seats !== undefined;
    return !waits && !this.notKept && this.#drill.state.tick === this.#writtenTick;
  }
}

/** Now, or a moment after that. */
export function laterThan(since: string): string {
  return new Date(Math.max(Date.now(), Date.parse(since) + 1)).toISOString();
}
