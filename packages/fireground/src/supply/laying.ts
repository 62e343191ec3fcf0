/** Who lays which hose of a leg, and from where to where. */
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { LegWork } from './arrangement.ts';
import { rigName } from './crew.ts';
import type { Take } from './hose-pool.ts';
import { type Leg, listed, sourceName } from './leg.ts';
import type { RespondingRig } from './situation.ts';
import { numberWord } from './title.ts';

/** Hose that a rig lays in one run: its lines come off side by side. */
export interface Run {
  rig: RespondingRig;
  /** Its two ends, from the water [ft]. */
  fromFt: number;
  toFt: number;
  /** Laid toward the water: it ends at `fromFt`. */
  towardWater: boolean;
  takes: readonly Take[];
  /** Stretch of the leg that it is part of. */
  stretch: number;
}

/**
 * The runs of a leg, each rig's in the order in which it lays them. Of a line that several lay, a
 * pump's hose lies where the pump stands and the attack engine's at the fire. A pump lays toward the
 * water, where it stands, unless its hose lies before it; everyone else lays toward the fire.
 */
export function runsOf({ leg, lay }: Pick<LegWork, 'leg' | 'lay'>, attack: RespondingRig): Run[] {
  const runs: Run[] = [];
  let next = 0;
  leg.stretches.forEach((stretch, at) => {
    for (const _ of stretch.lines) {
      const needFt = stretch.toFt - stretch.fromFt;
      const line: Take[] = [];
      for (let laidFt = 0; laidFt < needFt - 1e-9 && next < lay.length; next++) {
        line.push(lay[next]!);
        laidFt += lay[next]!.lengthFt;
      }
      // Where the size changes, all of the first lies before the second.
      const second = ({ hose }: Take) => (stretch.change?.hose === hose ? 1 : 0);
      const placed = [...line].sort(
        (one, two) =>
          second(one) - second(two) ||
          placeOf(leg, one.rig, at, attack) - placeOf(leg, two.rig, at, attack),
      );
      let { fromFt } = stretch;
      for (const take of placed) {
        const toFt = Math.min(fromFt + take.lengthFt, stretch.toFt);
        addTo(runs, {
          take,
          fromFt,
          toFt,
          stretch: at,
          towardWater: towardWater(leg, take.rig, at),
        });
        fromFt = toFt;
      }
    }
  });
  return runs.sort((one, two) =>
    one.towardWater ? two.fromFt - one.fromFt : one.fromFt - two.fromFt,
  );
}

function placeOf(leg: Leg, rig: RespondingRig, stretch: number, attack: RespondingRig): number {
  if (rig === attack) return Number.POSITIVE_INFINITY;
  const pump = leg.pumps.indexOf(rig);
  if (pump < 0) return leg.pumps.length;
  return pump <= stretch ? pump : leg.pumps.length + pump;
}

function towardWater(leg: Leg, rig: RespondingRig, stretch: number): boolean {
  const pump = leg.pumps.indexOf(rig);
  return pump >= 0 && pump <= stretch;
}

interface Part extends Omit<Run, 'rig' | 'takes'> {
  take: Take;
}

/** Lines that a rig lays over the same ground come off at once. */
function addTo(runs: Run[], { take, ...part }: Part): void {
  const beside = runs.find(
    (run) => run.rig === take.rig && run.fromFt < part.toFt && part.fromFt < run.toFt,
  );
  if (!beside) {
    runs.push({ rig: take.rig, ...part, takes: [take] });
    return;
  }
  beside.fromFt = Math.min(beside.fromFt, part.fromFt);
  beside.toFt = Math.max(beside.toFt, part.toFt);
  beside.takes = [...beside.takes, take];
}

/** "lays two lines of 600 ft of 5 in from H-114 to the fire". */
export function runWords(leg: Leg, run: Run, units: UnitSystem): string {
  const say = sayIn(units);
  const hose = alikeTogether(run.takes).map(
    ({ hose: size, lengthFt, count }) =>
      `${count > 1 ? `${numberWord(count)} lines of ` : ''}${say.full(lengthFt, 'length')} of ${formatHoseSize(size, units)}`,
  );
  const [first, last] = run.towardWater ? [run.toFt, run.fromFt] : [run.fromFt, run.toFt];
  // The water is named once.
  const named = first > 0 && last > 0;
  const fromFire = first >= leg.stretches.at(-1)!.toFt;
  const start = placeWords(leg, first, run.rig, units, named);
  const end = placeWords(leg, last, run.rig, units, named && fromFire);
  return `lays ${listed(hose)} from ${start} to ${end}${adapterWords(leg, run, units)}`;
}

/** ", with an adapter from 5 in to 4 in", for the rig whose hose begins where the size changes. */
function adapterWords(leg: Leg, { stretch, fromFt, toFt }: Run, units: UnitSystem): string {
  const { lines, change } = leg.stretches[stretch]!;
  if (!change || fromFt > change.fromFt || toFt <= change.fromFt) return '';
  return `, with an adapter from ${formatHoseSize(lines[0]!, units)} to ${formatHoseSize(change.hose, units)}`;
}

/** A place along a leg as crews name it: "H-114", "Engine 2, 900 ft out", "the fire". */
function placeWords(
  leg: Leg,
  alongFt: number,
  teller: RespondingRig,
  units: UnitSystem,
  named: boolean,
): string {
  if (alongFt <= 0) return sourceName(leg);
  if (alongFt >= leg.stretches.at(-1)!.toFt) return 'the fire';
  const pump = leg.pumps.find((_, at) => leg.stretches[at]!.fromFt === alongFt);
  const out = `${sayIn(units).full(alongFt, 'length')} ${named ? `from ${sourceName(leg)}` : 'out'}`;
  return pump && pump !== teller ? `${rigName(pump)}, ${out}` : `the point ${out}`;
}

function alikeTogether(takes: readonly Take[]): (Take & { count: number })[] {
  const groups = new Map<string, Take & { count: number }>();
  for (const take of takes) {
    const key = `${take.hose}/${take.lengthFt}`;
    groups.set(key, { ...take, count: (groups.get(key)?.count ?? 0) + 1 });
  }
  return [...groups.values()];
}
