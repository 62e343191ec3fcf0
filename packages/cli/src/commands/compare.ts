import {
  type BoostComparison,
  compareBoost,
  fieldRanges,
  type LimitCheck,
  type MostWater,
  type Plan,
} from '@plugside/fireground';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { quantityArgument } from '../input/quantity-argument.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import type { Outcome } from '../outcome.ts';
import { withWrittenPlan } from '../output/envelope.ts';
import { quantityOfUnit } from '../output/figures.ts';
import { paragraph, sections } from '../output/paragraph.ts';
import { type Column, table } from '../output/table.ts';
import { bindingNames } from '../report/binding.ts';
import { aboutPlan, heading } from '../report/heading.ts';
import { closing } from '../report/notices.ts';
import { nameById } from '../report/orders-table.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { planCommand } from './plan-argument.ts';

interface CompareOptions extends CommonOptions {
  demand?: number;
}

/** `compare`: hydrant pressure alone beside the plan with its pumps. */
export function addCompare(program: Command, answer: Answer): void {
  const command = planCommand(
    program,
    'compare',
    'Hydrant pressure alone beside the plan with its pumps: greatest flow, margins, and from what length of lay boosting pays.',
  ).addOption(
    new Option(
      '-d, --demand <flow>',
      "demand that decides whether boosting pays (the plan's own where left out)",
    ).argParser(quantityArgument(fieldRanges.demand)),
  );
  withCommonOptions(command)
    .addHelpText(
      'after',
      examples(
        [
          'plugside compare examples/cold-store.yaml',
          'What the engine at the hydrant brings, side by side.',
        ],
        [
          'plugside compare examples/cold-store.yaml --demand 500',
          'From what length of lay 500 gpm needs the boost.',
        ],
      ),
    )
    .action((file: string, options: CompareOptions) =>
      answer('compare', options, (terminal) => askCompare(terminal, file, options)),
    );
}

async function askCompare(
  terminal: Terminal,
  file: string,
  options: CompareOptions,
): Promise<Outcome> {
  const read = await readPlanFile(file);
  const plan: Plan =
    options.demand === undefined ? read.plan : { ...read.plan, demandGpm: options.demand };
  const found = compareBoost(plan, { units: terminal.units });
  const best = found.boosted ?? found.unassisted;
  return {
    exitCode: best.flowGpm > 0 ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () => compareText(terminal, plan, found),
    data: () => ({
      plan: aboutPlan(plan),
      answer: {
        ...found,
        unassisted: withWrittenPlan(found.unassisted),
        boosted: found.boosted && withWrittenPlan(found.boosted),
      },
    }),
  };
}

function compareText(terminal: Terminal, plan: Plan, found: BoostComparison): string {
  const { ink, width } = terminal;
  return sections(
    heading(plan),
    ink.answer(paragraph(gainSentence(terminal, found), width)),
    paragraph(paysSentence(terminal, found), width),
    sideBySide(terminal, found),
    margins(terminal, found),
    closing(terminal, (found.boosted ?? found.unassisted).notices),
  );
}

function gainSentence({ figures }: Terminal, { unassisted, boosted, gainGpm }: BoostComparison) {
  const alone = figures.full(unassisted.flowGpm, 'flow');
  if (!boosted) {
    return `${alone} on hydrant pressure alone. No pump in this plan boosts the supply, so there is nothing to set beside it.`;
  }
  return `Boosting brings ${figures.full(gainGpm, 'flow')} more: ${figures.full(boosted.flowGpm, 'flow')} against ${alone} on hydrant pressure alone.`;
}

function paysSentence({ figures }: Terminal, found: BoostComparison): string {
  const demand = figures.full(found.demandGpm, 'flow');
  switch (found.boostPays) {
    case 'from length':
      return `For ${demand} it takes boosting once the lay is longer than ${figures.full(found.boostPaysFromFt ?? 0, 'length')}.`;
    case 'at any length':
      return `For ${demand} it takes boosting at any length of lay.`;
    case 'demand out of reach':
      return `${demand} is out of reach of this hydrant and hookup, boosted or not.`;
    case 'not for this demand':
      return found.demandGpm > 0
        ? `${demand} needs no boosting at any usual length of lay.`
        : 'The plan has no demand and no open nozzle, so nothing says whether boosting pays. Give one with --demand.';
  }
}

function columnsOf(found: BoostComparison, first: string): Column[] {
  const columns: Column[] = [{ head: first }, { head: 'Hydrant alone', number: true }];
  if (found.boosted) columns.push({ head: 'Boosted', number: true });
  return columns;
}

function sideBySide({ figures, ink }: Terminal, found: BoostComparison): string {
  const both = [found.unassisted, ...(found.boosted ? [found.boosted] : [])];
  const row = (label: string, of: (answer: MostWater) => string) => [label, ...both.map(of)];
  const least = (answer: MostWater) => Math.min(...answer.state.hydrants.map((h) => h.mainPsi));
  const rows = [
    row(figures.head('Greatest flow', 'flow'), ({ flowGpm }) => figures.bare(flowGpm, 'flow')),
    row(figures.head('Intake at the scene', 'pressure'), ({ state }) =>
      figures.bare(state.sceneIntakePsi, 'pressure'),
    ),
  ];
  if (found.unassisted.state.hydrants.length > 0) {
    rows.push(
      row(figures.head('Left in the main', 'pressure'), (answer) =>
        figures.bare(least(answer), 'pressure'),
      ),
    );
  }
  const { plan } = found.unassisted;
  for (const rig of plan.rigs.filter(({ id }) => id !== plan.scene)) {
    rows.push(
      row(figures.head(`${nameById(plan, rig.id)} set to`, 'pressure'), (answer) => {
        const setting = answer.plan.rigs.find(({ id }) => id === rig.id)?.setting;
        return setting?.mode === 'governed' ? figures.bare(setting.pdpPsi, 'pressure') : '-';
      }),
    );
  }
  rows.push(row('Stopped by', ({ binding }) => bindingNames(binding)));
  return `${ink.head('Side by side')}\n${table(columnsOf(found, ''), rows)}`;
}

/** Room left under every limit that either of the two has, each in its own unit. */
function margins({ figures, ink }: Terminal, found: BoostComparison): string {
  const all = new Map<string, LimitCheck>();
  for (const answer of [found.unassisted, found.boosted])
    for (const limit of answer?.limits ?? []) if (!all.has(limit.id)) all.set(limit.id, limit);
  const room = (answer: MostWater, id: string) => {
    const limit = answer.limits.find((candidate) => candidate.id === id);
    if (!limit) return '-';
    const shown = figures.bare(limit.margin, quantityOfUnit[limit.unit]);
    return limit.passed && Math.abs(limit.marginFraction) > 1e-3 ? `${shown} PASSED` : shown;
  };
  const both = [found.unassisted, ...(found.boosted ? [found.boosted] : [])];
  const rows = [...all.values()].map((limit) => [
    `${limit.label}, ${figures.unit(quantityOfUnit[limit.unit])}`,
    ...both.map((answer) => room(answer, limit.id)),
  ]);
  return `${ink.head('Room left under each limit')}\n${table(columnsOf(found, 'Limit, unit'), rows)}`;
}
