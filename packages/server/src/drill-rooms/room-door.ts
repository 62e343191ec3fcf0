/** How one device comes into a drill, in which role, and gives it back. */
import { type PlayedRole, PROTOCOL, type Role, type RoomErrorCode, rolesIn } from '@plugside/drill';
import { type Device, senderOf } from './device.ts';
import type { DrillRoom } from './drill-room.ts';
import type { DrillRooms } from './drill-rooms.ts';
import { hashOf, newKey } from './keys.ts';
import type { ClientMessage } from './messages.ts';
import { holdsSeat, isInstructor, mayWatch, seatOf } from './seats.ts';

/** A connection that joins. */
export interface JoiningDevice extends Device {
  name: string;
  /** Says what is wrong; the connection stays. */
  tell(code: RoomErrorCode, message: string): void;
}

export type Hello = Extract<ClientMessage, { type: 'hello' }>;

export class RoomDoor {
  readonly #device: JoiningDevice;
  readonly #code: string;
  readonly #rooms: DrillRooms;
  readonly #address: string;
  #room: DrillRoom | undefined;
  #joining = false;

  /** @param address that the device connects from */
  constructor(device: JoiningDevice, code: string, rooms: DrillRooms, address: string) {
    this.#device = device;
    this.#code = code;
    this.#rooms = rooms;
    this.#address = address;
  }

  /** Where the device is, or is about to be. */
  get room(): DrillRoom | undefined {
    return this.#room;
  }

  /** It has joined, or is at it. */
  get isUsed(): boolean {
    return this.#room !== undefined || this.#joining;
  }

  /** The connection has gone. */
  leave(): void {
    this.#room?.leave(this.#device);
    this.#room = undefined;
  }

  async join({ v, role = 'observer', key, device: name = '' }: Hello): Promise<void> {
    const device = this.#device;
    if (v !== PROTOCOL) {
      const side = v > PROTOCOL ? 'The server is older than the app' : 'The app is old';
      device.tell(
        'version',
        `${side}: it speaks version ${PROTOCOL}, not ${v}. Load the app again.`,
      );
      return;
    }
    if (this.isUsed) {
      device.tell('not understood', 'This connection has joined. Connect anew for another role.');
      return;
    }
    this.#joining = true;
    try {
      const room = await this.#rooms.open(this.#code);
      if (!device.isOpen) return;
      if (!room) {
        device.end({ type: 'error', code: 'gone', message: 'The drill has ended.' });
        return;
      }
      const most = this.#rooms.settings.mostInRoom;
      // Those who only watch must not keep a crew out.
      if (role === 'observer' && room.audience.devices.size >= most) {
        device.end({ type: 'error', code: 'full', message: `${most} devices are here already.` });
        return;
      }
      device.name = name;
      device.role = role;
      if (role === 'observer') this.#watch(room, key);
      else if (role === 'instructor') this.#instruct(room, key);
      else this.#takeRole(room, role, key);
    } finally {
      this.#joining = false;
    }
  }

  #watch(room: DrillRoom, key: string | undefined): void {
    const { seats } = room;
    const { watchGuesses } = this.#rooms;
    if (!watchGuesses.mayAsk(this.#address)) {
      this.#refuse('wrong key', 'Too many wrong wall codes. Wait a minute, then type it again.');
    } else if (mayWatch(seats, key)) {
      this.#enter(room, () => mayWatch(seats, key));
    } else {
      if (key !== undefined) watchGuesses.missed(this.#address);
      this.#refuse('wrong key', key === undefined ? NO_WATCH_KEY : WRONG_WATCH_KEY);
    }
  }

  #instruct(room: DrillRoom, key: string | undefined): void {
    if (isInstructor(room.seats, key)) this.#enter(room, () => true);
    else this.#refuse('wrong key', 'This is not the key that the drill was made with.');
  }

  #takeRole(room: DrillRoom, role: PlayedRole, key: string | undefined): void {
    const { seats } = room;
    const there = rolesIn(room.drill.scene);
    if (!there.includes(role)) {
      const message = `Nobody is the ${role} in this drill. Take one of: ${there.join(', ')}.`;
      this.#refuse('no such role', message);
      return;
    }
    const seat = seatOf(seats, role);
    if (key !== undefined) {
      if (holdsSeat(seats, role, key)) this.#enter(room, () => holdsSeat(seats, role, key));
      else if (seat.keyHash === undefined) this.#refuse('wrong key', freed(role));
      else this.#refuse('wrong key', taken(role));
      return;
    }
    if (seat.keyHash !== undefined) {
      this.#refuse('role taken', taken(role));
      return;
    }
    const mine = newKey();
    seat.keyHash = hashOf(mine);
    this.#room = room;
    // The key is told once it is on the disk: a device must be able to come back after a crash.
    room.changeSeats(() => {
      if (!holdsSeat(seats, role, mine)) this.#lost(freed(role));
      else if (this.#room === room && this.#device.isOpen) room.enter(this.#device, mine);
      else {
        delete seat.keyHash;
        room.changeSeats(() => room.audience.tellRoles());
      }
    });
  }

  /** @param mayStill whether it may when its turn comes */
  #enter(room: DrillRoom, mayStill: () => boolean): void {
    const device = this.#device;
    const { role } = device;
    this.#room = room;
    // So that the welcome's `lastSeq` counts what an earlier connection of it has asked for.
    room.log.whenWritten(senderOf(role, device.name), () => {
      if (this.#room !== room || !device.isOpen) return;
      if (mayStill()) room.enter(device);
      else this.#lost(role === 'observer' ? WRONG_WATCH_KEY : freed(role));
    });
  }

  /** What it came in by holds no more: the instructor changed it in that moment. */
  #lost(message: string): void {
    this.#room = undefined;
    this.#device.end({ type: 'error', code: 'freed', message });
  }

  /** Gives the device's role back, for another to take. */
  giveBack(room: DrillRoom): void {
    const { role } = this.#device;
    if (role !== 'observer' && role !== 'instructor') {
      delete seatOf(room.seats, role).keyHash;
      room.changeSeats(() => room.audience.tellRoles());
    }
    this.#device.close();
  }

  /** It may try again at this connection. */
  #refuse(code: RoomErrorCode, message: string): void {
    this.#device.role = 'observer';
    this.#device.tell(code, message);
  }
}

const NO_WATCH_KEY =
  'Who watches sees everything: that needs the wall code. Ask the instructor for it, or take a free role.';

export const WRONG_WATCH_KEY =
  'This is not the wall code of this drill, or no longer. Ask the instructor for it.';

function freed(role: Role): string {
  return `The role of ${role} has been given free. Take it without a key.`;
}

function taken(role: Role): string {
  return `Another device has the role of ${role}. Take another role, or ask the instructor to free it.`;
}
