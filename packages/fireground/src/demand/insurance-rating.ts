import { QuantityError } from '@plugside/hydraulics';
import type { Notice } from '../questions/answers.ts';
import { formatNumber } from '../units/format-quantity.ts';
import { fromInside } from '../units/quantities.ts';
import { type Say, sayIn } from '../words/say.ts';
import {
  answered,
  type DemandAbout,
  type DemandAnswer,
  type DemandOptions,
  type DemandStep,
  fact,
  step,
  unanswered,
} from './answer.ts';
import type { BuildingForDemand, ConstructionClass } from './building.ts';
import { checkBuilding, hasAll, missingOf } from './building-fields.ts';
import { FLOOR_FIELDS, floorMissing, floorOf } from './floor.ts';
import {
  CONSTRUCTION_FACTOR,
  CONTENTS_FACTOR,
  DWELLING_TABLES,
  FIRE_RESISTIVE_OTHER_FLOORS,
  GREATEST_C_GPM,
  GREATEST_EXPOSURE_SUM,
  NEEDED_RANGE_GPM,
  OTHER_FLOORS_SHARE,
} from './insurance-factors.ts';

const FIELDS = [
  ...FLOOR_FIELDS,
  'storeys',
  'constructionClass',
  'contents',
  'exposureFactor',
  'communicationFactor',
  'dwelling',
  'nearestBuildingFt',
  'dwellingTable',
] as const;

export const insuranceRatingAbout: DemandAbout = {
  method: 'insurance rating',
  title: 'Insurance rating (ISO needed fire flow)',
  inputs: FIELDS,
  source: {
    title: 'Guide for Determination of Needed Fire Flow, ISO',
    edition: '06-2014',
    fromMemory: true,
  },
};

/**
 * Needed fire flow of the insurance rating.
 *   C = 18·F·√A, A = largest floor + half of the others; Q = C·O·(1 + X + P)
 * C goes to the nearest 250 gpm, 8,000 at most (6,000 where it does not burn or has one storey);
 * Q to the nearest 250 below 2,500 and the nearest 500 above, 500 to 12,000. A dwelling of one or
 * two families and at most two storeys goes by the distance to its neighbour instead.
 * @param building floor [ft²], storeys, class of construction, how its contents burn; for a dwelling
 *   the distance to the nearest building [ft]
 * @returns flow [gpm], duration [min] to 3,500 gpm, water in all [gal]
 * Valid: buildings without a rated sprinkler system.
 * Outside: throws QuantityError for an input out of its range.
 * Source: form and rounding, San Marcos TX fire code appendix, ISO method summary, and USFA Coffee
 * Break Training FP-2013-45; factors, limits and duration from memory of the guide.
 */
export function insuranceRating(
  building: BuildingForDemand,
  { units = 'us' }: DemandOptions = {},
): DemandAnswer {
  checkBuilding(building, FIELDS);
  const say = sayIn(units);
  if (building.dwelling && (building.storeys ?? 1) <= 2) return dwelling(building, say);
  const floor = floorOf(building, say);
  const needed = ['storeys', 'constructionClass', 'contents'] as const;
  if (!floor || !hasAll(building, needed)) {
    return unanswered(insuranceRatingAbout, [
      ...floorMissing(building),
      ...missingOf(building, needed),
    ]);
  }
  const { storeys, constructionClass, contents } = building;
  const sum = exposureSum(building);
  const others = otherFloors(storeys, constructionClass);
  const areaFt2 = floor.areaFt2 * (1 + others * OTHER_FLOORS_SHARE);
  const F = CONSTRUCTION_FACTOR[constructionClass];
  const O = CONTENTS_FACTOR[contents];
  const rawC = 18 * F * Math.sqrt(areaFt2);
  const burns = constructionClass === 'frame' || constructionClass === 'joisted masonry';
  const mostC = burns && storeys > 1 ? GREATEST_C_GPM.burns : GREATEST_C_GPM.other;
  const C = Math.min(mostC, Math.max(NEEDED_RANGE_GPM[0], nearest(rawC, 250)));
  const rawGpm = C * O * (1 + sum);
  const neededGpm = Math.min(
    NEEDED_RANGE_GPM[1],
    Math.max(NEEDED_RANGE_GPM[0], nearest(rawGpm, rawGpm < 2500 ? 250 : 500)),
  );
  const eighteen =
    units === 'us'
      ? '18'
      : formatNumber(fromInside(18, 'flow', 'L/min') / Math.sqrt(fromInside(1, 'area', 'm²')), 1);
  const steps: DemandStep[] = [
    floor.step,
    step(
      others === 0
        ? `Effective area: the one floor, ${say.full(areaFt2, 'area')}.`
        : `Effective area: the largest floor and half of ${others} ${others === 1 ? 'other' : 'others'}, ${say.full(areaFt2, 'area')}.`,
      areaFt2,
      'ft²',
    ),
    step(
      `Construction, ${constructionClass}: ${eighteen} × ${F} × √area = ${say.full(rawC, 'flow')}, taken as ${say.full(C, 'flow')}.`,
      C,
      'gpm',
    ),
    step(
      `Contents ${contents}: × ${O}; exposure and communication: × ${formatNumber(1 + sum, 2)}; ${say.full(rawGpm, 'flow')}.`,
      rawGpm,
      'gpm',
    ),
    step(`Rounded and held to its range: ${say.full(neededGpm, 'flow')}.`, neededGpm, 'gpm'),
  ];
  const notices: Notice[] = [
    fact(
      'The factors for construction and contents, the limits and the duration are from memory. Check them in the guide before you lean on them.',
    ),
  ];
  if (building.exposureFactor === undefined && building.communicationFactor === undefined) {
    notices.push(
      fact('No exposure or communication factor was given: neither is counted, which may be low.'),
    );
  }
  if (building.sprinklers !== undefined && building.sprinklers !== 'none') {
    notices.push(fact('A rated sprinkler system is judged by its own demand instead.'));
  }
  return finish(neededGpm, steps, notices, say);
}

function exposureSum({ exposureFactor = 0, communicationFactor = 0 }: BuildingForDemand): number {
  const sum = exposureFactor + communicationFactor;
  if (sum > GREATEST_EXPOSURE_SUM) {
    throw new QuantityError({
      field: 'communicationFactor',
      value: communicationFactor,
      allowed: `at most ${GREATEST_EXPOSURE_SUM} together with the exposure factor`,
      remedy: 'Check both against the side that asks for most.',
    });
  }
  return sum;
}

function otherFloors(storeys: number, constructionClass: ConstructionClass): number {
  const others = storeys - 1;
  const resists =
    constructionClass === 'fire-resistive' || constructionClass === 'modified fire-resistive';
  return resists ? Math.min(others, FIRE_RESISTIVE_OTHER_FLOORS) : others;
}

/** To the nearest step, halves up. */
const nearest = (gpm: number, every: number): number => Math.round(gpm / every) * every;

function dwelling(building: BuildingForDemand, say: Say): DemandAnswer {
  const nearestFt = building.nearestBuildingFt;
  if (nearestFt === undefined) return unanswered(insuranceRatingAbout, ['nearestBuildingFt']);
  const table = building.dwellingTable ?? 'older';
  const neededGpm = DWELLING_TABLES[table].find(([overFt]) => nearestFt > overFt)![1];
  return finish(
    neededGpm,
    [
      step(
        `One- or two-family dwelling, nearest building ${say.full(nearestFt, 'length')} away: ${say.full(neededGpm, 'flow')} by the ${table} table of spacing.`,
        neededGpm,
        'gpm',
      ),
    ],
    [
      fact(
        table === 'older'
          ? 'A newer table, known from memory, asks for the same or less at each distance.'
          : 'The newer table is from memory. The older, which is printed, asks for the same or more at each distance.',
      ),
    ],
    say,
  );
}

/** Duration [min] and water in all [gal], from memory: 2 h to 2,500 gpm, 3 h to 3,500; past that the guide is silent. */
function finish(neededGpm: number, steps: DemandStep[], notices: Notice[], say: Say): DemandAnswer {
  if (neededGpm > 3500) {
    return answered(insuranceRatingAbout, { neededGpm, steps, notices });
  }
  const durationMin = neededGpm <= 2500 ? 120 : 180;
  const totalGal = neededGpm * durationMin;
  const all = step(
    `For ${durationMin / 60} hours: ${say.full(totalGal, 'volume')}.`,
    totalGal,
    'gal',
  );
  return answered(insuranceRatingAbout, {
    neededGpm,
    durationMin,
    totalGal,
    steps: [...steps, all],
    notices,
  });
}
