import {
  askedOf,
  type Choice,
  chooseSupply,
  fieldRanges,
  type Situation,
  type SupplyWay,
} from '@plugside/fireground';
import type { SituationAt } from '@plugside/records';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { withDistrict } from '../input/district-records.ts';
import { buildingNamed } from '../input/find-building.ts';
import { quantityArgument } from '../input/quantity-argument.ts';
import type { Outcome } from '../outcome.ts';
import { sections } from '../output/paragraph.ts';
import { chosenSections } from '../report/choice.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { type AskedOptions, askedWith, withAskedOptions } from './asked-options.ts';
import { withCommonOptions } from './common-options.ts';
import { type DatabaseOptions, databaseNamed, withDatabase } from './database-option.ts';

interface ChooseOptions extends CommonOptions, DatabaseOptions, AskedOptions {
  demand?: number;
  hydrants?: number;
}

const MOST_HYDRANTS = 40;
/** Named where several buildings fit. */

/** `choose`: the ways to supply a building on record, in order. */
export function addChoose(program: Command, answer: Answer): void {
  const command = program
    .command('choose')
    .argument('<building>', 'a building on record: its name, its address or its id')
    .description(
      'The ways to supply a building with what is coming, solved and in order, and why the first is first.',
    )
    .addOption(
      new Option(
        '-d, --demand <flow>',
        "what must reach it (the record's needed fire flow where left out)",
      ).argParser(quantityArgument(fieldRanges.demand)),
    )
    .addOption(
      new Option('--hydrants <count>', 'how many of the nearest usable hydrants to look at')
        .argParser(countArgument)
        .default(10),
    );
  withCommonOptions(withDatabase(withAskedOptions(command)))
    .addHelpText(
      'after',
      examples(
        [
          "plugside choose 'Hotel, 10 Alder Street' --db data/plugside.sqlite",
          'What to do there, with the rigs that come.',
        ],
        [
          "plugside choose 'Hotel, 10 Alder Street' --demand 2500 --db data/plugside.sqlite",
          'The same for a greater fire.',
        ],
        [
          "plugside choose 'Hotel, 10 Alder Street' --spare 20% --line-pressure '170 psi' --db data/plugside.sqlite",
          'With a fifth of the demand to spare, and lines that need 170 psi of the pump at the fire.',
        ],
      ),
    )
    .action((building: string, options: ChooseOptions) =>
      answer('choose', options, (terminal) => askChoose(terminal, building, options)),
    );
}

async function askChoose(
  terminal: Terminal,
  asked: string,
  options: ChooseOptions,
): Promise<Outcome> {
  const target = databaseNamed(options);
  const found = await withDistrict(target, async (store, _, records) =>
    records.situationAt(store, await buildingNamed(store, asked), {
      demandGpm: options.demand,
      hydrants: options.hydrants,
      terrain: await records.storedTerrain(store),
    }),
  );
  if (!found.situation) {
    throw new CommandFailure(found.notices.map(({ text }) => text).join(' '));
  }
  const situation = askedWith(found.situation, options);
  const choice = chooseSupply(situation, { units: terminal.units });
  const enough = choice.ways[0]?.meetsDemand ?? false;
  return {
    exitCode: enough ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () => chooseText(terminal, { ...found, situation }, choice),
    data: () => ({
      answer: {
        question: 'choose',
        building: { id: found.building.id, name: found.building.name },
        invented: situation.invented,
        asked: askedOf(situation),
        ...choice,
        ways: choice.ways.map(withoutPlan),
        recordIds: found.recordIds,
      },
    }),
  };
}

/** Plans are long, and their drawings no part of an answer to programs. */
function withoutPlan({ plan: _, ...way }: SupplyWay) {
  return way;
}

function chooseText(
  terminal: Terminal,
  { building, situation, notices }: SituationAt & { situation: Situation },
  choice: Choice,
) {
  const invented = situation.invented ? ' (made up for practice)' : '';
  return sections(
    `${building.name}${invented}`,
    ...chosenSections(terminal, choice, situation, notices),
  );
}

function countArgument(text: string): number {
  const count = Number(text);
  if (Number.isInteger(count) && count >= 1 && count <= MOST_HYDRANTS) return count;
  throw new CommandFailure(
    `--hydrants is "${text}"; allowed: a whole number from 1 to ${MOST_HYDRANTS}. Give one, or leave it out for 10.`,
  );
}
