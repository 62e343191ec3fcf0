/** Which engine at the fire takes which line. */
import type { AtFire, LegTasks, LineAtFire } from './arrangement.ts';
import { type FireAsk, type Taker, takersFor } from './fire-pumps.ts';
import type { RespondingRig } from './situation.ts';

type Work = Pick<LegTasks, 'leg' | 'lay' | 'suction'>;
type Engine = AtFire & { lines: LineAtFire[] };

/**
 * Gives the lines of a way to so many engines at the fire. The attack engine takes what it laid
 * itself, else the first; each further engine takes the next leg, or the second line of one where
 * there are fewer legs than engines. A leg goes to the engine that lays it, else to one with
 * nothing else to do, in order of arrival. What is left over goes where most room is.
 * @param count engines wanted, 1 or more; fewer where fewer can be there or fewer lines come
 */
export function enginesAtFire(fire: FireAsk, work: readonly Work[], count: number): AtFire[] {
  const [attack] = fire.takers;
  if (count === 1) return [{ ...attack, lines: linesOf(work).flat() }];
  const free = takersFor(
    fire,
    work.map(({ leg }) => leg),
  );
  const most = Math.min(count, free.length);
  const units = unitsOf(work, most);
  const own = units.findIndex(([line]) => laysFor(work[line!.leg]!, attack.rig));
  const inOrder = own > 0 ? [units[own]!, ...units.filter((_, at) => at !== own)] : units;
  const engines: Engine[] = [];
  for (const lines of inOrder) {
    const next = engines.length < most ? takerOf(work, lines[0]!.leg, engines, free) : undefined;
    if (next) engines.push({ ...next, lines: [...lines] });
    else roomiest(engines).lines.push(...lines);
  }
  return engines;
}

/** Lines that come to the fire, by leg. */
function linesOf(work: readonly Work[]): LineAtFire[][] {
  return work.map(({ leg }, at) =>
    leg.stretches.at(-1)!.lines.map((_, line): LineAtFire => ({ leg: at, line })),
  );
}

/** Whole legs, or single lines where there are fewer legs than engines. */
function unitsOf(work: readonly Work[], engines: number): LineAtFire[][] {
  const legs = linesOf(work);
  return legs.length >= engines ? legs : legs.flat().map((line) => [line]);
}

function laysFor({ lay, suction }: Work, one: RespondingRig): boolean {
  return [...lay, ...suction].some(({ rig }) => rig === one);
}

function takerOf(
  work: readonly Work[],
  leg: number,
  engines: readonly AtFire[],
  free: readonly Taker[],
): Taker | undefined {
  if (engines.length === 0) return free[0];
  const left = free.filter((one) => !engines.some(({ rig }) => rig === one.rig));
  return (
    left.find((one) => laysFor(work[leg]!, one.rig)) ??
    left.find((one) => !work.some((of) => laysFor(of, one.rig))) ??
    left[0]
  );
}

function roomiest(engines: readonly Engine[]): Engine {
  const room = ({ gpm, lines }: Engine) => gpm / (lines.length + 1);
  return engines.reduce((best, one) => (room(one) > room(best) + 1e-9 ? one : best));
}

/** The fewest engines whose pumps put out what is wanted, else all that can be there and have a line. */
export function enginesFor(fire: FireAsk, work: readonly Work[]): AtFire[] {
  if (fire.takers[0].gpm >= fire.wantedGpm) return enginesAtFire(fire, work, 1);
  const most = mostEngines(fire, work);
  // As they come: who lays may go before.
  let count = 1;
  let gpm = 0;
  for (const taker of fire.takers) {
    gpm += taker.gpm;
    if (count >= most || gpm >= fire.wantedGpm) break;
    count += 1;
  }
  let engines = enginesAtFire(fire, work, count);
  while (count < most && togetherGpm(engines) < fire.wantedGpm) {
    count += 1;
    engines = enginesAtFire(fire, work, count);
  }
  return engines;
}

/** Engines that can be there, no more than lines come. */
export function mostEngines(fire: FireAsk, work: readonly Work[]): number {
  const legs = work.map(({ leg }) => leg);
  const lines = legs.reduce((sum, { stretches }) => sum + stretches.at(-1)!.lines.length, 0);
  return lines < 2 ? 1 : Math.min(takersFor(fire, legs).length, lines);
}

function togetherGpm(engines: readonly AtFire[]): number {
  return engines.reduce((sum, { gpm }) => sum + gpm, 0);
}

/** What each engine takes of the water in its lines: no more than its pump puts out [gpm]. */
export function takenGpm(
  engines: readonly AtFire[],
  lineGpm: (line: LineAtFire) => number,
): number[] {
  return engines.map(({ gpm, lines }) =>
    Math.min(
      gpm,
      lines.reduce((sum, line) => sum + lineGpm(line), 0),
    ),
  );
}
