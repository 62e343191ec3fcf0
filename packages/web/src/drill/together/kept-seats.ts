/** Roles that this device has taken, kept so that a reload or a drop comes back to them. */
import type { Role } from '@plugside/drill';
import { keep, kept } from '../../plan-store/device-memory.ts';

export interface KeptSeat {
  /** Role that the device acts in; left out: none chosen. */
  role?: Role;
  /** Told to this device alone when it took the role. */
  key?: string;
  /** The drill was made here. */
  instructorKey?: string;
  /** To watch with: of the device that made the drill, and of the wall's. */
  watchKey?: string;
  /** To find it again once it has ended. */
  roomId?: string;
}

const MEMORY = 'plugside.drill-seats';
/** Drills remembered; the oldest are forgotten first. */
const MOST = 20;

type Book = [code: string, seat: KeptSeat][];

function book(): Book {
  try {
    const read: unknown = JSON.parse(kept(MEMORY) ?? '[]');
    return Array.isArray(read) ? (read as Book) : [];
  } catch {
    return [];
  }
}

/** What this device has in a drill; empty where it never joined. */
export function keptSeat(code: string): KeptSeat {
  return book().find(([one]) => one === code)?.[1] ?? {};
}

/** The newest drills that this device was in. */
export function keptCodes(most: number): string[] {
  return book()
    .slice(-most)
    .map(([code]) => code)
    .reverse();
}

/** Keeps what this device has in a drill, over what was kept before. */
export function keepSeat(code: string, seat: KeptSeat): void {
  const others = book().filter(([one]) => one !== code);
  keep(MEMORY, JSON.stringify([...others, [code, seat]].slice(-MOST)));
}

/** The key that a device shows in a role. */
export function keyFor(role: Role, seat: KeptSeat): string | undefined {
  if (role === 'instructor') return seat.instructorKey;
  return role === seat.role ? seat.key : undefined;
}
