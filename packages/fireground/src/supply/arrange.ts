/** Legs with everyone's work given out: who lays which hose, who pumps where, when water comes. */
import { hoseCatalogue } from '../catalogue/hose.ts';
import type { HoseSize } from '../plan/plan.ts';
import type { Arrangement, HoseUse, LegWork } from './arrangement.ts';
import type { Crew } from './crew.ts';
import { HosePool, type Take, wholeSectionsFt } from './hose-pool.ts';
import { idOfLegs, kindOfLegs, type Leg, pumpsOf } from './leg.ts';
import type { RespondingRig } from './situation.ts';
import type { TaskTimes } from './task-times.ts';
import { waterTimes } from './time-to-water.ts';

/**
 * Gives out the work of some legs. A rig lays for one source alone: it cannot drive both ways. The
 * attack engine lays for the leg where that brings water soonest, with the fewest rigs.
 * @returns undefined where hose, intakes or discharges run out
 */
export function arrange(
  crew: Crew,
  legs: readonly Leg[],
  times: TaskTimes,
): Arrangement | undefined {
  if (!portsSuffice(crew, legs)) return undefined;
  let best: Given | undefined;
  // The leg that comes first has the attack engine's hose.
  for (const [at, leg] of legs.entries()) {
    const order = at === 0 ? legs : [leg, ...legs.slice(0, at), ...legs.slice(at + 1)];
    const work = giveOut(crew, order);
    if (!work) continue;
    const one = given(crew, legs, work, times);
    if (!best || soonerOrLeaner(one, best)) best = one;
  }
  return (
    best && { id: idOfLegs(legs), kind: kindOfLegs(legs), legs, ...best, ...hoseLaid(best.work) }
  );
}

type Given = Pick<Arrangement, 'work' | 'rigs' | 'time'>;

function soonerOrLeaner(one: Given, two: Given): boolean {
  if (one.rigs.length !== two.rigs.length) return one.rigs.length < two.rigs.length;
  return one.time.fullAtMin < two.time.fullAtMin - 1e-9;
}

function given(
  crew: Crew,
  legs: readonly Leg[],
  inOrder: readonly LegWork[],
  times: TaskTimes,
): Given {
  const work =
    legs.length === 1 ? inOrder : legs.map((leg) => inOrder.find((one) => one.leg === leg)!);
  const atWork = new Set<RespondingRig>([crew.attack]);
  for (const { leg, lay, suction } of work) {
    for (const pump of leg.pumps) atWork.add(pump);
    for (const { rig } of lay) atWork.add(rig);
    for (const { rig } of suction) atWork.add(rig);
  }
  const rigs = crew.all.filter((rig) => atWork.has(rig));
  return { work, rigs, time: waterTimes(crew.attack, work, times) };
}

function giveOut(crew: Crew, legs: readonly Leg[]): LegWork[] | undefined {
  const pool = new HosePool(crew.all);
  const busy = new Set<RespondingRig>();
  const pumps = pumpsOf(legs);
  const work: LegWork[] = [];
  for (const leg of legs) {
    const others = new Set([...busy, ...pumps.filter((pump) => !leg.pumps.includes(pump))]);
    const atWork = [crew.attack, ...leg.pumps].filter((rig) => !others.has(rig));
    const lay: Take[] = [];
    for (const { lines, fromFt, toFt } of leg.stretches) {
      for (const size of lines) {
        const takes = pool.take(size, toFt - fromFt, atWork, others);
        if (!takes) return undefined;
        lay.push(...takes);
        for (const { rig } of takes) if (!atWork.includes(rig)) atWork.push(rig);
      }
    }
    const suction: HoseUse[] = [];
    for (const size of leg.suction) {
      const section = pool.takeSection(size, atWork, others);
      if (!section) return undefined;
      suction.push(section);
    }
    for (const { rig } of [...lay, ...suction]) busy.add(rig);
    work.push({ leg, lay, suction });
  }
  return work;
}

function hoseLaid(work: readonly LegWork[]): { hoseFt: number; hoseSections: number } {
  let hoseFt = 0;
  let hoseSections = 0;
  const add = (size: HoseSize, lengthFt: number) => {
    hoseFt += lengthFt;
    hoseSections += wholeSectionsFt(size, lengthFt) / hoseCatalogue[size].sectionFt;
  };
  for (const { leg, suction } of work) {
    for (const { lines, fromFt, toFt } of leg.stretches)
      for (const size of lines) add(size, toFt - fromFt);
    for (const { hose, lengthFt } of suction) add(hose, lengthFt);
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
