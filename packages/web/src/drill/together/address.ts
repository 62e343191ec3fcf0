/** Addresses of drills that several devices share: `/drill/KTMRB`, `/drill/replay/01J…`. */
import { codeIn } from './room-codes.ts';

export type TogetherAddress =
  | { at: 'new' }
  | { at: 'room'; code: string }
  /** Large, without controls, for a screen on the wall. */
  | { at: 'wall'; code: string }
  /** The drill under this code, once it has ended. */
  | { at: 'after'; code: string }
  | { at: 'replay'; roomId: string }
  | { at: 'past' };

export const newRoomAddress = '/drill/new';
/** The start of a drill with what it is to be on picked already. */
export const newRoomFor = (on: { hydrant: string } | { building: string }): string =>
  `${newRoomAddress}?${new URLSearchParams(on)}`;
export const pastAddress = '/drill/past';
export const roomAddress = (code: string): string => `/drill/${code}`;
/** The wall's; with the key to watch as its fragment, which no server is sent and no log keeps. */
export const wallAddress = (code: string, watchKey?: string): string =>
  `/drill/${code}/wall${watchKey === undefined ? '' : `#${watchKey}`}`;
export const replayAddress = (roomId: string): string => `/drill/replay/${roomId}`;

/** What an address names here; undefined for one that is not of a shared drill. */
export function readTogetherAddress(pathname: string): TogetherAddress | undefined {
  const [, place, first = '', second = '', third] = pathname.split('/');
  if (place !== 'drill' || third) return undefined;
  if (first === 'new' && second === '') return { at: 'new' };
  if (first === 'past' && second === '') return { at: 'past' };
  if (first === 'replay' && /^\w{1,40}$/.test(second)) return { at: 'replay', roomId: second };
  const code = codeIn(first);
  if (code === undefined) return undefined;
  if (second === '') return { at: 'room', code };
  if (second === 'wall') return { at: 'wall', code };
  if (second === 'replay') return { at: 'after', code };
  return undefined;
}
