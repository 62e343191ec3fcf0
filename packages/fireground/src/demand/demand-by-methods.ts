import { QuantityError } from '@plugside/hydraulics';
import {
  type DemandAbout,
  type DemandAnswer,
  type DemandMethod,
  type DemandOptions,
  without,
} from './answer.ts';
import { areaAndInvolvement, areaInvolvementAbout } from './area-involvement.ts';
import type { BuildingField, BuildingForDemand } from './building.ts';
import { fireCodeAbout, fireCodeFlow } from './fire-code.ts';
import { insuranceRating, insuranceRatingAbout } from './insurance-rating.ts';
import { ruralSupply, ruralSupplyAbout } from './rural-supply.ts';
import { sprinklerDemand, sprinklerDemandAbout } from './sprinkler-demand.ts';
import { standpipeDemand, standpipeDemandAbout } from './standpipe-demand.ts';
import { volumeRule, volumeRuleAbout } from './volume-rule.ts';

const METHODS: readonly (readonly [
  about: DemandAbout,
  work: (building: BuildingForDemand, options?: DemandOptions) => DemandAnswer,
])[] = [
  [areaInvolvementAbout, areaAndInvolvement],
  [volumeRuleAbout, volumeRule],
  [insuranceRatingAbout, insuranceRating],
  [ruralSupplyAbout, ruralSupply],
  [fireCodeAbout, fireCodeFlow],
  [sprinklerDemandAbout, sprinklerDemand],
  [standpipeDemandAbout, standpipeDemand],
];

/** The methods that judge a building, in the order that they are shown. */
export const demandMethods: readonly { method: DemandMethod; title: string }[] = METHODS.map(
  ([{ method, title }]) => ({ method, title }),
);

/**
 * What a building asks for, by every method side by side.
 * @param building what is known of it; a method whose inputs are missing says which, and one with an
 *   input out of its range says what is wrong, so that the others still answer
 * @param options `units` for the sentences
 * @returns one answer for each method, in the order of `demandMethods`; never throws for an input
 * Source: each method's own.
 */
export function demandByMethods(
  building: BuildingForDemand,
  options: DemandOptions = {},
): DemandAnswer[] {
  return METHODS.map(([about, work]) => {
    try {
      return work(building, options);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      const { field, value, allowed, remedy } = error;
      return without(about, {
        fields: [field as BuildingField],
        text: error.message,
        problem: { field, value, allowed, remedy },
      });
    }
  });
}
