/** Legs with everyone's work given out: who lays which hose, who pumps where, when water comes. */
import { hoseCatalogue } from '../catalogue/hose.ts';
import { wholeSectionsFt } from '../catalogue/hose-sections.ts';
import type { HoseSize } from '../plan/plan.ts';
import type { Arrangement, AtFire, HoseUse, LaidHose, LegWork } from './arrangement.ts';
import { enginesFor } from './at-the-fire.ts';
import type { Crew } from './crew.ts';
import type { FireAsk } from './fire-pumps.ts';
import { HosePool, type Take } from './hose-pool.ts';
import { idOfLegs, kindOfLegs, type Leg, pumpsOf, type Stretch } from './leg.ts';
import type { RespondingRig } from './situation.ts';
import type { TaskTimes } from './task-times.ts';
import { waterTimes } from './time-to-water.ts';

/**
 * Gives out the work of some legs. A rig lays for one source alone: it cannot drive both ways. The
 * attack engine lays for the leg where that brings water soonest, with the fewest rigs. A leg on an
 * assist valve keeps it only where a rig that goes to its hydrant brings one; else its pump stands
 * in the line.
 * @returns undefined where hose, intakes or discharges run out
 */
export function arrange(
  crew: Crew,
  legs: readonly Leg[],
  times: TaskTimes,
  fire: FireAsk,
): Arrangement | undefined {
  if (!portsSuffice(crew, legs)) return undefined;
  let best: Given | undefined;
  // The leg that comes first has the attack engine's hose.
  for (const [at, leg] of legs.entries()) {
    const order = at === 0 ? legs : [leg, ...legs.slice(0, at), ...legs.slice(at + 1)];
    const work = giveOut(crew, order);
    if (!work) continue;
    const one = given(crew, legs, work, times, fire);
    if (!best || soonerOrLeaner(one, best)) best = one;
  }
  if (!best) return undefined;
  const arranged = best.work.map(({ leg }) => leg);
  return {
    id: idOfLegs(arranged),
    kind: kindOfLegs(arranged),
    legs: arranged,
    ...best,
    ...hoseLaid(best.work),
  };
}

type Given = Pick<Arrangement, 'work' | 'atFire' | 'rigs' | 'time'>;
type Unmanned = Omit<LegWork, 'takenBy'>;

function soonerOrLeaner(one: Given, two: Given): boolean {
  if (one.rigs.length !== two.rigs.length) return one.rigs.length < two.rigs.length;
  return one.time.fullAtMin < two.time.fullAtMin - 1e-9;
}

function given(
  crew: Crew,
  legs: readonly Leg[],
  inOrder: readonly Unmanned[],
  times: TaskTimes,
  fire: FireAsk,
): Given {
  const work =
    legs.length === 1
      ? inOrder
      : legs.map(({ source }) => inOrder.find((one) => one.leg.source === source)!);
  return manned(crew, work, enginesFor(fire, work), times);
}

/** The work with its engines at the fire: who is at work, and when water comes. */
function manned(
  crew: Crew,
  unmanned: readonly Unmanned[],
  atFire: readonly AtFire[],
  times: TaskTimes,
): Given {
  const [attack] = atFire;
  const work = unmanned.map((one, leg): LegWork => {
    const takenBy = one.leg.stretches.at(-1)!.lines.map((_, line) => {
      const takes = ({ lines }: AtFire) => lines.some((at) => at.leg === leg && at.line === line);
      return (atFire.length > 1 ? atFire.find(takes) : attack)!.rig;
    });
    return { ...one, takenBy };
  });
  const atWork = new Set<RespondingRig>(atFire.map(({ rig }) => rig));
  for (const { leg, lay, suction } of work) {
    for (const pump of leg.pumps) atWork.add(pump);
    for (const { rig } of lay) atWork.add(rig);
    for (const { rig } of suction) atWork.add(rig);
  }
  const rigs = crew.all.filter((rig) => atWork.has(rig));
  return { work, atFire, rigs, time: waterTimes(crew.attack, work, times) };
}

/** The arrangement with other engines at the fire. */
export function withEngines(
  crew: Crew,
  arrangement: Arrangement,
  atFire: readonly AtFire[],
  times: TaskTimes,
): Arrangement {
  return { ...arrangement, ...manned(crew, arrangement.work, atFire, times) };
}

function giveOut(crew: Crew, legs: readonly Leg[]): Unmanned[] | undefined {
  const pool = new HosePool(crew.all);
  const busy = new Set<RespondingRig>();
  const pumps = pumpsOf(legs);
  const work: Unmanned[] = [];
  for (const leg of legs) {
    const others = new Set([...busy, ...pumps.filter((pump) => !leg.pumps.includes(pump))]);
    const atWork = [crew.attack, ...leg.pumps].filter((rig) => !others.has(rig));
    const lay: Take[] = [];
    const laid: LaidHose[][][] = [];
    let valveBy: RespondingRig | undefined;
    for (const [at, stretch] of leg.stretches.entries()) {
      const lines: LaidHose[][] = [];
      for (const size of stretch.lines) {
        const parts = partsOf(stretch, size);
        for (const [number, part] of parts.entries()) {
          const takes = pool.take(part.hose, part.lengthFt, atWork, others);
          if (!takes) return undefined;
          part.lengthFt = 0;
          for (const take of takes) {
            lay.push(take);
            part.lengthFt += take.lengthFt;
            if (!atWork.includes(take.rig)) atWork.push(take.rig);
          }
          const there = at === 0 && number === 0 ? atWater(crew, leg, takes) : undefined;
          if (there?.assistValve) valveBy ??= there;
        }
        lines.push(parts);
      }
      laid.push(lines);
    }
    const suction: HoseUse[] = [];
    for (const size of leg.suction) {
      const section = pool.takeSection(size, atWork, others);
      if (!section) return undefined;
      suction.push(section);
    }
    for (const { rig } of [...lay, ...suction]) busy.add(rig);
    work.push({ leg: withValveOf(leg, valveBy), lay, laid, suction });
  }
  return work;
}

/** A line's hose to take, by size [ft along the street]. */
function partsOf({ fromFt, toFt, change }: Stretch, hose: HoseSize): LaidHose[] {
  if (!change) return [{ hose, lengthFt: toFt - fromFt }];
  return [
    { hose, lengthFt: change.fromFt - fromFt },
    { hose: change.hose, lengthFt: toFt - change.fromFt },
  ];
}

/** The leg with the valve of a rig that lays from the hydrant, else of its pump; without where neither brings one. */
function withValveOf(leg: Leg, laysThere: RespondingRig | undefined): Leg {
  if (!leg.valve) return leg;
  const [pump] = leg.pumps;
  const valveBy = laysThere ?? (pump?.assistValve ? pump : undefined);
  return valveBy ? { ...leg, valveBy } : { ...leg, valve: false };
}

/** Who lays a line's end at the water: its pump, else whoever comes before the attack engine, which drives on to the fire. */
function atWater({ attack }: Crew, { pumps: [pump] }: Leg, takes: readonly Take[]): RespondingRig {
  const own = takes.find(({ rig }) => rig === pump) ?? takes.find(({ rig }) => rig !== attack);
  return own?.rig ?? attack;
}

function hoseLaid(work: readonly LegWork[]): { hoseFt: number; hoseSections: number } {
  let hoseFt = 0;
  let hoseSections = 0;
  for (const { lay, suction } of work) {
    for (const { hose, lengthFt } of [...lay, ...suction]) {
      hoseFt += lengthFt;
      hoseSections += wholeSectionsFt(hose, lengthFt) / hoseCatalogue[hose].sectionFt;
    }
  }
  return { hoseFt, hoseSections };
}

/** Intakes, discharges and hydrant outlets for every line. */
function portsSuffice(crew: Crew, legs: readonly Leg[]): boolean {
  const pumps = pumpsOf(legs);
  if (pumps.includes(crew.attack)) return false;
  if (legs.reduce((sum, leg) => sum + leg.pumps.length, 0) > pumps.length) return false;
  let intoAttack = 0;
  for (const leg of legs) {
    const last = leg.stretches.at(-1)!;
    intoAttack += last.lines.length;
    if (leg.source.kind === 'hydrant') {
      const { hydrant, steamer } = leg.source.at;
      const outlets = hydrant.sideOutlets + (steamer ? 1 : 0);
      const used = leg.pumps.length > 0 ? 1 + leg.suction.length : last.lines.length;
      if (used > outlets) return false;
    }
    for (const [at, { rig }] of leg.pumps.entries()) {
      const into = at === 0 ? 1 + leg.suction.length : leg.stretches[at - 1]!.lines.length;
      if (into > rig.intakes || leg.stretches[at]!.lines.length > rig.discharges) return false;
    }
  }
  return intoAttack <= crew.attack.rig.intakes;
}
