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
import type { BuildingForDemand } from './building.ts';
import { checkBuilding, missingOf } from './building-fields.ts';
import { FLOOR_FIELDS, floorMissing, floorOf } from './floor.ts';

/** Space [ft³] to a gpm. Source: Determining Required Fire Flow, Carolina Fire Rescue EMS Journal. */
export const FT3_PER_GPM = 100;

const FIELDS = [...FLOOR_FIELDS, 'storeyHeightFt', 'largestSpaceFt3'] as const;

export const volumeRuleAbout: DemandAbout = {
  method: 'volume',
  title: 'Volume of the largest space (Iowa State)',
  inputs: FIELDS,
  source: {
    title: 'Determining Required Fire Flow, Carolina Fire Rescue EMS Journal',
    fromMemory: false,
  },
};

/**
 * Needed flow by the volume rule of Iowa State University.
 *   Q = V/100
 * @param building volume of the largest single space [ft³]; where left out, one floor to its ceiling
 *   is taken as one space
 * @returns flow [gpm], unrounded; no duration
 * Valid: a space that is closed and not vented; the rule counts on steam.
 * Outside: throws QuantityError for an input out of its range.
 * Source: Determining Required Fire Flow, Carolina Fire Rescue EMS Journal
 * (https://www.carolinafirejournal.com/determining-required-fire-flow/); on closed spaces, Redefining
 * Needed Fire Flow for Structure Fire Fighting, Fire Engineering.
 */
export function volumeRule(
  building: BuildingForDemand,
  { units = 'us' }: DemandOptions = {},
): DemandAnswer {
  checkBuilding(building, FIELDS);
  const say = sayIn(units);
  const notices: Notice[] = [
    fact(
      'The rule counts on a closed space: water let in before it is vented turns to steam. Vented, it needs more.',
    ),
  ];
  const steps = [];
  let spaceFt3 = building.largestSpaceFt3;
  if (spaceFt3 === undefined) {
    const floor = floorOf(building, say);
    const heightFt = building.storeyHeightFt;
    if (!floor || heightFt === undefined) {
      return unanswered(volumeRuleAbout, [
        ...floorMissing(building),
        ...missingOf(building, ['storeyHeightFt']),
      ]);
    }
    spaceFt3 = floor.areaFt2 * heightFt;
    steps.push(floor.step);
    steps.push(
      step(
        `Space: ${say.full(floor.areaFt2, 'area')} × ${say.full(heightFt, 'length')} high = ${say.full(spaceFt3, 'space')}.`,
        spaceFt3,
        'ft³',
      ),
    );
    notices.push(
      fact('One whole floor is taken as one space. Walls inside make the largest space smaller.'),
    );
  } else {
    steps.push(step(`Largest single space: ${say.full(spaceFt3, 'space')}.`, spaceFt3, 'ft³'));
  }
  const neededGpm = spaceFt3 / FT3_PER_GPM;
  const perM3 = fromInside(1, 'flow', 'L/min') / fromInside(FT3_PER_GPM, 'space', 'm³');
  const rule =
    units === 'us' ? `÷ ${FT3_PER_GPM}` : `× ${formatNumber(perM3, 2)} L/min for each m³`;
  steps.push(
    step(
      `${say.full(spaceFt3, 'space')} ${rule} = ${say.full(neededGpm, 'flow')}.`,
      neededGpm,
      'gpm',
    ),
  );
  return answered(volumeRuleAbout, { neededGpm, steps, notices });
}
