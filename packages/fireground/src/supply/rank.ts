/** Which way comes first. */
import type { Criterion, SupplyWay, WaterTimes } from './choice.ts';

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

/** The figures that ranking looks at. */
export type Ranked = Pick<
  SupplyWay,
  'id' | 'meetsDemand' | 'rigsUsed' | 'hoseFt' | 'marginGpm' | 'mostGpm'
> & { time: WaterTimes };

/**
 * A way's figures as ranked, weightiest first, lower better: times in whole minutes, hose in
 * hundreds of feet, margins in steps of 50 gpm, so that a trifle decides nothing.
 */
export function rankKey(way: Ranked, ranking: readonly Criterion[]): number[] {
  return ranking.map((criterion) => figureOf(way, criterion));
}

function figureOf(way: Ranked, criterion: Criterion): number {
  switch (criterion) {
    case 'meets demand':
      // Of those that fall short the one that brings most is the best.
      return way.meetsDemand ? Number.NEGATIVE_INFINITY : -Math.round(way.mostGpm / alike.shortGpm);
    case 'time to water':
      return Math.round(way.time.fullAtMin / alike.min);
    case 'rigs used':
      return way.rigsUsed;
    case 'hose':
      return Math.ceil(way.hoseFt / alike.ft - 1e-9);
    case 'margin':
      return -Math.floor(way.marginGpm / alike.gpm + 1e-9);
  }
}

/** Orders ways, the best first; those alike in every criterion by their exact figures, then by id. */
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
      one.time.fullAtMin - two.time.fullAtMin ||
      one.hoseFt - two.hoseFt ||
      two.mostGpm - one.mostGpm ||
      (one.id < two.id ? -1 : one.id > two.id ? 1 : 0)
    );
  };
}
