import { type Now, whatNow, withMainRange } from '@plugside/fireground';
import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import type { Outcome } from '../outcome.ts';
import { withWrittenPlan } from '../output/envelope.ts';
import { paragraph, sections } from '../output/paragraph.ts';
import { limitSentence } from '../report/binding.ts';
import { hydrantsTable, nozzlesTable, shutOffTable } from '../report/ends-tables.ts';
import { aboutPlan, heading } from '../report/heading.ts';
import { limitsTable } from '../report/limits-table.ts';
import { linesTable } from '../report/lines-table.ts';
import { closing } from '../report/notices.ts';
import { nameById, ordersTable } from '../report/orders-table.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { planCommand } from './plan-argument.ts';

/** `now`: what happens with everything as it is set. */
export function addNow(program: Command, answer: Answer): void {
  withCommonOptions(
    planCommand(
      program,
      'now',
      'Every flow and pressure with the settings and valves as they stand in the plan. A hard limit passed ends with exit code 1.',
    ),
  )
    .addHelpText(
      'after',
      examples(
        ['plugside now examples/hill-relay.yaml', 'Flows and pressures of the relay as it is set.'],
        [
          'plugside now examples/two-hydrants.yaml --units si',
          'What each hydrant gives to the master stream, in L/min and bar.',
        ],
      ),
    )
    .action((file: string, options: CommonOptions) =>
      answer('now', options, (terminal) => askNow(terminal, file)),
    );
}

async function askNow(terminal: Terminal, file: string): Promise<Outcome> {
  const { plan } = await readPlanFile(file);
  const { units } = terminal;
  const found = withMainRange(plan, whatNow(plan, { units }), { units });
  const passed = passedHard(found);
  return {
    exitCode: passed.length === 0 ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () => nowText(terminal, found),
    data: () => ({ plan: aboutPlan(plan), answer: withWrittenPlan(found) }),
  };
}

const passedHard = (found: Now) =>
  found.limits.filter((limit) => limit.passed && limit.weight === 'hard');

function nowText(terminal: Terminal, found: Now): string {
  const { plan, state } = found;
  const { figures, ink, width } = terminal;
  const passed = passedHard(found);
  const sentence =
    `${figures.full(state.sceneGpm, 'flow')} reaches ${nameById(plan, plan.scene)} at ` +
    `${figures.full(state.sceneIntakePsi, 'pressure')}, as everything is set.`;
  const limits =
    passed.length === 0
      ? 'Every hard limit is kept.'
      : `Past its limit: ${passed.map((limit) => limitSentence(terminal, limit)).join('; ')}.`;
  return sections(
    heading(plan),
    ink.answer(paragraph(sentence, width)),
    paragraph(limits, width),
    ordersTable(terminal, plan, state, found.orders),
    nozzlesTable(terminal, plan, state),
    hydrantsTable(terminal, plan, state),
    linesTable(terminal, plan, state),
    limitsTable(terminal, found.limits),
    shutOffTable(terminal, plan, found.shutOff),
    closing(terminal, found.notices),
  );
}
