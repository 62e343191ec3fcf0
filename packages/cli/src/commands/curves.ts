import { type Plan, type SupplyCurve, supplyCurves } from '@plugside/fireground';
import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import type { Outcome } from '../outcome.ts';
import { csv } from '../output/csv.ts';
import { paragraph, sections } from '../output/paragraph.ts';
import { table } from '../output/table.ts';
import { aboutPlan, heading } from '../report/heading.ts';
import { closing } from '../report/notices.ts';
import { nameById } from '../report/orders-table.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { planCommand } from './plan-argument.ts';
import { plainNumber } from './sweep.ts';

interface CurvesOptions extends CommonOptions {
  csv?: boolean;
}

/** Every so many of a curve's points are shown to people. */
const SHOWN_EVERY = 5;

/** `curves`: pressure left at the scene against flow. */
export function addCurves(program: Command, answer: Answer): void {
  withCommonOptions(
    planCommand(
      program,
      'curves',
      'Pressure left at the scene against flow: on hydrant pressure alone, boosted, and boosted with more suction.',
    ).option('--csv', 'every point as comma-separated rows for a spreadsheet'),
  )
    .addHelpText(
      'after',
      examples(
        ['plugside curves examples/cold-store.yaml', 'The supply curves and where each one ends.'],
        ['plugside curves examples/hill-relay.yaml --csv', 'Every point, for a spreadsheet.'],
      ),
    )
    .action((file: string, options: CurvesOptions) =>
      answer('curves', options, (terminal) => askCurves(terminal, file, options)),
    );
}

async function askCurves(
  terminal: Terminal,
  file: string,
  options: CurvesOptions,
): Promise<Outcome> {
  if (options.csv && options.json) throw new CommandFailure('Give --csv or --json, not both.');
  const { plan } = await readPlanFile(file);
  const curves = supplyCurves(plan);
  const any = curves.some(({ mostGpm }) => mostGpm > 0);
  return {
    exitCode: any ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () => (options.csv ? curvesCsv(terminal, curves) : curvesText(terminal, plan, curves)),
    data: () => ({ plan: aboutPlan(plan), answer: { question: 'curves', curves } }),
  };
}

function curvesText(terminal: Terminal, plan: Plan, curves: readonly SupplyCurve[]): string {
  const { figures, ink, width } = terminal;
  const ends = curves
    .map(({ label, mostGpm }) => `${label.toLowerCase()} ${figures.full(mostGpm, 'flow')}`)
    .join('; ');
  const columns = [
    { head: figures.head('Flow', 'flow'), number: true },
    { head: figures.head('Intake', 'pressure'), number: true },
    { head: '' },
  ];
  const shown = curves.map(({ label, points, mostGpm }) => {
    const rows = points
      .filter(
        ({ flowGpm }, at) =>
          at % SHOWN_EVERY === 0 || at === points.length - 1 || flowGpm === mostGpm,
      )
      .map(({ flowGpm, intakePsi }) => [
        figures.bare(flowGpm, 'flow'),
        figures.bare(intakePsi, 'pressure'),
        flowGpm === mostGpm ? 'greatest within every limit' : '',
      ]);
    return `${ink.head(label)}\n${table(columns, rows)}`;
  });
  return sections(
    heading(plan),
    ink.answer(
      paragraph(
        `Greatest flow to ${nameById(plan, plan.scene)} within every limit: ${ends}.`,
        width,
      ),
    ),
    ...shown,
    closing(terminal),
  );
}

function curvesCsv({ figures }: Terminal, curves: readonly SupplyCurve[]): string {
  const heads = ['Curve', figures.head('Flow', 'flow'), figures.head('Intake', 'pressure')];
  const rows = curves.flatMap(({ label, points }) =>
    points.map(({ flowGpm, intakePsi }) => [
      label,
      plainNumber(figures.bare(flowGpm, 'flow')),
      plainNumber(figures.bare(intakePsi, 'pressure')),
    ]),
  );
  return csv(heads, rows);
}
