/** What the officer changes about a situation before choosing: the demand, who comes, and when. */
import type { Criterion, Situation } from '@plugside/fireground';

export interface Adjustments {
  /** Instead of the situation's [gpm]; null: as it is. */
  demandGpm: number | null;
  /** Rigs that do not come. */
  away: readonly string[];
  /** Arrival by rig, where it is another than the situation's [min]. */
  arrivesMin: Readonly<Record<string, number>>;
  /** Weighed first among ways that meet the demand. */
  first: Exclude<Criterion, 'meets demand'>;
}

export const asTheyCome: Adjustments = {
  demandGpm: null,
  away: [],
  arrivesMin: {},
  first: 'time to water',
};

/** The usual order of what is weighed, the weightiest first. */
const USUAL: readonly Criterion[] = [
  'meets demand',
  'time to water',
  'rigs used',
  'hose',
  'margin',
];

export function rankingOf({ first }: Adjustments): Criterion[] {
  const rest = USUAL.filter((criterion) => criterion !== 'meets demand' && criterion !== first);
  return ['meets demand', first, ...rest];
}

/** The situation with the changes made, rigs again in order of arrival. */
export function adjusted(situation: Situation, changes: Adjustments): Situation {
  const rigs = situation.rigs
    .filter(({ rig }) => !changes.away.includes(rig.id))
    .map((one) => ({ ...one, arrivesMin: changes.arrivesMin[one.rig.id] ?? one.arrivesMin }))
    .sort((a, b) => a.arrivesMin - b.arrivesMin);
  return { ...situation, rigs, demandGpm: changes.demandGpm ?? situation.demandGpm };
}
