/** One device's connection to a drill: what it says is read here, and all it is told goes out here. */
import type { FromRoom, Role, RoomErrorCode } from '@plugside/drill';
import type { RawData, WebSocket } from 'ws';
import { allowance } from './allowance.ts';
import type { DrillRooms } from './drill-rooms.ts';
import { doForInstructor } from './instructor-asks.ts';
import { type ClientMessage, readMessage } from './messages.ts';
import { type JoiningDevice, RoomDoor } from './room-door.ts';

/** Messages too many, after which a connection is closed. */
const MOST_TOO_MANY = 200;
/** More than views alone can make wait: whoever does not read at all is let go [bytes]. */
const FAR_BEHIND = 8;

/** RFC 6455, section 7.4.1, and our own from 4000. */
const closeCodes = { normal: 1000, goingAway: 1001, policy: 1008, refused: 4000 } as const;

/** Serves a device that has connected from an address; it joins with its hello. */
export function serveDevice(
  socket: WebSocket,
  code: string,
  rooms: DrillRooms,
  address: string,
): void {
  new LiveConnection(socket, code, rooms, address);
}

class LiveConnection implements JoiningDevice {
  role: Role = 'observer';
  name = '';
  frame = 0;
  readonly #socket: WebSocket;
  readonly #rooms: DrillRooms;
  readonly #door: RoomDoor;
  readonly #messages: ReturnType<typeof allowance>;
  #tooMany = 0;
  /** It was let go: what it still says is nothing to anybody, however long it keeps the connection. */
  #isOver = false;
  #heard = true;
  #pulse: NodeJS.Timeout;

  constructor(socket: WebSocket, code: string, rooms: DrillRooms, address: string) {
    const { messagesAtOnce, messagesPerS, silentMs } = rooms.settings;
    this.#socket = socket;
    this.#rooms = rooms;
    this.#door = new RoomDoor(this, code, rooms, address);
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
    if (!this.#heard || this.#isOver || !this.#door.isUsed) {
      this.#socket.terminate();
      return;
    }
    this.#heard = false;
    if (this.isOpen) this.#socket.ping();
  }

  #gone(): void {
    clearInterval(this.#pulse);
    this.#door.leave();
  }

  #hear(data: RawData, isBinary: boolean): void {
    if (this.#isOver) return;
    this.#heard = true;
    if (!this.#messages.take()) {
      this.#tooMany += 1;
      if (this.#tooMany === 1) this.tell('too fast', 'Too many messages: some were left out.');
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
      this.tell('not understood', message.problem);
      return;
    }
    this.#do(message).catch((error) => {
      console.error(error);
      this.tell('gone', 'The server failed on this message; its log says why.');
    });
  }

  async #do(message: ClientMessage): Promise<void> {
    if (message.type === 'ping') {
      this.send({ type: 'pong', ...(message.at !== undefined && { at: message.at }) });
      return;
    }
    if (message.type === 'hello') return this.#door.join(message);
    const { room } = this.#door;
    if (!room) {
      this.tell('not understood', 'Say hello first.');
      return;
    }
    if (message.type === 'action') {
      room.ask(this, message.clientSeq, message.action);
      return;
    }
    if (message.type === 'leave') {
      this.#door.giveBack(room);
      return;
    }
    if (this.role !== 'instructor') {
      this.tell('not allowed', `Only the instructor may do this, not the ${this.role}.`);
      return;
    }
    if (message.type === 'end') await this.#rooms.end(room);
    else doForInstructor(room, this, message);
  }

  tell(code: RoomErrorCode, message: string): void {
    this.send({ type: 'error', code, message });
  }
}

function reasonOf(why: FromRoom): string {
  return why.type === 'error' ? why.code : why.type;
}
