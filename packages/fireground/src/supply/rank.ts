/** Which way comes first. */
import type { MainRange } from '../questions/answers.ts';
import type { Criterion, SupplyWay, WaterTimes } from './choice.ts';
import type { Situation } from './situation.ts';

/** What is weighed where nobody says otherwise, the weightiest first. */
export const usualRanking: readonly Criterion[] = [
  'meets demand',
  'time to water',
  'rigs used',
  'hose',
  'margin',
];

/** Differences smaller than these are no reason to prefer a way; ours. */
export const alike = { min: 1, ft: 100, gpm: 50, shortGpm: 10 } as const;

/** Share of the demand that a way should have to spare; ours, no source. A situation may give its own. */
export const usualMarginShare = 0.1;

/** What a way should have to spare [gpm]. */
export function marginWantedGpm({
  demandGpm,
  marginShare = usualMarginShare,
}: Pick<Situation, 'demandGpm' | 'marginShare'>): number {
  return marginShare * demandGpm;
}

/** The figures that ranking looks at. */
export type Ranked = Pick<
  SupplyWay,
  'id' | 'meetsDemand' | 'littleToSpare' | 'rigsUsed' | 'hoseFt' | 'marginGpm' | 'mostGpm'
> & { time: WaterTimes; mains?: Pick<MainRange, 'basis'> };

/** Meets the demand with the margin wanted. */
export function meetsFully({
  meetsDemand,
  littleToSpare,
}: Pick<Ranked, 'meetsDemand' | 'littleToSpare'>): boolean {
  return meetsDemand && !littleToSpare;
}

/**
 * Without what is left of rounding in a solved figure: it differs between JavaScript engines, whose
 * powers and logarithms differ in their last digit, and must not decide an order.
 */
export function settled(figure: number): number {
  return Math.round(figure * 100) / 100;
}

/**
 * A way's figures as ranked, weightiest first, lower better: times in whole minutes, hose in
 * hundreds of feet, margins in steps of 50 gpm, so that a trifle decides nothing. Of ways that meet
 * the demand those with less to spare than is wanted come after the others.
 */
export function rankKey(way: Ranked, ranking: readonly Criterion[]): number[] {
  return ranking.map((criterion) => figureOf(way, criterion));
}

function figureOf(way: Ranked, criterion: Criterion): number {
  switch (criterion) {
    case 'meets demand':
      // Of those that fall short the one that brings most is the best.
      if (meetsFully(way)) return Number.NEGATIVE_INFINITY;
      if (way.meetsDemand) return -Number.MAX_VALUE;
      return -Math.round(settled(way.mostGpm) / alike.shortGpm);
    case 'time to water':
      return Math.round(settled(way.time.fullAtMin) / alike.min);
    case 'rigs used':
      return way.rigsUsed;
    case 'hose':
      return Math.ceil(way.hoseFt / alike.ft - 1e-9);
    case 'margin':
      return -Math.floor(settled(way.marginGpm) / alike.gpm);
  }
}

/**
 * Orders ways, the best first. Of those alike in every criterion a sum of hydrants that may share a
 * main comes last; then time, hose and flow to the last figure that counts, then the id.
 */
export function byRank(ranking: readonly Criterion[]): (one: Ranked, two: Ranked) => number {
  // A sort asks for the same way's figures many times.
  const known = new Map<Ranked, number[]>();
  const keyOf = (way: Ranked): number[] => {
    const key = known.get(way) ?? rankKey(way, ranking);
    known.set(way, key);
    return key;
  };
  return (one, two) => {
    const [first, second] = [keyOf(one), keyOf(two)];
    for (let at = 0; at < first.length; at++) {
      if (first[at] !== second[at]) return first[at]! < second[at]! ? -1 : 1;
    }
    return (
      Number(unproven(one)) - Number(unproven(two)) ||
      settled(one.time.fullAtMin) - settled(two.time.fullAtMin) ||
      one.hoseFt - two.hoseFt ||
      Math.round(settled(two.mostGpm)) - Math.round(settled(one.mostGpm)) ||
      (one.id < two.id ? -1 : one.id > two.id ? 1 : 0)
    );
  };
}

/** Whether its flow stands on hydrants of which nobody knows that their mains are apart. */
function unproven({ mains }: Ranked): boolean {
  return mains?.basis === 'not known';
}
