/** One device's connection to a drill: what it says is read here, and all it is told goes out here. */
import { type FromRoom, PROTOCOL, type Role, type RoomErrorCode } from '@plugside/drill';
import type { RawData, WebSocket } from 'ws';
import { allowance } from './allowance.ts';
import { type Device, senderOf } from './device.ts';
import type { DrillRoom } from './drill-room.ts';
import type { DrillRooms } from './drill-rooms.ts';
import { hashOf, newKey } from './keys.ts';
import { type ClientMessage, readMessage } from './messages.ts';
import { holdsSeat, isInstructor } from './seats.ts';

/** Messages too many, after which a connection is closed. */
const MOST_TOO_MANY = 200;
/** More than views alone can make wait: whoever does not read at all is let go [bytes]. */
const FAR_BEHIND = 8;

/** RFC 6455, section 7.4.1, and our own from 4000. */
const closeCodes = { normal: 1000, goingAway: 1001, policy: 1008, refused: 4000 } as const;

/** Serves a device that has connected; it joins with its hello. */
export function serveDevice(socket: WebSocket, code: string, rooms: DrillRooms): void {
  new LiveConnection(socket, code, rooms);
}

class LiveConnection implements Device {
  role: Role = 'observer';
  name = '';
  frame = 0;
  readonly #socket: WebSocket;
  readonly #code: string;
  readonly #rooms: DrillRooms;
  readonly #messages: ReturnType<typeof allowance>;
  #tooMany = 0;
  #room: DrillRoom | undefined;
  #joining = false;
  /** It was let go: what it still says is nothing to anybody, however long it keeps the connection. */
  #isOver = false;
  #heard = true;
  #pulse: NodeJS.Timeout;

  constructor(socket: WebSocket, code: string, rooms: DrillRooms) {
    const { messagesAtOnce, messagesPerS, silentMs } = rooms.settings;
    this.#socket = socket;
    this.#code = code;
    this.#rooms = rooms;
    this.#messages = allowance(messagesAtOnce, messagesPerS);
    socket.on('message', (data: RawData, isBinary: boolean) => this.#hear(data, isBinary));
    socket.on('pong', () => {
      this.#heard = true;
    });
    socket.on('close', () => this.#gone());
    // A frame that is too long or broken: ws closes the connection with the fitting code.
    socket.on('error', () => {});
    this.#pulse = setInterval(() => this.#beat(), silentMs);
    this.#pulse.unref();
  }

  get isOpen(): boolean {
    return this.#socket.readyState === this.#socket.OPEN;
  }

  get waitingBytes(): number {
    return this.#socket.bufferedAmount;
  }

  send(message: FromRoom): void {
    this.sendText(JSON.stringify(message));
  }

  sendText(text: string): void {
    if (!this.isOpen) return;
    if (this.waitingBytes > this.#rooms.settings.mostWaitingBytes * FAR_BEHIND) {
      this.#socket.terminate();
      return;
    }
    this.#socket.send(text);
  }

  end(why: FromRoom): void {
    this.send(why);
    this.#isOver = true;
    const going = why.type === 'error' && why.code === 'gone';
    this.#socket.close(going ? closeCodes.goingAway : closeCodes.refused, reasonOf(why));
  }

  close(): void {
    this.#isOver = true;
    this.#socket.close(closeCodes.normal);
  }

  /** Every so often: a device that has said nothing at all since the last time is gone. */
  #beat(): void {
    if (!this.#heard || this.#isOver || (!this.#room && !this.#joining)) {
      this.#socket.terminate();
      return;
    }
    this.#heard = false;
    if (this.isOpen) this.#socket.ping();
  }

  #gone(): void {
    clearInterval(this.#pulse);
    this.#room?.leave(this);
    this.#room = undefined;
  }

  #hear(data: RawData, isBinary: boolean): void {
    if (this.#isOver) return;
    this.#heard = true;
    if (!this.#messages.take()) {
      this.#tooMany += 1;
      if (this.#tooMany === 1) this.#tell('too fast', 'Too many messages: some were left out.');
      if (this.#tooMany > MOST_TOO_MANY) {
        this.#isOver = true;
        this.#socket.close(closeCodes.policy, 'too fast');
      }
      return;
    }
    const message = isBinary
      ? { problem: 'The message is binary. Send JSON as text.' }
      : readMessage(String(data));
    if ('problem' in message) {
      this.#tell('not understood', message.problem);
      return;
    }
    this.#do(message).catch((error) => {
      console.error(error);
      this.#tell('gone', 'The server failed on this message; its log says why.');
    });
  }

  async #do(message: ClientMessage): Promise<void> {
    if (message.type === 'ping') {
      this.send({ type: 'pong', ...(message.at !== undefined && { at: message.at }) });
      return;
    }
    if (message.type === 'hello') return this.#join(message);
    const room = this.#room;
    if (!room) {
      this.#tell('not understood', 'Say hello first.');
      return;
    }
    if (message.type === 'action') {
      room.ask(this, message.clientSeq, message.action);
      return;
    }
    if (message.type === 'leave') {
      this.#giveBack(room);
      return;
    }
    if (this.role !== 'instructor') {
      this.#tell('not allowed', `Only the instructor may do this, not the ${this.role}.`);
      return;
    }
    switch (message.type) {
      case 'computer': {
        const seat = room.seats.roles[message.role];
        if (message.plays) seat.computer = true;
        else delete seat.computer;
        room.changeSeats(() => room.tellRoles());
        return;
      }
      case 'guide':
        if (message.on) room.seats.guided = true;
        else delete room.seats.guided;
        room.changeSeats(() => {});
        return;
      case 'free':
        room.freeRole(message.role);
        room.changeSeats(() => room.tellRoles());
        return;
      case 'end':
        await this.#rooms.end(room);
    }
  }

  async #join({ v, role = 'observer', key, device = '' }: Hello): Promise<void> {
    if (v !== PROTOCOL) {
      const side = v > PROTOCOL ? 'The server is older than the app' : 'The app is old';
      this.#tell(
        'version',
        `${side}: it speaks version ${PROTOCOL}, not ${v}. Load the app again.`,
      );
      return;
    }
    if (this.#room || this.#joining) {
      this.#tell('not understood', 'This connection has joined. Connect anew for another role.');
      return;
    }
    this.#joining = true;
    try {
      const room = await this.#rooms.open(this.#code);
      if (!this.isOpen) return;
      if (!room) {
        this.end({ type: 'error', code: 'gone', message: 'The drill has ended.' });
        return;
      }
      const most = this.#rooms.settings.mostInRoom;
      // Those who only watch must not keep a crew out.
      if (role === 'observer' && room.devices.size >= most) {
        this.end({ type: 'error', code: 'full', message: `${most} devices are here already.` });
        return;
      }
      this.name = device;
      this.#takeRole(room, role, key);
    } finally {
      this.#joining = false;
    }
  }

  #takeRole(room: DrillRoom, role: Role, key: string | undefined): void {
    const { seats } = room;
    this.role = role;
    if (role === 'observer') {
      this.#enter(room, () => true);
      return;
    }
    if (role === 'instructor') {
      if (isInstructor(seats, key)) this.#enter(room, () => true);
      else this.#refuse('wrong key', 'This is not the key that the drill was made with.');
      return;
    }
    const seat = seats.roles[role];
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
      if (!holdsSeat(seats, role, mine)) this.#lost(role);
      else if (this.#room === room && this.isOpen) room.enter(this, mine);
      else {
        delete seat.keyHash;
        room.changeSeats(() => room.tellRoles());
      }
    });
  }

  /** @param mayStill whether it may when its turn comes */
  #enter(room: DrillRoom, mayStill: () => boolean): void {
    this.#room = room;
    // So that the welcome's `lastSeq` counts what an earlier connection of it has asked for.
    room.log.whenWritten(senderOf(this.role, this.name), () => {
      if (this.#room !== room || !this.isOpen) return;
      if (mayStill()) room.enter(this);
      else this.#lost(this.role);
    });
  }

  /** The instructor freed the role in the moment in which it was taken. */
  #lost(role: Role): void {
    this.#room = undefined;
    this.end({ type: 'error', code: 'freed', message: freed(role) });
  }

  #giveBack(room: DrillRoom): void {
    if (this.role === 'observer' || this.role === 'instructor') {
      this.close();
      return;
    }
    delete room.seats.roles[this.role].keyHash;
    room.changeSeats(() => room.tellRoles());
    this.close();
  }

  #tell(code: RoomErrorCode, message: string): void {
    this.send({ type: 'error', code, message });
  }

  /** It may try again at this connection. */
  #refuse(code: RoomErrorCode, message: string): void {
    this.role = 'observer';
    this.#tell(code, message);
  }
}

function freed(role: Role): string {
  return `The role of ${role} has been given free. Take it without a key.`;
}

function taken(role: Role): string {
  return `Another device has the role of ${role}. Take another role, or ask the instructor to free it.`;
}

type Hello = Extract<ClientMessage, { type: 'hello' }>;

function reasonOf(why: FromRoom): string {
  return why.type === 'error' ? why.code : why.type;
}
