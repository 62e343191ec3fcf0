import {
  coefficientBand,
  coefficientFor,
  fiveInchSpread,
  type Improvement,
  improvementSentence,
  improvements,
  type MostWater,
  mainLay,
  mostWater,
  type Plan,
  withMainRange,
} from '@plugside/fireground';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import type { Outcome } from '../outcome.ts';
import { withWrittenPlan } from '../output/envelope.ts';
import { paragraph, sections } from '../output/paragraph.ts';
import { table } from '../output/table.ts';
import { bindingNames, stoppedBy } from '../report/binding.ts';
import { hydrantsTable } from '../report/ends-tables.ts';
import { aboutPlan, heading } from '../report/heading.ts';
import { limitsTable } from '../report/limits-table.ts';
import { linesTable } from '../report/lines-table.ts';
import { closing } from '../report/notices.ts';
import { gateTable, nameById, ordersTable } from '../report/orders-table.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { planCommand } from './plan-argument.ts';
import {
  checkSettingsFile,
  type SettingsFileOptions,
  withSettingsFile,
  writeSettings,
} from './write-option.ts';

interface MostOptions extends CommonOptions, SettingsFileOptions {
  at: 'intake' | 'nozzles';
}

/** `most`: what do I get. */
export function addMost(program: Command, answer: Answer): void {
  const command = planCommand(
    program,
    'most',
    'The greatest flow within every limit, what stops it there, how to set each pump for it, and what would bring more.',
  ).addOption(
    new Option(
      '--at <place>',
      'where the flow counts: at the intake of the rig at the scene, or out of the tips',
    )
      .choices(['intake', 'nozzles'])
      .default('intake'),
  );
  withCommonOptions(withSettingsFile(command))
    .addHelpText(
      'after',
      examples(
        ['plugside most examples/cold-store.yaml', 'What reaches Engine 3, and what stops more.'],
        [
          'plugside most examples/two-hydrants.yaml --at nozzles --units si',
          'What comes out of the tips, in L/min and bar.',
        ],
      ),
    )
    .action((file: string, options: MostOptions) =>
      answer('most', options, (terminal) => askMost(terminal, file, options)),
    );
}

async function askMost(terminal: Terminal, file: string, options: MostOptions): Promise<Outcome> {
  checkSettingsFile(options);
  const { plan } = await readPlanFile(file);
  const asked = { at: options.at, units: terminal.units };
  const found = withMainRange(plan, mostWater(plan, asked), asked);
  const more = improvements(plan, asked);
  const band = bandOf(plan, asked);
  const wrote = writeSettings(options, found.plan);
  return {
    exitCode: found.flowGpm > 0 ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () => mostText(terminal, found, more, band, wrote),
    data: () => ({
      plan: aboutPlan(plan),
      answer: withWrittenPlan(found),
      improvements: more.map(({ plan: _, ...rest }) => rest),
      ...(band && { coefficientBand: band }),
    }),
  };
}

interface Band {
  line: string;
  low: { coefficient: number; flowGpm: number };
  high: { coefficient: number; flowGpm: number };
}

/** What the lay's assumed coefficient is worth: for 5 in hose that nobody has measured. */
function bandOf(plan: Plan, asked: Pick<MostOptions, 'at' | 'units'>): Band | undefined {
  const lay = mainLay(plan);
  if (lay?.hose !== '5') return undefined;
  const { kind } = coefficientFor(plan, lay).origin;
  if (kind === 'measured' || kind === 'department') return undefined;
  const { low, high } = coefficientBand(plan, lay.id, fiveInchSpread, asked);
  return {
    line: lay.id,
    low: { coefficient: fiveInchSpread.low, flowGpm: low.flowGpm },
    high: { coefficient: fiveInchSpread.high, flowGpm: high.flowGpm },
  };
}

function mostText(
  terminal: Terminal,
  found: MostWater,
  more: readonly Improvement[],
  band: Band | undefined,
  wrote: string,
): string {
  const { plan, state } = found;
  return sections(
    heading(plan),
    terminal.ink.answer(paragraph(mostSentence(terminal, found), terminal.width)),
    paragraph(`${stopSentence(terminal, found)} ${nextSentence(terminal, more)}`, terminal.width),
    ordersTable(terminal, plan, state, found.orders),
    gateTable(terminal, found.orders),
    limitsTable(terminal, found.limits),
    hydrantsTable(terminal, plan, state),
    linesTable(terminal, plan, state),
    improvementsTable(terminal, more),
    band && paragraph(bandSentence(terminal, band), terminal.width),
    closing(terminal, found.notices),
    wrote,
  );
}

/** The answer in one sentence. */
export function mostSentence({ figures }: Terminal, found: MostWater): string {
  const scene = nameById(found.plan, found.plan.scene);
  const flow = figures.full(found.flowGpm, 'flow');
  if (found.flowGpm <= 0) {
    return `No water can be had at ${scene} within the limits. ${found.noneReason ?? ''}`.trim();
  }
  if (found.at === 'intake') {
    return `${flow} reaches ${scene}: the greatest flow within every limit.`;
  }
  return tipsStopIt(found)
    ? `${flow} comes out of the tips, all that they are rated for; ${figures.full(found.state.sceneGpm, 'flow')} could reach ${scene}.`
    : `${flow} comes out of the tips: all that can reach ${scene} within every limit.`;
}

/** The open tips take less at their rating than the supply could bring. */
function tipsStopIt({ at, flowGpm, state }: MostWater): boolean {
  return at === 'nozzles' && state.sceneGpm - flowGpm > 1;
}

function stopSentence(terminal: Terminal, found: MostWater): string {
  const stopped = stoppedBy(terminal, found.binding);
  return tipsStopIt(found) ? stopped.replace('Stopped by', 'The supply would stop at') : stopped;
}

/** The change of least effort that brings more. */
function nextSentence({ units }: Terminal, [first]: readonly Improvement[]): string {
  return first ? improvementSentence(first, units) : '';
}

function improvementsTable({ figures, ink }: Terminal, more: readonly Improvement[]): string {
  if (more.length === 0) return '';
  const rows = more.map(({ change, flowGpm, gainGpm, thenBinding }) => [
    change,
    figures.bare(flowGpm, 'flow'),
    `+${figures.bare(gainGpm, 'flow')}`,
    bindingNames(thenBinding),
  ]);
  const columns = [
    { head: 'Change' },
    { head: figures.head('Flow', 'flow'), number: true },
    { head: figures.head('Gain', 'flow'), number: true },
    { head: 'Then stopped by' },
  ];
  return `${ink.head('What would bring more to the scene')}\n${table(columns, rows)}`;
}

function bandSentence({ figures }: Terminal, { low, high }: Band): string {
  const flow = (gpm: number) => figures.full(gpm, 'flow');
  return (
    `The hose decides: 5 in hose in service runs from C ${high.coefficient} down to ` +
    `${low.coefficient}, which here means ${flow(high.flowGpm)} to ${flow(low.flowGpm)}.`
  );
}
