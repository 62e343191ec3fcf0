import type { Notice } from '../questions/answers.ts';
import { type Leg, listed, sourceName } from './leg.ts';

/** Two hydrants on one main, or not known to be on two, give less than their tests add up to. */
export function mainNotices(legs: readonly Leg[]): Notice[] {
  const hydrants = legs.flatMap((leg) =>
    leg.source.kind === 'hydrant' ? [{ leg, at: leg.source.at }] : [],
  );
  if (hydrants.length < 2) return [];
  const mains = hydrants.map(({ at }) => at.main);
  const names = listed(hydrants.map(({ leg }) => sourceName(leg)));
  if (mains.some((main) => main === undefined)) {
    return [
      {
        level: 'caution',
        text: `It is not known whether ${names} are on mains of their own. A shared main gives less than the figures here: test both flowing together.`,
      },
    ];
  }
  if (new Set(mains).size < mains.length) {
    return [
      {
        level: 'caution',
        text: `${names} share a main. Together they give less than the figures here, which take each test as if the other were shut: test both flowing together.`,
      },
    ];
  }
  return [];
}
