import {
  formatHoseSize,
  type HoseSize,
  type Plan,
  type SweepRow,
  type SweptValue,
  sweep,
} from '@plugside/fireground';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import {
  quantityOfSwept,
  readSweptName,
  type SweptOptions,
  sweptNames,
  sweptValues,
} from '../input/swept-values.ts';
import type { Outcome } from '../outcome.ts';
import { csv } from '../output/csv.ts';
import { paragraph, sections } from '../output/paragraph.ts';
import { table } from '../output/table.ts';
import { bindingNames } from '../report/binding.ts';
import { aboutPlan, heading } from '../report/heading.ts';
import { closing } from '../report/notices.ts';
import { nameById } from '../report/orders-table.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { planCommand } from './plan-argument.ts';

interface SweepCommandOptions extends CommonOptions, SweptOptions {
  rig?: string;
  csv?: boolean;
}

/** `sweep`: what if. */
export function addSweep(program: Command, answer: Answer): void {
  const command = planCommand(
    program,
    'sweep',
    'One thing varied, the question asked at every value. Length, rise, lines, hose, coefficient and static ask for the greatest flow; demand asks for the settings; pdp asks what happens.',
  )
    .addOption(
      new Option('-v, --vary <what>', `what to vary: ${sweptNames.join(', ')}`)
        .argParser(readSweptName)
        .makeOptionMandatory(),
    )
    .option('--values <list>', 'values with commas between them: "300, 600, 900"')
    .option('--from <value>', 'first value')
    .option('--to <value>', 'last value')
    .option('--step <value>', 'from one value to the next')
    .option('--rig <id>', 'with pdp: whose discharge pressure (the first pump where left out)')
    .option('--csv', 'comma-separated rows for a spreadsheet');
  withCommonOptions(command)
    .addHelpText(
      'after',
      examples(
        [
          'plugside sweep examples/cold-store.yaml --vary "lay length" --from 300 --to 1500 --step 300',
          'The greatest flow for each length of lay.',
        ],
        [
          'plugside sweep examples/cold-store.yaml --vary pdp --rig E7 --values "100, 125, 150, 175"',
          'What Engine 7 brings at each discharge pressure.',
        ],
      ),
    )
    .action((file: string, options: SweepCommandOptions) =>
      answer('sweep', options, (terminal) => askSweep(terminal, file, options)),
    );
}

async function askSweep(
  terminal: Terminal,
  file: string,
  options: SweepCommandOptions,
): Promise<Outcome> {
  if (options.csv && options.json) throw new CommandFailure('Give --csv or --json, not both.');
  const { plan } = await readPlanFile(file);
  const { vary, rig } = options;
  if (rig !== undefined && vary !== 'pdp') {
    throw new CommandFailure(`--rig goes with --vary pdp, not with ${vary}.`);
  }
  const values = sweptValues(options, plan);
  const rows = sweep(plan, { vary, values, ...(rig && { rig }) }, { units: terminal.units });
  const any = rows.some(({ possible }) => possible);
  return {
    exitCode: any ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () =>
      options.csv
        ? csv(...cellsOf(terminal, plan, vary, rows, true))
        : sweepText(terminal, plan, vary, rows),
    data: () => ({ plan: aboutPlan(plan), answer: { question: 'sweep', vary, rows } }),
  };
}

function sweepText(terminal: Terminal, plan: Plan, vary: SweptValue, rows: readonly SweepRow[]) {
  const { ink, width } = terminal;
  const [heads, cells] = cellsOf(terminal, plan, vary, rows, false);
  const texts = [vary === 'hose' ? 0 : -1, heads.length - 2, heads.length - 1];
  const columns = heads.map((head, at) => ({ head, number: !texts.includes(at) }));
  return sections(
    heading(plan),
    ink.answer(paragraph(sweepSentence(terminal, vary, rows), width)),
    table(columns, cells),
    closing(terminal),
  );
}

function sweepSentence(terminal: Terminal, vary: SweptValue, rows: readonly SweepRow[]): string {
  const { figures } = terminal;
  const flows = rows.map(({ flowGpm }) => flowGpm);
  const [least, greatest] = [Math.min(...flows), Math.max(...flows)];
  const range =
    greatest - least < 0.5
      ? `stays at ${figures.full(least, 'flow')}`
      : `runs from ${figures.full(least, 'flow')} to ${figures.full(greatest, 'flow')}`;
  const within = rows.filter(({ possible }) => possible).length;
  const asked =
    vary === 'demand'
      ? `${within} of ${rows.length} demands can be met`
      : vary === 'pdp'
        ? `${within} of ${rows.length} settings keep every hard limit`
        : `the greatest flow within every limit ${range}`;
  return vary === 'demand' || vary === 'pdp'
    ? `Over these values of ${vary}, ${asked}; flow at the scene ${range}.`
    : `Over these values of ${vary}, ${asked}.`;
}

/** Heads and rows, as shown to people or with plain numbers for a spreadsheet. */
function cellsOf(
  terminal: Terminal,
  plan: Plan,
  vary: SweptValue,
  rows: readonly SweepRow[],
  plain: boolean,
): [string[], string[][]] {
  const { figures } = terminal;
  const rigs = plan.rigs.filter(({ id }) => id !== plan.scene).map(({ id }) => id);
  const bare = plain
    ? (...given: Parameters<typeof figures.bare>) => plainNumber(figures.bare(...given))
    : figures.bare;
  const quantity = quantityOfSwept(vary);
  const label = vary[0]?.toUpperCase() + vary.slice(1);
  const shown = (value: number | HoseSize) => {
    if (typeof value === 'string') return formatHoseSize(value, terminal.units);
    return quantity ? bare(value, quantity) : String(Number(value.toPrecision(6)));
  };
  const hasMain = rows.some(({ mainPsi }) => mainPsi !== undefined);
  const heads = [
    quantity ? figures.head(label, quantity) : label,
    figures.head('Flow', 'flow'),
    figures.head('Intake at the scene', 'pressure'),
    ...rigs.map((id) => figures.head(`${nameById(plan, id)} at`, 'pressure')),
    ...(hasMain ? [figures.head('Main', 'pressure')] : []),
    'Within limits',
    'Stopped by',
  ];
  const cells = rows.map((row) => [
    shown(row.value),
    bare(row.flowGpm, 'flow'),
    bare(row.sceneIntakePsi, 'pressure'),
    ...rigs.map((id) => {
      const psi = row.pdpPsi[id];
      return psi === undefined ? '' : bare(psi, 'pressure');
    }),
    ...(hasMain ? [row.mainPsi === undefined ? '' : bare(row.mainPsi, 'pressure')] : []),
    row.possible ? 'yes' : 'no',
    bindingNames(row.binding),
  ]);
  return [heads, cells];
}

/** For spreadsheets: no grouped thousands, a hyphen for minus. */
export function plainNumber(shown: string): string {
  return shown.replaceAll(',', '').replace('−', '-');
}
