/** Which lines a rig works with, from what it carries. */
import {
  type HoseAboard,
  type HoseSize,
  hoseCatalogue,
  hoseSizes,
  type NozzleMake,
  nozzleCatalogue,
  parseHoseSize,
} from '@plugside/fireground';
import type { Fields } from '@plugside/records/model';
import { supplyHoseAboard } from '@plugside/records/planning';
import { makeGpm } from '../words.ts';
import type { ChartLine } from './data.ts';

/** Flows that a size is worked at [gpm]. Common practice, no source. */
const HAND_LINE_GPM: Partial<Record<HoseSize, readonly [least: number, greatest: number]>> = {
  '1-1/2': [60, 130],
  '1-3/4': [100, 215],
  '2': [150, 275],
  '2-1/2': [200, 330],
};

/** What stands in where no nozzle of the department's suits a size. */
const USUAL: Partial<Record<HoseSize, readonly string[]>> = {
  '1-1/2': ['fog-95-100'],
  '1-3/4': ['fog-150-100', 'hand-tip-0.9375'],
  '2': ['fog-150-50', 'hand-tip-1'],
  '2-1/2': ['fog-250-100', 'hand-tip-1.125'],
};
const USUAL_MASTER = ['master-tip-1.5'];

/** At most so many nozzles for each size: a chart is read at a glance. */
const MOST_NOZZLES = 3;
const WYED_FT = 150;

type NozzleRecord = Fields<'nozzles'>;

export interface UsualLines {
  lines: ChartLine[];
  /** No nozzle on record suited: those of the catalogue stand in. */
  assumedNozzles: boolean;
}

/** Attack lines, a wyed pair and a monitor, as far as a rig has the hose for them. */
export function usualLines(
  rig: Pick<Fields<'rigs'>, 'hose'>,
  nozzles: readonly NozzleRecord[],
): UsualLines {
  const carried = new Set(rig.hose.map(({ size }) => parseHoseSize(size)));
  const own = nozzles.flatMap((record) => {
    const make = makeOf(record);
    return make ? [{ make, use: record.use }] : [];
  });
  let assumedNozzles = false;
  const suits = (size: HoseSize): NozzleMake[] => {
    const [least, greatest] = HAND_LINE_GPM[size]!;
    const found = own
      .filter(({ use, make }) => {
        const gpm = makeGpm(make);
        return use === 'hand line' && gpm >= least && gpm <= greatest;
      })
      .map(({ make }) => make);
    if (found.length > 0) return distinct(found).slice(0, MOST_NOZZLES);
    assumedNozzles = true;
    return named(USUAL[size]!);
  };
  const sizes = hoseSizes.filter((size) => HAND_LINE_GPM[size] && carried.has(size));
  const lines: ChartLine[] = sizes.flatMap((hose) =>
    suits(hose).map((nozzle): ChartLine => ({ kind: 'hand line', hose, nozzle })),
  );
  const leader = (['2-1/2', '3', '3-3'] as const).find((size) => carried.has(size));
  const small = (['1-3/4', '1-1/2'] as const).find((size) => carried.has(size));
  if (leader && small) {
    lines.push({
      kind: 'wyed lines',
      leader,
      hose: small,
      lengthFt: WYED_FT,
      lines: 2,
      nozzle: suits(small)[0]!,
    });
  }
  const feed = (['3', '3-3', '2-1/2'] as const).find((size) => carried.has(size));
  if (feed) {
    const masters = own.filter(({ use }) => use === 'master stream').map(({ make }) => make);
    if (masters.length === 0) assumedNozzles = true;
    const nozzle = distinct(masters.length > 0 ? masters : named(USUAL_MASTER))[0]!;
    lines.push({ kind: 'master stream', hose: feed, lines: 2, nozzle });
  }
  return { lines, assumedNozzles };
}

/** Hose of 3 in and up that a rig can lay for supply, the largest first. */
export function supplySizes(rig: Pick<Fields<'rigs'>, 'hose'>): HoseAboard[] {
  return supplyHoseAboard(rig).filter(({ hose }) => hoseCatalogue[hose].diameterIn >= 3);
}

/** The smallest first, each once. */
function distinct(makes: readonly NozzleMake[]): NozzleMake[] {
  const byWords = new Map(makes.map((make) => [JSON.stringify(make), make]));
  return [...byWords.values()].sort((a, b) => makeGpm(a) - makeGpm(b));
}

function named(ids: readonly string[]): NozzleMake[] {
  return ids.map((id) => nozzleCatalogue.find((entry) => entry.id === id)!.make);
}

function makeOf(record: NozzleRecord): NozzleMake | undefined {
  const { kind, ratedPsi, tipIn, ratedGpm, leastGpm, greatestGpm, settingsGpm } = record;
  if (kind === 'smooth-bore') return tipIn ? { kind, tipIn, ratedPsi } : undefined;
  if (kind === 'fog') return ratedGpm ? { kind, ratedGpm, ratedPsi } : undefined;
  if (kind === 'automatic') {
    return leastGpm && greatestGpm ? { kind, ratedPsi, leastGpm, greatestGpm } : undefined;
  }
  const most = settingsGpm && settingsGpm.length > 0 ? Math.max(...settingsGpm) : undefined;
  return settingsGpm && most ? { kind, settingsGpm, selectedGpm: most, ratedPsi } : undefined;
}
