/** Who may act in which role of a drill, who may watch, and what is shown: plain JSON, kept with it. */
import type { PlayedRole, RoomSettingsNow } from '@plugside/drill';
import { fits, hashOf, newKey, newWatchKey } from './keys.ts';

export interface Seat {
  /** Of the device that took the role; left out: nobody has. */
  keyHash?: string;
  /** The computer plays it. */
  computer?: true;
}

export interface Seats {
  instructor: string;
  /** What those who watch show; left out: nobody may, as in a room that was made before there was such a key. */
  watch?: string;
  /** Roles are shown their next step. */
  guided?: true;
  /** Those who watch are shown the faults in effect. */
  faultsShown?: true;
  /** Those that the drill has. */
  roles: Partial<Record<PlayedRole, Seat>>;
}

/** Keys as they are told, once, to whoever makes the drill. */
export interface MadeKeys {
  instructor: string;
  watch: string;
}

/** Nobody's yet, save the instructor's. @param roles that the drill has */
export function emptySeats(roles: readonly PlayedRole[]): { seats: Seats; keys: MadeKeys } {
  const keys = { instructor: newKey(), watch: newWatchKey() };
  const seats: Seats = {
    instructor: hashOf(keys.instructor),
    watch: hashOf(keys.watch),
    roles: Object.fromEntries(roles.map((role) => [role, {}])),
  };
  return { seats, keys };
}

/** The seat of a role that the drill has; made where it was not kept. */
export function seatOf(seats: Seats, role: PlayedRole): Seat {
  seats.roles[role] ??= {};
  return seats.roles[role];
}

export function isInstructor(seats: Seats, key: string | undefined): boolean {
  return fits(key, seats.instructor);
}

export function mayWatch(seats: Seats, key: string | undefined): boolean {
  return fits(key, seats.watch);
}

export function holdsSeat(seats: Seats, role: PlayedRole, key: string | undefined): boolean {
  return fits(key, seats.roles[role]?.keyHash);
}

/** For all to see. */
export function standing(seat: Seat | undefined): 'free' | 'taken' | 'computer' {
  if (seat?.keyHash !== undefined) return 'taken';
  return seat?.computer ? 'computer' : 'free';
}

/** What the instructor has set. */
export function settingsIn({ guided, faultsShown, watch }: Seats): RoomSettingsNow {
  return {
    guided: guided === true,
    faultsShown: faultsShown === true,
    hasWatchKey: watch !== undefined,
  };
}
