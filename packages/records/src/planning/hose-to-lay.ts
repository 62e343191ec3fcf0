import {
  formatHoseSize,
  type HoseAboard,
  type HoseSections,
  type HoseSize,
  hoseCatalogue,
  parseHoseSize,
  sectionsOf,
  wholeSectionsFt,
} from '@plugside/fireground';
import type { Fields } from '../model/index.ts';
import { ft, notice, type PlanningNotice } from './notice.ts';

/** Hose picked for a lay. */
export interface HoseToLay {
  hose: HoseSize;
  /** Like lines side by side. */
  count: number;
  /** Each line as it is laid, in whole sections [ft]: what the rigs lack is counted as if it were brought. */
  laidFt: number;
  /** The same as sections; left out where a rig's last length is no whole one. */
  sections?: HoseSections;
  /** Of that size on the rigs counted [ft]. */
  carriedFt: number;
  /** What is missing from it [ft]; 0 where it reaches. */
  shortFt: number;
  /** The rigs that it comes from. */
  rigNames: string[];
  notices: PlanningNotice[];
}

type HoseBed = Pick<Fields<'rigs'>, 'name' | 'hose'>;

/** Picked where no rig has hose on record. */
const UNKNOWN_HOSE: HoseSize = '5';

/** Sizes that supply is laid with, large to small: all of 3½ in and up, then what is left. */
const SUPPLY_SIZES = (Object.keys(hoseCatalogue) as HoseSize[])
  .filter((size) => hoseCatalogue[size].diameterIn >= 2.5)
  .sort((a, b) => hoseCatalogue[b].diameterIn - hoseCatalogue[a].diameterIn);
const isLarge = (size: HoseSize) => hoseCatalogue[size].limitClass === 'supply';

/** Hose with a nozzle on its end is not laid for supply. */
const ATTACK_BED = /crosslay|preconnect|attack/i;

/**
 * Picks the hose for a lay from what the rigs carry: the largest large-diameter hose that the
 * first rig carries enough of, else that they carry together, else smaller hose in as many lines
 * as reach, two at most; where nothing reaches, the size that comes nearest, with how much is missing.
 * It is laid in whole sections, as ways to supply are.
 *
 * @param lengthFt of the street under the lay, above 0 [ft]
 * @param rigs in the order in which they lay
 */
export function hoseToLay(lengthFt: number, rigs: readonly HoseBed[]): HoseToLay {
  const carried = (size: HoseSize, beds = rigs) =>
    beds.reduce((sum, bed) => sum + carriedFt(bed, size), 0);
  const pick = (hose: HoseSize, beds: readonly HoseBed[], count = 1): HoseToLay => {
    const total = carried(hose, beds);
    const laidFt = longestLaidFt(hose, count, lengthFt, beds);
    const sections = sectionsOf([{ hose, lengthFt: laidFt }]);
    return {
      hose,
      count,
      laidFt,
      ...(sections && { sections }),
      carriedFt: total,
      shortFt: Math.max(0, lengthFt - total),
      rigNames: beds.filter((bed) => carriedFt(bed, hose) > 0).map(({ name }) => name),
      notices: [],
    };
  };
  const first = rigs.slice(0, 1);
  const large = SUPPLY_SIZES.filter(isLarge);

  const alone = large.find((size) => carried(size, first) >= lengthFt);
  if (alone) return pick(alone, first);
  const together = large.find((size) => carried(size) >= lengthFt);
  if (together) {
    const found = pick(together, rigs);
    return withNotice(
      found,
      notice(
        'fact',
        'hose-of-several-rigs',
      )`The lay takes ${formatHoseSize(together)} hose of ${found.rigNames.join(' and ')} together.`,
    );
  }
  const small = SUPPLY_SIZES.find((size) => !isLarge(size) && carried(size) >= lengthFt);
  if (small) {
    const count = Math.min(2, Math.floor(carried(small) / lengthFt));
    const lines = count === 1 ? 'one line' : 'two lines';
    return withNotice(
      pick(small, rigs, count),
      notice(
        'caution',
        'no-large-hose',
      )`No rig picked carries ${ft(lengthFt)} of large-diameter hose. The plan lays ${lines} of ${formatHoseSize(small)}.`,
    );
  }
  const [most] = [...SUPPLY_SIZES].sort((a, b) => carried(b) - carried(a));
  if (!most || carried(most) === 0) {
    const assumed = pick(UNKNOWN_HOSE, []);
    return withNotice(
      { ...assumed, shortFt: 0 },
      notice(
        'caution',
        'no-hose-on-record',
      )`No supply hose is on record for the rigs picked. The plan assumes ${ft(assumed.laidFt)} of ${formatHoseSize(UNKNOWN_HOSE)}; enter what they carry.`,
    );
  }
  const found = pick(most, rigs);
  return withNotice(
    found,
    notice(
      'caution',
      'hose-too-short',
    )`The lay is ${ft(lengthFt)}; the rigs picked carry ${ft(found.carriedFt)} of ${formatHoseSize(most)}. ${ft(found.shortFt)} are missing: bring another rig, or pick a nearer hydrant.`,
  );
}

function withNotice(found: HoseToLay, said: PlanningNotice): HoseToLay {
  return { ...found, notices: [said] };
}

/** The longest of like lines [ft]: whole sections, but of a rig no more than it has. */
function longestLaidFt(
  hose: HoseSize,
  count: number,
  lengthFt: number,
  beds: readonly HoseBed[],
): number {
  const leftFt = beds.map((bed) => carriedFt(bed, hose));
  const lines = Array.from({ length: count }, () => {
    let laidFt = 0;
    leftFt.forEach((left, at) => {
      const missing = lengthFt - laidFt;
      if (missing <= 0 || left <= 0) return;
      const part = Math.min(left, wholeSectionsFt(hose, missing));
      leftFt[at] = left - part;
      laidFt += part;
    });
    return laidFt < lengthFt ? laidFt + wholeSectionsFt(hose, lengthFt - laidFt) : laidFt;
  });
  return Math.max(...lines);
}

function carriedFt(bed: HoseBed, size: HoseSize): number {
  return supplyHoseAboard(bed).find(({ hose }) => hose === size)?.lengthFt ?? 0;
}

/** Hose that a rig can lay for supply, by size, the largest first: no preconnects, no attack beds. */
export function supplyHoseAboard({ hose }: Pick<HoseBed, 'hose'>): HoseAboard[] {
  const loads = hose.filter((load) => !ATTACK_BED.test(load.where ?? ''));
  return SUPPLY_SIZES.map((size) => ({
    hose: size,
    lengthFt: loads
      .filter((load) => parseHoseSize(load.size) === size)
      .reduce((sum, load) => sum + load.lengthFt, 0),
  })).filter(({ lengthFt }) => lengthFt > 0);
}
