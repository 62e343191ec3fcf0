/** Making a shared drill, from what is chosen on its form. */
import type { Benchmarks, DrillStart } from '@plugside/drill';
import { type Plan, writePlan } from '@plugside/fireground';
import { makeDrill, type NewDrill } from '../../api/index.ts';
import { keepSeat } from './kept-seats.ts';
import { openRoomLink } from './room-link.ts';

export type DrillSource =
  | { from: 'evolution'; key: string }
  | { from: 'record'; planId: string }
  | { from: 'lay' };

export interface RoomWish {
  source: DrillSource;
  /** Of a plan; an evolution has its own. */
  start: DrillStart;
  crew: string;
  guided: boolean;
  benchmarks: Partial<Benchmarks>;
  /** As typed; empty: drawn. */
  seed: string;
}

/** Why a seed cannot be used; undefined where it can. */
export function seedProblem(text: string): string | undefined {
  const seed = text.trim();
  if (seed === '' || (/^\d+$/.test(seed) && Number(seed) <= 4_294_967_295)) return undefined;
  return `“${seed}” is no seed. Give a whole number from 0 to 4294967295, or leave it empty.`;
}

/** What the server is asked for. @param plan the plan open in the lay */
export function asked(wish: RoomWish, plan: Plan): NewDrill {
  const { source, start, crew, guided, benchmarks, seed } = wish;
  return {
    ...(source.from === 'evolution' && { evolution: source.key }),
    ...(source.from === 'record' && { planId: source.planId, start }),
    ...(source.from === 'lay' && { plan: writePlan(plan), start }),
    ...(crew.trim() !== '' && { crew: crew.trim() }),
    // A plan has no steps to show.
    ...(guided && source.from === 'evolution' && { guided }),
    ...(Object.keys(benchmarks).length > 0 && { benchmarks }),
    ...(seed.trim() !== '' && { seed: Number(seed) }),
  };
}

/**
 * Makes the drill and holds its clock, which else runs from the first device on: it begins when the
 * instructor says so. @returns its code
 * @throws ProblemError where the server refuses, UnreachableError where none answers
 */
export async function makeRoom(wish: RoomWish, plan: Plan): Promise<string> {
  const { code, roomId, keys } = await makeDrill(asked(wish, plan));
  keepSeat(code, {
    role: 'instructor',
    instructorKey: keys.instructor,
    watchKey: keys.watch,
    roomId,
  });
  const link = openRoomLink({
    code,
    role: 'instructor',
    key: keys.instructor,
    onSeat: () => undefined,
  });
  link.act({ do: 'pause' });
  await new Promise<void>((resolve) => {
    const done = () => {
      stop();
      clearTimeout(timer);
      resolve();
    };
    // The drill is made; a clock that could not be held is stopped by hand.
    const timer = setTimeout(done, 4_000);
    const stop = link.state.subscribe(({ connection, waiting, view }) => {
      if (connection.is === 'out' || (waiting === 0 && view?.paused)) done();
    });
  });
  link.end();
  return code;
}
