import type { Beat } from './room-clock.ts';

/** How long rooms wait, and how much is let in. */
export interface RoomSettings {
  /** Beats of the one clock: real time between two looks at all the rooms [ms]. */
  beatMs: number;
  /** Views are sent every so many beats; half as often while the machine is behind. */
  beatsPerView: number;
  /** The clock of a room that nobody is connected to stops after so long [ms]. */
  heldAfterMs: number;
  /** It is put aside, out of memory, after so long [ms]; whoever joins has it back. */
  asideAfterMs: number;
  /** A drill that nobody has come to for so long is ended [ms]. */
  endedAfterMs: number;
  /** A running drill's place in time is written at least so often [ms]. */
  writtenEveryMs: number;
  /** Its state is kept so often [ticks]: a start after a crash runs at most so many again. */
  keyframeEveryTicks: number;
  /** Rooms in memory at once, and drills that have not ended. */
  mostRooms: number;
  /** Of those, made from one address: a classroom is behind one router. */
  mostRoomsFromAddress: number;
  /** Devices in a room, and on the server, at once. */
  mostInRoom: number;
  mostConnections: number;
  /** Of those, from one address, joined or not. */
  mostConnectionsFromAddress: number;
  /** A connection that says no hello, or answers no ping, for so long is closed [ms]. */
  silentMs: number;
  /** What a device may send: so many a second, and so many at once. */
  messagesPerS: number;
  messagesAtOnce: number;
  /** Views are left out while more than this waits to be sent to a device [bytes]. */
  mostWaitingBytes: number;
  /** Codes that are no drill's, and keys to watch that are wrong, by one address and by all of them [1/min]. */
  missesPerMin: number;
  missesOfAllPerMin: number;
  /** An action's number may be above the last one's by so much at most. */
  mostSeqJump: number;
  /** Told of each beat, to measure. */
  onBeat?: (beat: Beat) => void;
}

export const defaultRoomSettings: RoomSettings = {
  beatMs: 50,
  beatsPerView: 2,
  heldAfterMs: 60_000,
  asideAfterMs: 10 * 60_000,
  endedAfterMs: 6 * 3_600_000,
  writtenEveryMs: 1_000,
  keyframeEveryTicks: 200,
  mostRooms: 100,
  mostRoomsFromAddress: 60,
  mostInRoom: 40,
  mostConnections: 1_000,
  mostConnectionsFromAddress: 300,
  silentMs: 15_000,
  messagesPerS: 30,
  messagesAtOnce: 60,
  mostWaitingBytes: 131_072,
  missesPerMin: 30,
  missesOfAllPerMin: 300,
  mostSeqJump: 10_000,
};
