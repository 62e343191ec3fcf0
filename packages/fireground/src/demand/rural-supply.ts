import type { Notice } from '../questions/answers.ts';
import { formatNumber } from '../units/format-quantity.ts';
import { fromInside } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import {
  answered,
  type DemandAbout,
  type DemandAnswer,
  type DemandOptions,
  fact,
  step,
  unanswered,
} from './answer.ts';
import type { BuildingField, BuildingForDemand, ConstructionType } from './building.ts';
import { checkBuilding, hasAll, missingOf } from './building-fields.ts';
import { FLOOR_FIELDS, floorMissing, floorOf } from './floor.ts';

const FIELDS = [
  ...FLOOR_FIELDS,
  'storeys',
  'storeyHeightFt',
  'ridgeRiseFt',
  'occupancyHazard',
  'constructionNumber',
  'constructionType',
  'exposures',
] as const;

export const ruralSupplyAbout: DemandAbout = {
  method: 'rural supply',
  title: 'Rural supply (NFPA 1142)',
  inputs: FIELDS,
  source: {
    title: 'NFPA 1142 formula steps',
    fromMemory: true,
  },
};

/** Construction number by type [-]. Sources: NFPA 1142-1999 text (I 0.5), NFPA 1142 review slides (V 1.5), formula steps; IV from memory. */
export const CONSTRUCTION_NUMBERS = { I: 0.5, II: 0.75, III: 1, IV: 0.75, V: 1.5 } as const;

/** Factor with exposures, and the least supply [gal] without and with them. Source: NFPA 1142 review slides; NFPA 1142-2001, 7.3.2. */
export const RURAL_EXPOSURE = { factor: 1.5, leastGal: 2000, leastExposedGal: 3000 } as const;

/** From so much water in all [gal], so much to deliver [gpm]. From memory of NFPA 1142. */
export const DELIVERY_RATES: readonly (readonly [fromGal: number, rateGpm: number])[] = [
  [20_000, 1000],
  [10_000, 750],
  [2500, 500],
  [0, 250],
];

/**
 * Rate at which a supply must reach the fire.
 * @param totalGal minimum water supply [gal]
 * @returns delivery rate [gpm]: 250 below 2,500 gal, 500 below 10,000, 750 below 20,000, else 1,000
 * Source: NFPA 1142, from memory.
 */
export function deliveryRateGpm(totalGal: number): number {
  return DELIVERY_RATES.find(([fromGal]) => totalGal >= fromGal)?.[1] ?? 250;
}

const romanOf = (type: ConstructionType) => type.split('-')[0] as keyof typeof CONSTRUCTION_NUMBERS;

/**
 * Minimum water supply where there are no hydrants, and the rate to deliver it at.
 *   gal = V/OH·CC, times 1.5 with exposures; V = floor·(storeys·height + half of the ridge's rise)
 * @param building floor [ft²], storeys, storey height [ft], ridge [ft], hazard number 3 to 7,
 *   construction number or type, exposed sides
 * @returns delivery rate [gpm], water in all [gal], how long that lasts [min]
 * Valid: buildings without sprinklers; 2,000 gal at least, 3,000 with exposures.
 * Outside: throws QuantityError for an input out of its range.
 * Source: NFPA 1142 formula steps (https://thecodecoach.blogspot.com/2017/08/big-water-little-water-how-to-determine.html);
 * NFPA 1142 review slides (https://studylib.net/doc/9501653/nfpa-1142-review); the delivery rates and
 * the number for type IV from memory.
 */
export function ruralSupply(
  building: BuildingForDemand,
  { units = 'us' }: DemandOptions = {},
): DemandAnswer {
  checkBuilding(building, FIELDS);
  const say = sayIn(units);
  const floor = floorOf(building, say);
  const { constructionType, exposures = 0, ridgeRiseFt = 0 } = building;
  const number =
    building.constructionNumber ??
    (constructionType && CONSTRUCTION_NUMBERS[romanOf(constructionType)]);
  const needed = ['storeys', 'storeyHeightFt', 'occupancyHazard'] as const;
  if (!floor || !hasAll(building, needed) || number === undefined) {
    const missing: BuildingField[] = [...floorMissing(building), ...missingOf(building, needed)];
    if (number === undefined) missing.push('constructionType');
    return unanswered(ruralSupplyAbout, missing);
  }
  const { storeys, storeyHeightFt, occupancyHazard } = building;
  const heightFt = storeys * storeyHeightFt + ridgeRiseFt / 2;
  const volumeFt3 = floor.areaFt2 * heightFt;
  const plainGal = (volumeFt3 / occupancyHazard) * number;
  const exposed = exposures > 0;
  const askedGal = plainGal * (exposed ? RURAL_EXPOSURE.factor : 1);
  const leastGal = exposed ? RURAL_EXPOSURE.leastExposedGal : RURAL_EXPOSURE.leastGal;
  const totalGal = Math.max(leastGal, askedGal);
  const neededGpm = deliveryRateGpm(totalGal);
  const inLitres = fromInside(1, 'volume', 'L') / fromInside(1, 'space', 'm³');
  const asWater = units === 'us' ? '' : ` × ${formatNumber(inLitres, 1)} L for each m³`;
  const steps = [
    floor.step,
    step(
      `Height: ${storeys} × ${say.full(storeyHeightFt, 'length')}${ridgeRiseFt > 0 ? ` and half of the ridge's ${say.full(ridgeRiseFt, 'length')}` : ''} = ${say.full(heightFt, 'length')}.`,
      heightFt,
      'ft',
    ),
    step(`Volume: ${say.full(volumeFt3, 'space')}.`, volumeFt3, 'ft³'),
    step(
      `Divided by hazard number ${occupancyHazard}, times construction number ${number}${asWater}: ${say.full(plainGal, 'volume')}.`,
      plainGal,
      'gal',
    ),
  ];
  if (exposed) {
    steps.push(
      step(
        `With exposures, × ${RURAL_EXPOSURE.factor}: ${say.full(askedGal, 'volume')}.`,
        askedGal,
        'gal',
      ),
    );
  }
  if (totalGal > askedGal) {
    steps.push(step(`At least ${say.full(leastGal, 'volume')} counts.`, totalGal, 'gal'));
  }
  steps.push(
    step(
      `That much water is delivered at ${say.full(neededGpm, 'flow')}, and lasts ${formatNumber(totalGal / neededGpm, 0)} minutes.`,
      neededGpm,
      'gpm',
    ),
  );
  return answered(ruralSupplyAbout, {
    neededGpm,
    totalGal,
    durationMin: totalGal / neededGpm,
    steps,
    notices: noticesFor(building, number),
  });
}

function noticesFor(building: BuildingForDemand, number: number): Notice[] {
  const notices: Notice[] = [
    fact('The delivery rates are from memory. Check them in the standard.'),
  ];
  if (building.exposures === undefined) {
    notices.push(fact('No exposures were given: none are counted.'));
  }
  if (building.dwelling && number > 1) {
    notices.push(
      fact(
        'Older text, known from memory, holds the construction number of dwellings to 1.0; review slides of the standard use 1.5 for wood frame.',
      ),
    );
  }
  if (building.sprinklers !== undefined && building.sprinklers !== 'none') {
    notices.push(
      fact(
        'The authority may waive this supply where a sprinkler system fully meets its standard (NFPA 1142-2001, 7.4.1).',
      ),
    );
  }
  return notices;
}
