/** Who is connected to a drill, and what each is told and shown. */
import {
  type Drill,
  type FromRoom,
  type LogEntry,
  notices,
  type PlayedRole,
  PROTOCOL,
  type Role,
  type RoomRoles,
  rolesIn,
  viewFor,
} from '@plugside/drill';
import type { Device } from './device.ts';
import { scenePartFor } from './scene-part.ts';
import { type Seats, settingsIn, standing } from './seats.ts';
import { ViewFrames } from './view-frames.ts';

/** Number of the frame that a device has which has none: the next one is whole. */
const NONE = -1;

/** What a device is told of the room when it comes in. */
export interface Entering {
  roomId: string;
  code: string;
  crew: string | undefined;
  /** Greatest number of its actions that is on the disk. */
  lastSeq: number;
  /** Of a role that it has just taken. */
  key: string | undefined;
}

export class RoomAudience {
  readonly devices = new Set<Device>();
  readonly #drill: Drill;
  readonly #seats: Seats;
  readonly #mostWaitingBytes: number;
  readonly #frames = new Map<Role, ViewFrames>();
  #emptySinceMs = Number.NEGATIVE_INFINITY;

  /** @param mostWaitingBytes views are left out for a device that more than this waits for [bytes] */
  constructor(drill: Drill, seats: Seats, mostWaitingBytes: number) {
    this.#drill = drill;
    this.#seats = seats;
    this.#mostWaitingBytes = mostWaitingBytes;
  }

  /** Since when nobody is connected [ms]; undefined while somebody is. */
  get emptySinceMs(): number | undefined {
    return this.devices.size === 0 ? this.#emptySinceMs : undefined;
  }

  get roles(): RoomRoles {
    const here = [...this.devices];
    return {
      roles: rolesIn(this.#drill.scene).map((role) => ({
        role,
        seat: standing(this.#seats.roles[role]),
        connected: here.some((one) => one.role === role),
      })),
      instructors: here.filter(({ role }) => role === 'instructor').length,
      observers: here.filter(({ role }) => role === 'observer').length,
    };
  }

  /** Lets a device in, in its role; one that had a role of persons before is let go. */
  enter(device: Device, { roomId, code, crew, lastSeq, key }: Entering): void {
    const { role } = device;
    if (role !== 'observer' && role !== 'instructor') {
      this.letGo(
        role,
        'replaced',
        'The role goes on at another connection of this device.',
        device,
      );
    }
    this.devices.add(device);
    device.frame = NONE;
    const { scene, state } = this.#drill;
    const settings = settingsIn(this.#seats);
    device.send({
      type: 'welcome',
      v: PROTOCOL,
      role,
      ...(key !== undefined && { key }),
      roomId,
      code,
      ...(crew !== undefined && { crew }),
      scene: scenePartFor(role, scene),
      lastSeq,
      roles: this.roles,
      ...(role === 'instructor' && { settings }),
      n: 0,
      view: viewFor(role, scene, state, settings),
    });
  }

  /** @returns whether it was here */
  leave(device: Device): boolean {
    if (!this.devices.delete(device)) return false;
    if (this.devices.size === 0) this.#emptySinceMs = performance.now();
    return true;
  }

  /** Lets all devices of a role go, but for one. */
  letGo(
    role: PlayedRole | 'observer',
    code: Extract<FromRoom, { type: 'error' }>['code'],
    message: string,
    but?: Device,
  ): void {
    for (const device of [...this.devices]) {
      if (device.role !== role || device === but) continue;
      this.leave(device);
      device.end({ type: 'error', code, message });
    }
  }

  /** Shows every device what its role sees. */
  show(): void {
    const here = [...this.devices];
    for (const role of new Set(here.map((one) => one.role))) {
      const reading = here.filter(
        (one) => one.role === role && one.waitingBytes < this.#mostWaitingBytes,
      );
      if (reading.length === 0) continue;
      let frames = this.#frames.get(role);
      if (!frames) {
        frames = new ViewFrames(role);
        this.#frames.set(role, frames);
      }
      const frame = frames.next(this.#drill.scene, this.#drill.state, settingsIn(this.#seats));
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

  /** Tells instructors what is set. */
  tellSettings(): void {
    for (const device of this.devices) {
      if (device.role !== 'instructor') continue;
      device.send({ type: 'settings', ...settingsIn(this.#seats) });
    }
  }

  /** Tells an event to those who notice it. */
  tellEvent(entry: Extract<LogEntry, { kind: 'event' }>): void {
    const { scene, state } = this.#drill;
    const settings = settingsIn(this.#seats);
    const message = { type: 'event', event: { ...entry.event, tick: entry.tick } } as const;
    for (const device of this.devices) {
      if (notices(device.role, scene, state, entry, settings)) device.send(message);
    }
  }
}
