/** What a supply can still give beyond what flows: for the words of those who pump it. */
import { NetworkError } from '@plugside/hydraulics';
import type { Plan } from '../plan/plan.ts';
import type { Offer } from '../words/orders.ts';
import type { SupplyState } from './answers.ts';
import { SupplySearch } from './supply-search.ts';

/**
 * Beyond a flow [gpm]; the search is left at its greatest.
 * @param mostGpm the greatest, where it is known [gpm]
 */
export function offerOf(search: SupplySearch, flowGpm: number, mostGpm?: number): Offer {
  if (mostGpm !== undefined) search.roomAt(mostGpm);
  const moreGpm = (mostGpm ?? search.greatestGpm()) - flowGpm;
  return { moreGpm, pdpPsi: search.pdpPsi, tight: search.tightest() };
}

/** Beyond what flows now, valves as they are and each pump set for it; none where it cannot be told. */
export function offerNow(plan: Plan, { sceneGpm }: SupplyState): Offer | undefined {
  try {
    return offerOf(new SupplySearch(plan), sceneGpm);
  } catch (error) {
    if (error instanceof NetworkError) return undefined;
    throw error;
  }
}
