import { sayIn } from '../words/say.ts';
import {
  answered,
  type DemandAbout,
  type DemandAnswer,
  type DemandOptions,
  fact,
  step,
  unanswered,
  without,
} from './answer.ts';
import type { BuildingForDemand } from './building.ts';
import { checkBuilding } from './building-fields.ts';

const FIELDS = ['standpipes', 'sprinklers'] as const;

export const standpipeDemandAbout: DemandAbout = {
  method: 'standpipe',
  title: 'Standpipe (NFPA 14)',
  inputs: FIELDS,
  source: { title: 'What is the pressure required for a standpipe', fromMemory: true },
};

/** First riser, each further one, and the most without and with sprinklers throughout [gpm]. 1,250 from memory of NFPA 14; the others as standpipeDemandAbout. */
export const STANDPIPE_GPM = {
  first: 500,
  further: 250,
  most: 1250,
  mostSprinklered: 1000,
} as const;

/**
 * Flow that standpipes are designed for.
 *   Q = 500 + 250·(risers − 1), at most 1,250; 1,000 in a building sprinklered throughout
 * @param building standpipes (risers) in use at once, 0 where it has none; sprinklers
 * @returns flow [gpm]; no duration
 * Valid: class I and III systems on floors of usual size; a very large floor asks for more.
 * Outside: throws QuantityError for an input out of its range.
 * Source: What is the pressure required for a standpipe
 * (https://zaro.info/fire-protection-systems/what-is-the-pressure-required-for-a-standpipe); 1,250 from
 * memory of NFPA 14.
 */
export function standpipeDemand(
  building: BuildingForDemand,
  { units = 'us' }: DemandOptions = {},
): DemandAnswer {
  checkBuilding(building, FIELDS);
  const { standpipes, sprinklers } = building;
  if (standpipes === undefined) return unanswered(standpipeDemandAbout, ['standpipes']);
  if (standpipes === 0) {
    return without(standpipeDemandAbout, { fields: [], text: 'The building has no standpipes.' });
  }
  const say = sayIn(units);
  const { first, further, most, mostSprinklered } = STANDPIPE_GPM;
  const throughout = sprinklers === 'NFPA 13' || sprinklers === 'NFPA 13R';
  const mostGpm = throughout ? mostSprinklered : most;
  const askedGpm = first + further * (standpipes - 1);
  const neededGpm = Math.min(mostGpm, askedGpm);
  const steps = [
    step(
      standpipes === 1
        ? `One standpipe: ${say.full(first, 'flow')}.`
        : `The first standpipe ${say.full(first, 'flow')}, ${standpipes - 1} more at ${say.full(further, 'flow')}: ${say.full(askedGpm, 'flow')}.`,
      askedGpm,
      'gpm',
    ),
  ];
  if (askedGpm > mostGpm) {
    steps.push(
      step(
        `At most ${say.full(mostGpm, 'flow')}${throughout ? ' in a sprinklered building' : ''}.`,
        neededGpm,
        'gpm',
      ),
    );
  }
  return answered(standpipeDemandAbout, {
    neededGpm,
    steps,
    notices: [
      fact(
        `The most without sprinklers (${say.full(most, 'flow')}) is from memory of the standard. In a building with both, the greater of sprinklers and standpipes counts, not their sum.`,
      ),
    ],
  });
}
