/** Legs with everyone's work given out: who lays which hose, who pumps where, when water comes. */
import { hoseCatalogue } from '../catalogue/hose.ts';
import type { HoseSize } from '../plan/plan.ts';
import type { Arrangement, HoseUse, LegWork } from './arrangement.ts';
import type { Crew } from './crew.ts';
import { HosePool, supplySizes, type Take, wholeSectionsFt } from './hose-pool.ts';
import { idOfLegs, kindOfLegs, type Leg, pumpsOf } from './leg.ts';
import type { RespondingRig } from './situation.ts';
import type { TaskTimes } from './task-times.ts';
import { timeToWater } from './time-to-water.ts';

/**
 * Gives out the work of some legs.
 * @returns undefined where hose, intakes or discharges run out
 */
export function arrange(
  crew: Crew,
  legs: readonly Leg[],
  times: TaskTimes,
): Arrangement | undefined {
  if (!portsSuffice(crew, legs)) return undefined;
  const pool = new HosePool(crew.all);
  const atWork: RespondingRig[] = [crew.attack, ...pumpsOf(legs)];
  const lays: Take[][] = [];
  for (const leg of legs) {
    const lay: Take[] = [];
    for (const { lines, fromFt, toFt } of leg.stretches) {
      for (const size of lines) {
        const takes = pool.take(size, toFt - fromFt, atWork);
        if (!takes) return undefined;
        lay.push(...takes);
        for (const { rig } of takes) if (!atWork.includes(rig)) atWork.push(rig);
      }
    }
    lays.push(lay);
  }
  const sizes = supplySizes(atWork);
  const work: LegWork[] = [];
  for (const [at, leg] of legs.entries()) {
    const suction: HoseUse[] = [];
    for (let line = 0; line < leg.suctionLines; line++) {
      const section = pool.takeSection(atWork, sizes);
      if (!section) return undefined;
      suction.push(section);
    }
    work.push({ leg, lay: lays[at]!, suction });
  }
  return {
    id: idOfLegs(legs),
    kind: kindOfLegs(legs),
    legs,
    work,
    rigs: crew.all.filter((rig) => atWork.includes(rig)),
    ...hoseLaid(work),
    time: timeToWater(crew.attack, work, times),
  };
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
      const used = leg.pumps.length > 0 ? 1 + leg.suctionLines : last.lines.length;
      if (used > outlets) return false;
    }
    for (const [at, { rig }] of leg.pumps.entries()) {
      const into = at === 0 ? 1 + leg.suctionLines : leg.stretches[at - 1]!.lines.length;
      if (into > rig.intakes || leg.stretches[at]!.lines.length > rig.discharges) return false;
    }
  }
  return intoAttack <= crew.attack.rig.intakes;
}
