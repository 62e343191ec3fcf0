import type { HydrantCard } from '@plugside/paper';
import type { Stored } from '@plugside/records/model';
import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { withDistrict } from '../input/district-records.ts';
import { recordNamed } from '../input/find-record.ts';
import { loadPaper } from '../input/paper.ts';
import type { Outcome } from '../outcome.ts';
import { type DatabaseOptions, databaseNamed, withDatabase } from './database-option.ts';
import {
  checkPrintable,
  type PrintOptions,
  printedWith,
  withPaperOptions,
  writePrinted,
} from './paper-options.ts';

interface CardOptions extends PrintOptions, DatabaseOptions {
  hydrant?: string | string[];
  attack?: string;
  booster?: string;
}

/** `print hydrant-card`: one hydrant. */
export function addPrintHydrantCard(print: Command, answer: Answer): void {
  const command = print
    .command('hydrant-card')
    .description(
      'What a hydrant gives: its flow test and curve, what reaches an engine over each length of hose with and without a boost, its neighbours.',
    )
    .requiredOption('--hydrant <name>', "the hydrant's name or id");
  withEngines(command)
    .addHelpText(
      'after',
      examples(
        ['plugside print hydrant-card --hydrant H-114 --db district.db -o h-114.pdf', 'One card.'],
        [
          'plugside print hydrant-card --hydrant H-114 --booster "Engine 3" --db district.db -o h-114.pdf',
          'With Engine 3 at the hydrant.',
        ],
      ),
    )
    .action((options: CardOptions) => answer('print hydrant-card', options, () => askOne(options)));
}

/** `print hydrant-cards`: a stack of them in one file. */
export function addPrintHydrantCards(print: Command, answer: Answer): void {
  const command = print
    .command('hydrant-cards')
    .description('Cards of many hydrants in one file, by name; all of them where none is named.')
    .option('--hydrant <names...>', 'names or ids');
  withEngines(command)
    .addHelpText(
      'after',
      examples(
        ['plugside print hydrant-cards --db district.db -o cards.pdf', 'Every hydrant.'],
        [
          'plugside print hydrant-cards --hydrant H-101 H-114 --db district.db -o cards.pdf',
          'Two of them.',
        ],
      ),
    )
    .action((options: CardOptions) =>
      answer('print hydrant-cards', options, () => askMany(options)),
    );
}

function withEngines(command: Command): Command {
  return withPaperOptions(
    withDatabase(command)
      .option(
        '--attack <rig>',
        'engine at the fire; the one with the largest supply hose if left out',
      )
      .option('--booster <rig>', 'engine at the hydrant; picked from the others if left out'),
  );
}

async function askOne(options: CardOptions): Promise<Outcome> {
  const { renderHydrantCard } = await loadPaper();
  let card: HydrantCard | undefined;
  await withCards(options, [String(options.hydrant)], async (making, _, department) => {
    for await (const made of making()) card = made;
    await writePrinted(options, () => renderHydrantCard(card!, printedWith(options, department)));
  });
  return {
    exitCode: exitCodes.answered,
    text: () => `Wrote the card of ${card!.name} to ${options.output}.`,
    data: () => ({ answer: { question: 'print hydrant-card', file: options.output, card } }),
  };
}

async function askMany(options: CardOptions): Promise<Outcome> {
  const { renderHydrantCards } = await loadPaper();
  const named = options.hydrant === undefined ? undefined : [options.hydrant].flat();
  let total = 0;
  await withCards(options, named, async (making, count, department) => {
    total = count;
    await writePrinted(options, (signal) =>
      renderHydrantCards(making(), {
        ...printedWith(options, department),
        total: count,
        signal,
        onProgress: (done) => tellProgress(done, count),
      }),
    );
  });
  return {
    exitCode: exitCodes.answered,
    text: () => `Wrote ${total} ${total === 1 ? 'card' : 'cards'} to ${options.output}.`,
    data: () => ({
      answer: { question: 'print hydrant-cards', file: options.output, cards: total },
    }),
  };
}

async function withCards(
  options: CardOptions,
  named: readonly string[] | undefined,
  print: (
    making: () => AsyncGenerator<HydrantCard>,
    count: number,
    department: string,
  ) => Promise<void>,
): Promise<void> {
  const target = databaseNamed(options);
  checkPrintable(options);
  const { hydrantCardsFrom, pickedRig, readDepartment } = await loadPaper();
  await withDistrict(
    target,
    async (store, { invented, name }, { districtStreets, flowTestsAhead, planTests }) => {
      const records = await readDepartment(store);
      const rig = (wanted: string | undefined) =>
        wanted === undefined
          ? undefined
          : pickedRig(records, recordNamed(records.rigs, wanted, 'rig'));
      const everyHydrant: Stored<'hydrants'>[] = [];
      for await (const hydrant of store.all('hydrants')) everyHydrant.push(hydrant);
      if (everyHydrant.length === 0) {
        throw new CommandFailure(
          'There is no hydrant on record. Import a list with: records import.',
        );
      }
      const hydrants = named
        ? named.map((one) => recordNamed(everyHydrant, one, 'hydrant'))
        : [...everyHydrant].sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
      const tests = await planTests(store, everyHydrant);
      const ahead = await flowTestsAhead(store);
      const request = {
        records,
        hydrants,
        around: everyHydrant,
        testOf: ({ id }: { id: string }) => tests.get(id),
        testsAheadOf: ({ id }: { id: string }) => ahead.get(id),
        streets: await districtStreets(store),
        attack: rig(options.attack),
        booster: rig(options.booster),
        today: new Date().toISOString().slice(0, 10),
        invented,
        units: options.units,
      };
      await print(() => hydrantCardsFrom(request), hydrants.length, name);
    },
  );
}

/** On a terminal alone: a line that is written over. */
function tellProgress(done: number, total: number): void {
  if (!process.stderr.isTTY) return;
  process.stderr.write(`\r${done} of ${total} cards${done === total ? '\n' : ''}`);
}
