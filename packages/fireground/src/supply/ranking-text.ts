/** How ways are ranked and what a sum over mains may be, in words. */
import type { MainRange } from '../questions/answers.ts';
import { formatQuantity } from '../units/format-quantity.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { Criterion } from './choice.ts';
import { alike } from './rank.ts';

/** A difference between mains that is told [gpm]; ours. */
const WORTH_GPM = 5;

const WORDS: Record<Exclude<Criterion, 'meets demand'>, string> = {
  'time to water': 'the soonest with all of its water',
  'rigs used': 'the fewest rigs',
  hose: 'the least hose',
  margin: 'the most to spare',
};

/**
 * "Ranked: ways that bring enough, with what is wanted to spare, first; of those … Under a minute or
 * 100 ft of hose apart counts as alike."
 * @param ranking what is weighed, the weightiest first
 */
export function rankingText(ranking: readonly Criterion[], units: UnitSystem): string {
  const words = ranking.flatMap((one) => (one === 'meets demand' ? [] : [WORDS[one]]));
  const order = words.length === 0 ? '' : `; of those ${words.join(', then ')}`;
  return `Ranked: ways that bring enough, with what is wanted to spare, first${order}. ${alikeText(units)}`;
}

/** "Under a minute or 100 ft of hose apart counts as alike." */
export function alikeText(units: UnitSystem): string {
  const hose = sayIn(units).full(alike.ft, 'length');
  return `Under a minute or ${hose} of hose apart counts as alike.`;
}

/**
 * What a way would bring were its hydrants' mains otherwise than they are counted: "948 if one
 * main". Undefined where that makes no difference worth telling.
 */
export function otherMainsText(
  mains: Pick<MainRange, 'basis' | 'shared' | 'apart'> | undefined,
  units: UnitSystem,
): string | undefined {
  if (!mains || mains.apart - mains.shared < WORTH_GPM) return undefined;
  const bare = (gpm: number) => formatQuantity(gpm, 'flow', units).number;
  return mains.basis === 'shared'
    ? `${bare(mains.apart)} were it two mains`
    : `${bare(mains.shared)} if one main`;
}
