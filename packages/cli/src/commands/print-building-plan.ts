import { chooseSupply, fieldRanges } from '@plugside/fireground';
import type { BuildingWaterPlan } from '@plugside/paper';
import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { withDistrict } from '../input/district-records.ts';
import { buildingNamed } from '../input/find-building.ts';
import { loadPaper } from '../input/paper.ts';
import { quantityArgument } from '../input/quantity-argument.ts';
import type { Outcome } from '../outcome.ts';
import { type AskedOptions, askedWith, withAskedOptions } from './asked-options.ts';
import { type DatabaseOptions, databaseNamed, withDatabase } from './database-option.ts';
import {
  checkPrintable,
  type PrintOptions,
  printedWith,
  withPaperOptions,
  writePrinted,
} from './paper-options.ts';

interface BuildingOptions extends PrintOptions, DatabaseOptions, AskedOptions {
  building: string;
  demand?: number;
}

/** `print building-plan`: where a building's water comes from. */
export function addPrintBuildingPlan(print: Command, answer: Answer): void {
  const command = print
    .command('building-plan')
    .description(
      "A building's water plan: the supply chosen from everything on record, a map, tank against supply, every pump's setting, who does what, limits, what if, and the next supplies.",
    )
    .requiredOption(
      '--building <name>',
      "the building's name, address or id, or a part of its name",
    )
    .option(
      '--demand <flow>',
      'flow wanted; the needed fire flow on record where left out',
      quantityArgument(fieldRanges.demand),
    );
  withPaperOptions(withDatabase(withAskedOptions(command)))
    .addHelpText(
      'after',
      examples(
        [
          'plugside print building-plan --building "Works, 19 Anvil Way" --db district.db -o works.pdf',
          'For its needed fire flow on record.',
        ],
        [
          'plugside print building-plan --building "Works, 19 Anvil Way" --demand "1500 gpm" --db district.db -o works.pdf',
          'For a flow of your own.',
        ],
      ),
    )
    .action((options: BuildingOptions) =>
      answer('print building-plan', options, () => ask(options)),
    );
}

async function ask(options: BuildingOptions): Promise<Outcome> {
  const target = databaseNamed(options);
  checkPrintable(options);
  const { buildingPlanFor, renderBuildingPlan } = await loadPaper();
  const { units, demand } = options;
  const plan = await withDistrict(target, async (store, { name }, records) => {
    const id = await buildingNamed(store, options.building);
    const found = await records.situationAt(store, id, {
      demandGpm: demand,
      terrain: await records.storedTerrain(store),
    });
    if (!found.situation) {
      const why = found.notices.filter(({ level }) => level === 'error');
      throw new CommandFailure(why.map(({ text }) => text).join(' '));
    }
    const situation = { ...found, situation: askedWith(found.situation, options) };
    const choice = chooseSupply(situation.situation, { units });
    const made: BuildingWaterPlan = buildingPlanFor({
      building: situation.building,
      situation,
      choice,
      streets: await records.everyRecord(store, 'streets'),
      hydrants: await records.everyRecord(store, 'hydrants'),
      waters: await records.everyRecord(store, 'water-sources'),
      units,
      ...(demand !== undefined && { demandMethod: 'as asked for' }),
    });
    await writePrinted(options, () => renderBuildingPlan(made, printedWith(options, name)));
    return made;
  });
  return {
    exitCode: plan.way.meetsDemand ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () => `Wrote the water plan of ${plan.building.name} to ${options.output}.`,
    data: () => {
      const { map: _, ...told } = plan;
      return { answer: { question: 'print building-plan', file: options.output, ...told } };
    },
  };
}
