/** What an instructor may ask of the room itself. */
import type { RoomRequest } from '@plugside/drill';
import type { Device } from './device.ts';
import type { DrillRoom } from './drill-room.ts';
import { hashOf, newWatchKey } from './keys.ts';
import { WRONG_WATCH_KEY } from './room-door.ts';
import { seatOf } from './seats.ts';

export type InstructorAsk = Exclude<RoomRequest, { type: 'leave' } | { type: 'end' }>;

/** Does it; what follows is told once it is on the disk. @param device who asks */
export function doForInstructor(room: DrillRoom, device: Device, asked: InstructorAsk): void {
  const { seats, audience } = room;
  switch (asked.type) {
    case 'computer': {
      const seat = seatOf(seats, asked.role);
      if (asked.plays) seat.computer = true;
      else delete seat.computer;
      room.changeSeats(() => audience.tellRoles());
      return;
    }
    case 'free':
      room.freeRole(asked.role);
      room.changeSeats(() => audience.tellRoles());
      return;
    case 'guide':
      if (asked.on) seats.guided = true;
      else delete seats.guided;
      room.changeSeats(() => audience.tellSettings());
      return;
    case 'show faults':
      if (asked.on) seats.faultsShown = true;
      else delete seats.faultsShown;
      room.changeSeats(() => audience.tellSettings());
      return;
    case 'new watch key': {
      const key = newWatchKey();
      seats.watch = hashOf(key);
      audience.letGo('observer', 'wrong key', WRONG_WATCH_KEY);
      // The key is told once it is on the disk: a wall must be able to come back after a crash.
      room.changeSeats(() => {
        device.send({ type: 'watch key', key });
        audience.tellSettings();
        audience.tellRoles();
      });
    }
  }
}
