import type { Plan } from '../plan/plan.ts';
import type { BoostComparison } from './answers.ts';
import { demandOf } from './attack-settings.ts';
import { mainLay, withLine } from './main-lay.ts';
import { type MostWaterOptions, mostWater } from './most-water.ts';
import { fallingRoot } from './root.ts';
import { SupplySearch } from './supply-search.ts';
import { isBoosted, unassistedPlan } from './unassisted.ts';

/** Longest lay looked at [ft]. */
const LONGEST_FT = 20000;

/**
 * Hydrant pressure alone beside the plan with its pumps, each at its greatest flow; and the lay length
 * past which the demand needs the boost, the rise and all else staying as they are.
 * @throws NetworkError where the plan cannot be solved
 */
export function compareBoost(plan: Plan, options: MostWaterOptions = {}): BoostComparison {
  const alone = unassistedPlan(plan);
  const unassisted = mostWater(alone, options);
  const boosted = isBoosted(plan) ? mostWater(plan, options) : null;
  const demandGpm = demandOf(plan);
  return {
    unassisted,
    boosted,
    gainGpm: boosted ? boosted.flowGpm - unassisted.flowGpm : 0,
    demandGpm,
    ...whereItPays(plan, alone, demandGpm),
  };
}

function whereItPays(
  plan: Plan,
  alone: Plan,
  demandGpm: number,
): Pick<BoostComparison, 'boostPays' | 'boostPaysFromFt'> {
  const lay = mainLay(plan);
  if (!lay || demandGpm <= 0) return { boostPays: 'not for this demand', boostPaysFromFt: null };
  const spare = (lengthFt: number) =>
    new SupplySearch(withLine(alone, lay.id, { lengthFt, terrain: undefined })).roomAt(demandGpm);
  const shortest = spare(0);
  if (shortest < 0) {
    const reach = isBoosted(plan) && new SupplySearch(plan).roomAt(demandGpm) >= 0;
    return { boostPays: reach ? 'at any length' : 'demand out of reach', boostPaysFromFt: null };
  }
  const longest = spare(LONGEST_FT);
  if (longest >= 0) return { boostPays: 'not for this demand', boostPaysFromFt: null };
  const root = fallingRoot(
    spare,
    { low: 0, high: LONGEST_FT, lowValue: shortest, highValue: longest },
    0.5,
  );
  return { boostPays: 'from length', boostPaysFromFt: root };
}
