/** Making a shared drill, from what is chosen on its form. */
import type { Benchmarks, DrillStart } from '@plugside/drill';
import { type Plan, writePlan } from '@plugside/fireground';
import { makeDrill, type NewDrill } from '../../api/index.ts';
import { keepSeat } from './kept-seats.ts';
import { openRoomLink } from './room-link.ts';

export type DrillSource =
  | { from: 'evolution'; key: string }
  /** An evolution on a hydrant of the records; `fits` once it was looked at and can be drilled. */
  | { from: 'hydrant'; key: string; hydrantId: string; fits: boolean }
  /** A way to supply a building of the records; null until one is picked. */
  | { from: 'building'; buildingId: string; way: { id: string; plan: Plan; title: string } | null }
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

/** Whether what is drilled has steps of its own, and so a start of its own. */
export const isScripted = ({ from }: DrillSource): boolean =>
  from === 'evolution' || from === 'hydrant';

/** What is missing of what to drill; undefined where nothing is. */
export function sourceProblem(source: DrillSource): string | undefined {
  if (source.from === 'record' && source.planId === '') return 'Choose a plan first.';
  if (source.from === 'hydrant' && source.hydrantId === '') return 'Choose a hydrant first.';
  if (source.from === 'hydrant' && !source.fits)
    return 'This hydrant cannot be drilled: see above.';
  if (source.from === 'building' && source.buildingId === '') return 'Choose a building first.';
  if (source.from === 'building' && source.way === null) return 'Choose a way first.';
  return undefined;
}

/** What the server is asked for. @param plan the plan open in the lay */
export function asked(wish: RoomWish, plan: Plan): NewDrill {
  const { source, start, crew, guided, benchmarks, seed } = wish;
  return {
    ...(source.from === 'evolution' && { evolution: source.key }),
    ...(source.from === 'hydrant' && { evolution: source.key, hydrantId: source.hydrantId }),
    ...(source.from === 'building' &&
      source.way && { plan: writePlan(source.way.plan), title: source.way.title, start }),
    ...(source.from === 'record' && { planId: source.planId, start }),
    ...(source.from === 'lay' && { plan: writePlan(plan), start }),
    ...(crew.trim() !== '' && { crew: crew.trim() }),
    // A plan has no steps to show.
    ...(guided && isScripted(source) && { guided }),
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
