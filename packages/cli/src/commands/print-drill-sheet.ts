import type { Benchmark } from '@plugside/paper';
import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { loadPaper } from '../input/paper.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import type { Outcome } from '../outcome.ts';
import {
  checkPrintable,
  type PrintOptions,
  printedWith,
  withPaperOptions,
  writePrinted,
} from './paper-options.ts';

interface DrillOptions extends PrintOptions {
  benchmark?: string[];
}

const MOST_TEXT = 120;

/** `print drill-sheet`: a plan as a drill. */
export function addPrintDrillSheet(print: Command, answer: Answer): void {
  const command = print
    .command('drill-sheet')
    .description(
      "A plan as a drill: the evolution drawn with its pressures, each crew's steps in order with what can go wrong, benchmarks, what the evaluator looks for.",
    )
    .argument('<PLAN>', 'plan file, or - for standard input')
    .option(
      '--benchmark <text=target...>',
      'the department’s own, for instance "Water at the intake=4 min"; usual ones with blanks if left out',
    );
  withPaperOptions(command)
    .addHelpText(
      'after',
      examples(
        ['plugside print drill-sheet examples/cold-store.yaml -o drill.pdf', 'With blanks.'],
        [
          'plugside print drill-sheet examples/hill-relay.yaml -o relay.pdf --benchmark "Water at the top=6 min"',
          'With a target of our own.',
        ],
      ),
    )
    .action((file: string, options: DrillOptions) =>
      answer('print drill-sheet', options, () => ask(file, options)),
    );
}

async function ask(file: string, options: DrillOptions): Promise<Outcome> {
  checkPrintable(options);
  const benchmarks = options.benchmark?.map(benchmarkIn);
  const { plan } = await readPlanFile(file);
  const { drillSheetFor, renderDrillSheet } = await loadPaper();
  const drill = drillSheetFor({ plan, units: options.units, ...(benchmarks && { benchmarks }) });
  await writePrinted(options, () => renderDrillSheet(drill, printedWith(options)));
  return {
    exitCode: drill.shortGpm > 0.5 ? exitCodes.notWithinLimits : exitCodes.answered,
    text: () => `Wrote the drill sheet of ${drill.title} to ${options.output}.`,
    data: () => {
      const { orders, roles, shortGpm } = drill;
      const answer = { question: 'print drill-sheet', file: options.output };
      return { answer: { ...answer, orders, roles, shortGpm, benchmarks: drill.benchmarks } };
    },
  };
}

function benchmarkIn(given: string): Benchmark {
  const [text = '', target] = given.split('=').map((part) => part.trim());
  if (text === '' || text.length > MOST_TEXT || (target ?? '').length > 20) {
    throw new CommandFailure(
      `--benchmark is "${given.slice(0, 80)}"; allowed: text of 1 to ${MOST_TEXT} letters, then = and a target of 20 at most. For instance "Water at the intake=4 min".`,
    );
  }
  return { text, ...(target && { target }) };
}
