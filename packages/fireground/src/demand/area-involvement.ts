import { QuantityError } from '@plugside/hydraulics';
import type { Notice } from '../questions/answers.ts';
import { formatNumber } from '../units/format-quantity.ts';
import { fromInside } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import {
  answered,
  caution,
  type DemandAbout,
  type DemandAnswer,
  type DemandOptions,
  fact,
  step,
  unanswered,
} from './answer.ts';
import type { BuildingForDemand } from './building.ts';
import { checkBuilding } from './building-fields.ts';
import { FLOOR_FIELDS, floorMissing, floorOf } from './floor.ts';

/** Floor [ft²] to a gpm. Source: Simple Ways to Determine Your Fire Flow Requirements, FirefighterNation. */
export const FT2_PER_GPM = 3;

/** Added for each exposed side, as a share of the flow for the whole building. From memory. */
export const EXPOSURE_SHARE = 0.25;

/** Share of the building past which the rule no longer holds. Source: as FT2_PER_GPM. */
const TRUSTED_SHARE = 0.5;

const FIELDS = [
  ...FLOOR_FIELDS,
  'storeys',
  'storeysInvolved',
  'involvedShare',
  'exposures',
] as const;

export const areaInvolvementAbout: DemandAbout = {
  method: 'area and involvement',
  title: 'Area and involvement (National Fire Academy)',
  inputs: FIELDS,
  source: {
    title: 'Simple Ways to Determine Your Fire Flow Requirements, FirefighterNation',
    fromMemory: true,
  },
};

/**
 * Needed flow by area and involvement, the National Fire Academy's quick rule.
 *   Q = (L·W/3·storeys·(1 + 0.25·exposures))·share involved
 * @param building length and width [ft] or floor area [ft²]; storeys with fire (1 where neither they
 *   nor storeys are given), share involved (1), exposed sides (0)
 * @returns flow [gpm], unrounded; no duration
 * Valid: interior attack on at most half of a building; past that a notice says so.
 * Outside: throws QuantityError for an input out of its range.
 * Source: Simple Ways to Determine Your Fire Flow Requirements, FirefighterNation
 * (https://www.firefighternation.com/training/simple-ways-to-determine-your-fire-flow-requirements/);
 * a quarter for each exposure, and that involvement is taken after it, from memory.
 */
export function areaAndInvolvement(
  building: BuildingForDemand,
  { units = 'us' }: DemandOptions = {},
): DemandAnswer {
  checkBuilding(building, FIELDS);
  const { storeys, storeysInvolved } = building;
  if (storeys !== undefined && storeysInvolved !== undefined && storeysInvolved > storeys) {
    throw new QuantityError({
      field: 'storeysInvolved',
      value: storeysInvolved,
      allowed: `1 to ${storeys}, as many as there are`,
      remedy: 'Check both numbers of storeys.',
    });
  }
  const say = sayIn(units);
  const floor = floorOf(building, say);
  if (!floor) return unanswered(areaInvolvementAbout, floorMissing(building));
  const floors = storeysInvolved ?? storeys ?? 1;
  const share = building.involvedShare ?? 1;
  const exposures = building.exposures ?? 0;
  const baseGpm = (floor.areaFt2 / FT2_PER_GPM) * floors;
  const exposedGpm = baseGpm * EXPOSURE_SHARE * exposures;
  const wholeGpm = baseGpm + exposedGpm;
  const neededGpm = wholeGpm * share;
  const divided =
    units === 'us'
      ? `${say.full(floor.areaFt2, 'area')} ÷ ${FT2_PER_GPM}`
      : `${say.full(floor.areaFt2, 'area')} × ${formatNumber(fromInside(1 / FT2_PER_GPM, 'density', 'mm/min'), 1)} L/min for each m²`;
  const steps = [
    floor.step,
    step(
      `All of ${floors === 1 ? 'one floor' : `${floors} floors`}: ${divided}${floors === 1 ? '' : ` × ${floors}`} = ${say.full(baseGpm, 'flow')}.`,
      baseGpm,
      'gpm',
    ),
  ];
  if (exposures > 0) {
    steps.push(
      step(
        `${exposures} exposed ${exposures === 1 ? 'side' : 'sides'}, a quarter of that for each: ${say.full(exposedGpm, 'flow')}; together ${say.full(wholeGpm, 'flow')}.`,
        wholeGpm,
        'gpm',
      ),
    );
  }
  steps.push(
    step(
      `${formatNumber(share * 100, 0)} % of it burns: ${say.full(neededGpm, 'flow')}.`,
      neededGpm,
      'gpm',
    ),
  );
  const notices: Notice[] = [];
  if (share > TRUSTED_SHARE) {
    notices.push(
      caution(
        'The rule is made for an interior attack with at most half of the building burning. Past that it is too low or too high by an amount that nobody has published.',
      ),
    );
  }
  if (exposures > 0) {
    const otherGpm = baseGpm * share + exposedGpm;
    notices.push(
      fact(
        share < 1
          ? `A quarter for each exposure is from memory. Some take the share that burns before the exposures are added; that gives ${say.full(otherGpm, 'flow')}.`
          : 'A quarter for each exposure is from memory.',
      ),
    );
  } else if (building.exposures === undefined) {
    notices.push(fact('No exposures were given: none are counted.'));
  }
  return answered(areaInvolvementAbout, { neededGpm, steps, notices });
}
