import type { Context } from 'hono';
import { ProblemError } from '../problem.ts';
import { addressOf } from '../upgrade.ts';
import { guesses } from './allowance.ts';
import type { DrillRoom } from './drill-room.ts';
import type { DrillRooms } from './drill-rooms.ts';
import { codeIn } from './keys.ts';

/** The room of the code in a request's path. @throws ProblemError 404, 429 */
export type FindRoom = (c: Context) => Promise<DrillRoom>;

/** Codes are few enough to be tried out, so wrong ones are let in at a walking pace only. */
export function findRoom(rooms: DrillRooms): FindRoom {
  const { missesPerMin, missesOfAllPerMin } = rooms.settings;
  const wrong = guesses(missesPerMin, missesOfAllPerMin);
  return async (c) => {
    const address = addressOf(c);
    if (!wrong.mayAsk(address)) {
      throw new ProblemError({
        status: 429,
        title: 'Too many wrong codes',
        detail:
          'Too many codes that are no drill’s. Wait a minute; ask the instructor for the code.',
        headers: { 'Retry-After': '60' },
      });
    }
    const code = codeIn(c.req.param('code') ?? '');
    const room = code === undefined ? undefined : await rooms.open(code);
    if (room) return room;
    wrong.missed(address);
    throw new ProblemError({
      status: 404,
      title: 'Not found',
      detail: 'No drill runs under this code. It may have ended; ask the instructor for the code.',
    });
  };
}
