/** What a person changes about a situation before choosing: the demand, who comes, and when. */
import type { Criterion } from './choice.ts';
import { usualRanking } from './rank.ts';
import type { Situation } from './situation.ts';

export interface Adjustments {
  /** Instead of the situation's [gpm]; null: as it is. */
  demandGpm: number | null;
  /** Rigs that do not come. */
  away: readonly string[];
  /** Arrival by rig, where it is another than the situation's [min]. */
  arrivesMin: Readonly<Record<string, number>>;
  /** Share of the demand that a way should have to spare, where it is another than the situation's. */
  marginShare?: number;
  /** Discharge pressure that the lines at the fire need, where it is another than the situation's [psi]. */
  fireLinePdpPsi?: number;
  /** Weighed first among ways that meet the demand. */
  first: Exclude<Criterion, 'meets demand'>;
}

export const asTheyCome: Adjustments = {
  demandGpm: null,
  away: [],
  arrivesMin: {},
  first: 'time to water',
};

/** The usual ranking with one criterion moved up behind the demand. */
export function rankingOf({ first }: Pick<Adjustments, 'first'>): Criterion[] {
  const rest = usualRanking.filter((one) => one !== 'meets demand' && one !== first);
  return ['meets demand', first, ...rest];
}

/**
 * The situation with the changes made, rigs again in order of arrival.
 * @param changes flow [gpm], arrivals [min], margin [share], pressure [psi]; ids that the situation does not have are left aside
 */
export function adjusted(situation: Situation, changes: Omit<Adjustments, 'first'>): Situation {
  const rigs = situation.rigs
    .filter(({ rig }) => !changes.away.includes(rig.id))
    .map((one) => ({ ...one, arrivesMin: changes.arrivesMin[one.rig.id] ?? one.arrivesMin }))
    .sort((a, b) => a.arrivesMin - b.arrivesMin);
  const { marginShare, fireLinePdpPsi } = changes;
  return {
    ...situation,
    rigs,
    demandGpm: changes.demandGpm ?? situation.demandGpm,
    ...(marginShare !== undefined && { marginShare }),
    ...(fireLinePdpPsi !== undefined && { fireLinePdpPsi }),
  };
}
