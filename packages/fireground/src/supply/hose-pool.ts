/** The hose that the rigs bring, given out length by length. */
import { hoseCatalogue } from '../catalogue/hose.ts';
import { wholeSectionsFt } from '../catalogue/hose-sections.ts';
import type { HoseSize } from '../plan/plan.ts';
import { carried } from './crew.ts';
import type { RespondingRig } from './situation.ts';

/** Hose that one rig lays for one line. */
export interface Take {
  rig: RespondingRig;
  hose: HoseSize;
  lengthFt: number;
}

/** Smallest hose that is laid for supply [in]. */
const LEAST_SUPPLY_IN = 2.5;

/** Sizes aboard that supply lays are made of, the largest first. */
export function supplySizes(rigs: readonly RespondingRig[]): HoseSize[] {
  const sizes = new Set(
    rigs.flatMap((rig) => rig.hose.filter(({ lengthFt }) => lengthFt > 0).map(({ hose }) => hose)),
  );
  return [...sizes]
    .filter((size) => hoseCatalogue[size].diameterIn >= LEAST_SUPPLY_IN)
    .sort(
      (one, two) =>
        hoseCatalogue[two].diameterIn - hoseCatalogue[one].diameterIn ||
        hoseCatalogue[one].coefficient - hoseCatalogue[two].coefficient,
    );
}

/** Hose of a size that all rigs together bring [ft]. */
export function broughtFt(rigs: readonly RespondingRig[], size: HoseSize): number {
  return rigs.reduce((sum, rig) => sum + carried(rig, size), 0);
}

export class HosePool {
  readonly #rigs: readonly RespondingRig[];
  readonly #taken: Take[] = [];

  /** @param rigs in order of arrival */
  constructor(rigs: readonly RespondingRig[]) {
    this.#rigs = rigs;
  }

  /** What a rig has left of a size [ft]. */
  left(rig: RespondingRig, size: HoseSize): number {
    let left = carried(rig, size);
    for (const take of this.#taken)
      if (take.rig === rig && take.hose === size) left -= take.lengthFt;
    return left;
  }

  /**
   * Takes a line's hose: from the rigs that are at work already, then from those that bring the
   * rest soonest, as few of them as will do.
   * @param busy rigs that lay for another source
   * @returns who lays how much, whole sections each; undefined, and nothing taken, where it is too short
   */
  take(
    size: HoseSize,
    lengthFt: number,
    atWork: readonly RespondingRig[],
    busy: ReadonlySet<RespondingRig>,
  ): Take[] | undefined {
    const takes: Take[] = [];
    let missing = lengthFt;
    const from = (rig: RespondingRig) => {
      if (missing <= 0) return;
      const has = this.left(rig, size);
      if (has <= 0) return;
      const part = Math.min(has, wholeSectionsFt(size, missing));
      takes.push({ rig, hose: size, lengthFt: part });
      missing -= part;
    };
    atWork.forEach(from);
    const soonest: RespondingRig[] = [];
    let reach = 0;
    for (const rig of this.#rigs) {
      if (reach >= missing) break;
      if (atWork.includes(rig) || busy.has(rig) || this.left(rig, size) <= 0) continue;
      soonest.push(rig);
      reach += this.left(rig, size);
    }
    if (reach < missing) return undefined;
    soonest.sort((one, two) => this.left(two, size) - this.left(one, size));
    soonest.forEach(from);
    this.#taken.push(...takes);
    return takes;
  }

  /** Takes one section from a rig that is at work already, else from the first that brings one. */
  takeSection(
    size: HoseSize,
    atWork: readonly RespondingRig[],
    busy: ReadonlySet<RespondingRig>,
  ): Take | undefined {
    const { sectionFt } = hoseCatalogue[size];
    const rig = [...atWork, ...this.#rigs].find(
      (one) => this.left(one, size) >= sectionFt && (atWork.includes(one) || !busy.has(one)),
    );
    if (!rig) return undefined;
    const take = { rig, hose: size, lengthFt: sectionFt };
    this.#taken.push(take);
    return take;
  }
}
