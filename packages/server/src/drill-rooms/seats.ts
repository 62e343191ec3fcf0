/** Who may act in which role of a drill, and whether it is guided: plain JSON, kept with it. */
import { type PlayedRole, playedRoles } from '@plugside/drill';
import { fits, hashOf, newKey } from './keys.ts';

export interface Seat {
  /** Of the device that took the role; left out: nobody has. */
  keyHash?: string;
  /** The computer plays it. */
  computer?: true;
}

export interface Seats {
  instructor: string;
  /** Roles are shown their next step. */
  guided?: true;
  roles: Record<PlayedRole, Seat>;
}

/** Nobody's yet, save the instructor's. */
export function emptySeats(): { seats: Seats; instructorKey: string } {
  const instructorKey = newKey();
  const roles = Object.fromEntries(playedRoles.map((role) => [role, {}])) as Seats['roles'];
  return { seats: { instructor: hashOf(instructorKey), roles }, instructorKey };
}

export function isInstructor(seats: Seats, key: string | undefined): boolean {
  return fits(key, seats.instructor);
}

export function holdsSeat(seats: Seats, role: PlayedRole, key: string | undefined): boolean {
  return fits(key, seats.roles[role].keyHash);
}

/** For all to see. */
export function standing(seat: Seat): 'free' | 'taken' | 'computer' {
  if (seat.keyHash !== undefined) return 'taken';
  return seat.computer ? 'computer' : 'free';
}
