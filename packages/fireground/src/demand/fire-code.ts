import type { Notice } from '../questions/answers.ts';
import { formatNumber } from '../units/format-quantity.ts';
import { type Say, sayIn } from '../words/say.ts';
import {
  answered,
  caution,
  type DemandAbout,
  type DemandAnswer,
  type DemandOptions,
  type DemandStep,
  fact,
  step,
  unanswered,
  without,
} from './answer.ts';
import type { BuildingForDemand } from './building.ts';
import { checkBuilding, missingOf } from './building-fields.ts';
import { FLOOR_FIELDS, floorMissing, floorOf } from './floor.ts';

const FIELDS = [
  ...FLOOR_FIELDS,
  'storeys',
  'dwelling',
  'constructionType',
  'sprinklers',
  'codeTableGpm',
  'codeTableHours',
  'codeSprinkleredLeastGpm',
] as const;

export const fireCodeAbout: DemandAbout = {
  method: 'fire code',
  title: 'Fire code (IFC appendix B)',
  inputs: FIELDS,
  source: {
    title:
      'Placentia Fire Code, tables B105.1(1) and B105.2 (ecode360), and Appendix B vs C fire flow',
    edition: '2025',
    fromMemory: false,
  },
};

/** Dwellings up to this area [ft²] have a flow of their own [gpm] for so long [min]. Source: Placentia Fire Code, table B105.1(1). */
export const SMALL_DWELLING = { upToFt2: 3600, neededGpm: 1000, durationMin: 60 } as const;

/**
 * The one row of the code's table by construction and area that print confirms: types I-A and I-B
 * to this area [ft²]. Source: Fire flow calculations under the CFC.
 */
export const CONFIRMED_ROW = { upToFt2: 22_700, neededGpm: 1500, durationMin: 120 } as const;

/** Least flow anywhere in the table [gpm]. Source: Appendix B vs C fire flow; North Metro Fire, on fire flow. */
export const TABLE_LEAST_GPM = 1500;

/**
 * Share of the table's flow that stays with sprinklers [-], and the least that then stands [gpm].
 * Source: Appendix B vs C fire flow (up to 75 % off with NFPA 13 but 1,500 at least; half with 13R;
 * half with 13D in dwellings, 500 to 1,000 at least, of which the greater is taken); IFC B105 forum
 * thread (half for dwellings to 3,600 ft²: 500).
 */
export const SPRINKLERED = {
  'NFPA 13': { share: 0.25, leastGpm: 1500 },
  'NFPA 13R': { share: 0.5, leastGpm: 1500 },
  dwelling: { share: 0.5, leastGpm: 1000 },
  smallDwelling: { share: 0.5, leastGpm: 500 },
} as const;

/**
 * Fire flow by the fire code: dwellings to 3,600 ft² 1,000 gpm; all else by the code's table of
 * construction and area, of which only types I-A and I-B to 22,700 ft² could be confirmed in
 * print. For any other building the department reads its own adopted table and gives what it says.
 * Sprinklers take their share off.
 * @param building floor [ft²], storeys, dwelling or not, type, sprinklers, or `codeTableGpm` [gpm] and
 *   `codeTableHours` [h]
 * @returns flow [gpm], duration [min], water in all [gal]
 * Valid: as the adopted code; local amendments go before it.
 * Outside: throws QuantityError for an input out of its range.
 * Source: Placentia Fire Code (https://ecode360.com/50149163); Appendix B vs C fire flow
 * (https://calichi.com/blog/appendix-b-vs-c-fire-flow/), which calls the dwellings' rule appendix C;
 * Fire flow calculations under the CFC (https://calichi.com/blog/fire-flow-calculations-cfc/); IFC
 * B105 forum thread (http://www.eng-tips.com/viewthread.cfm?qid=336083).
 */
export function fireCodeFlow(
  building: BuildingForDemand,
  { units = 'us' }: DemandOptions = {},
): DemandAnswer {
  checkBuilding(building, FIELDS);
  const say = sayIn(units);
  const floor = floorOf(building, say);
  const { storeys } = building;
  if (!floor || storeys === undefined) {
    return unanswered(fireCodeAbout, [
      ...floorMissing(building),
      ...missingOf(building, ['storeys']),
    ]);
  }
  const areaFt2 = floor.areaFt2 * storeys;
  const steps: DemandStep[] = [
    floor.step,
    step(`All floors together: ${say.full(areaFt2, 'area')}.`, areaFt2, 'ft²'),
  ];
  const table = tableFlow(building, areaFt2, say);
  if ('unanswered' in table) return table;
  steps.push(step(table.text, table.gpm, 'gpm'));
  const reduction = reductionFor(building, table.small);
  const notices: Notice[] = [
    fact('Local amendments go before the code as printed here: ask your fire marshal.'),
  ];
  let neededGpm = table.gpm;
  let { durationMin } = table;
  if (reduction) {
    const leastGpm = Math.min(table.gpm, building.codeSprinkleredLeastGpm ?? reduction.leastGpm);
    neededGpm = Math.max(leastGpm, table.gpm * reduction.share);
    steps.push(
      step(
        `Sprinklered (${building.sprinklers}): ${formatNumber(reduction.share * 100, 0)} % of it, ${say.full(leastGpm, 'flow')} at least: ${say.full(neededGpm, 'flow')}.`,
        neededGpm,
        'gpm',
      ),
    );
    notices.push(
      fact(
        'What sprinklers take off is as the authority approves. The least that then stands differs by edition and town; give yours if it is another.',
      ),
    );
    if (table.small) {
      durationMin = 30;
      notices.push(fact('Half an hour for a sprinklered dwelling is from memory.'));
    }
  } else if (building.sprinklers === undefined) {
    notices.push(fact('No sprinklers were given: none are counted.'));
  }
  if (durationMin === undefined) {
    notices.push(caution('No duration was given with the flow from your table.'));
    return answered(fireCodeAbout, { neededGpm, steps, notices });
  }
  const totalGal = neededGpm * durationMin;
  steps.push(
    step(
      `For ${formatNumber(durationMin, 0)} minutes: ${say.full(totalGal, 'volume')}.`,
      totalGal,
      'gal',
    ),
  );
  return answered(fireCodeAbout, { neededGpm, durationMin, totalGal, steps, notices });
}

type TableFlow = { gpm: number; durationMin: number | undefined; text: string; small: boolean };

function tableFlow(
  building: BuildingForDemand,
  areaFt2: number,
  say: Say,
): TableFlow | (DemandAnswer & { unanswered: object }) {
  const { dwelling, constructionType, codeTableGpm, codeTableHours } = building;
  if (dwelling && areaFt2 <= SMALL_DWELLING.upToFt2) {
    const { neededGpm, durationMin } = SMALL_DWELLING;
    return {
      gpm: neededGpm,
      durationMin,
      small: true,
      text: `One- or two-family dwelling of at most ${say.full(SMALL_DWELLING.upToFt2, 'area')}: ${say.full(neededGpm, 'flow')}.`,
    };
  }
  if (codeTableGpm !== undefined) {
    return {
      gpm: codeTableGpm,
      durationMin: codeTableHours === undefined ? undefined : codeTableHours * 60,
      small: false,
      text: `From your own copy of the table: ${say.full(codeTableGpm, 'flow')}.`,
    };
  }
  const resists = constructionType === 'I-A' || constructionType === 'I-B';
  if (resists && areaFt2 <= CONFIRMED_ROW.upToFt2) {
    const { neededGpm, durationMin } = CONFIRMED_ROW;
    return {
      gpm: neededGpm,
      durationMin,
      small: false,
      text: `Type ${constructionType}, at most ${say.full(CONFIRMED_ROW.upToFt2, 'area')}: ${say.full(neededGpm, 'flow')}.`,
    };
  }
  const what = constructionType ? ` of type ${constructionType}` : '';
  return without(fireCodeAbout, {
    fields: ['codeTableGpm', 'codeTableHours'],
    text: `The code's table could not be confirmed in print for this building. Read your adopted code, table B105.1(2), for ${say.full(areaFt2, 'area')}${what}, and give its flow (${say.full(TABLE_LEAST_GPM, 'flow')} or more) and hours.`,
  }) as DemandAnswer & { unanswered: object };
}

function reductionFor({ dwelling, sprinklers }: BuildingForDemand, small: boolean) {
  if (sprinklers === undefined || sprinklers === 'none') return null;
  if (small) return SPRINKLERED.smallDwelling;
  if (dwelling) return SPRINKLERED.dwelling;
  return sprinklers === 'NFPA 13D' ? null : SPRINKLERED[sprinklers];
}
