import { fieldRanges, type SettingsFor, settingsFor, withMainRange } from '@plugside/fireground';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { quantityArgument } from '../input/quantity-argument.ts';
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

interface SetOptions extends CommonOptions, SettingsFileOptions {
  demand?: number;
}

/** `set`: how do I set it. */
export function addSet(program: Command, answer: Answer): void {
  const command = planCommand(
    program,
    'set',
    'How to set each pump and gate each line for a demand; where it cannot be had, how much is missing and what stops it.',
  ).addOption(
    new Option(
      '-d, --demand <flow>',
      "flow wanted at the scene (the plan's own demand where left out)",
    ).argParser(quantityArgument(fieldRanges.demand)),
  );
  withCommonOptions(withSettingsFile(command))
    .addHelpText(
      'after',
      examples(
        [
          'plugside set examples/cold-store.yaml',
          'Every pump and gate for what the open nozzles need.',
        ],
        [
          'plugside set examples/cold-store.yaml --demand "1200 gpm"',
          'The same for 1,200 gpm. A demand out of reach ends with exit code 1.',
        ],
      ),
    )
    .action((file: string, options: SetOptions) =>
      answer('set', options, (terminal) => askSet(terminal, file, options)),
    );
}

async function askSet(terminal: Terminal, file: string, options: SetOptions): Promise<Outcome> {
  checkSettingsFile(options);
  const { plan } = await readPlanFile(file);
  const { units } = terminal;
  const found = withMainRange(plan, settingsFor(plan, options.demand, { units }), { units });
  const wrote = found.possible ? writeSettings(options, found.plan) : '';
  return {
    exitCode: found.possible ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () => setText(terminal, found, wrote),
    data: () => ({ plan: aboutPlan(plan), answer: withWrittenPlan(found) }),
  };
}

function setText(terminal: Terminal, found: SettingsFor, wrote: string): string {
  const { plan, state } = found;
  return sections(
    heading(plan),
    terminal.ink.answer(paragraph(setSentence(terminal, found), terminal.width)),
    found.possible
      ? ''
      : paragraph(
          `It fails at: ${found.failing.map((limit) => limitSentence(terminal, limit)).join('; ')}.`,
          terminal.width,
        ),
    found.possible ? '' : 'What follows is for the greatest flow that can be had.',
    ordersTable(terminal, plan, state, found.orders),
    gateTable(terminal, found.orders),
    limitsTable(terminal, found.limits),
    hydrantsTable(terminal, plan, state),
    linesTable(terminal, plan, state),
    nozzlesTable(terminal, plan, state),
    shutOffTable(terminal, plan, found.shutOff),
    closing(terminal, found.notices),
    wrote,
  );
}

function setSentence({ figures }: Terminal, found: SettingsFor): string {
  const demand = figures.full(found.demandGpm, 'flow');
  const scene = nameById(found.plan, found.plan.scene);
  if (!found.possible) {
    return found.shortfallGpm > 0
      ? `${demand} cannot be had at ${scene}: ${figures.full(found.shortfallGpm, 'flow')} short.`
      : `${demand} cannot be had at ${scene} within the limits.`;
  }
  const set = found.orders
    .filter(({ setting }) => setting.mode === 'governed')
    .map(({ id, pdpPsi }) => `${nameById(found.plan, id)} to ${figures.full(pdpPsi, 'pressure')}`);
  const idle = found.orders
    .filter(({ setting }) => setting.mode === 'idle')
    .map(({ id }) => `${nameById(found.plan, id)} need not pump`);
  return `For ${demand} at ${scene}: ${[...(set.length > 0 ? [`set ${set.join(', ')}`] : []), ...idle].join('; ')}.`;
}
