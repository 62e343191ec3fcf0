import { type Plan, type ReadIssue, type ReadNotice, readPlan } from '@plugside/fireground';
import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { issueLines } from '../input/read-plan-file.ts';
import { nameOfInput, readText } from '../input/read-text.ts';
import type { Outcome } from '../outcome.ts';
import { sections } from '../output/paragraph.ts';
import { aboutPlan } from '../report/heading.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';

interface Checked {
  file: string;
  ok: boolean;
  plan?: Plan;
  /** The file as a whole cannot be read. */
  failure?: string;
  issues: readonly ReadIssue[];
  notices: readonly ReadNotice[];
}

/** `check`: are these sound plans. */
export function addCheck(program: Command, answer: Answer): void {
  withCommonOptions(
    program
      .command('check')
      .description(
        'Reads plans and tells every fault with its line, what is allowed and the remedy. Any fault ends with exit code 2.',
      )
      .argument('<PLAN...>', 'plan files, or - for standard input'),
  )
    .addHelpText(
      'after',
      examples(
        ['plugside check examples/cold-store.yaml', 'Whether the plan is sound.'],
        [
          'plugside check examples/hill-relay.yaml examples/two-hydrants.yaml --json',
          'Several plans, for a program.',
        ],
      ),
    )
    .action((files: string[], options: CommonOptions) =>
      answer('check', options, (terminal) => askCheck(terminal, files)),
    );
}

async function askCheck(terminal: Terminal, files: readonly string[]): Promise<Outcome> {
  const checked: Checked[] = [];
  for (const file of files) checked.push(await checkFile(file));
  const sound = checked.every(({ ok }) => ok);
  return {
    exitCode: sound ? exitCodes.answered : exitCodes.badInput,
    text: () => sections(...checked.map((one) => checkText(terminal, one))),
    data: () => ({
      answer: {
        question: 'check',
        ok: sound,
        files: checked.map(({ plan, ...one }) => ({ ...one, ...(plan && aboutPlan(plan)) })),
      },
    }),
  };
}

async function checkFile(file: string): Promise<Checked> {
  const name = nameOfInput(file);
  try {
    const read = readPlan(await readText(file), { fileName: name });
    return read.ok
      ? { file: name, ok: true, plan: read.plan, issues: [], notices: read.notices }
      : { file: name, ok: false, issues: read.issues, notices: [] };
  } catch (error) {
    if (!(error instanceof CommandFailure)) throw error;
    return { file: name, ok: false, failure: error.message, issues: [], notices: [] };
  }
}

function checkText({ ink }: Terminal, checked: Checked): string {
  const { file, plan, failure, issues, notices } = checked;
  if (failure !== undefined) return failure;
  if (!plan) {
    const count = issues.length === 1 ? '1 fault' : `${issues.length} faults`;
    return `${ink.caution(`${file}: ${count}.`)}\n${issueLines(file, issues)}`;
  }
  const sound = ink.answer(`${file}: sound. ${plan.title}: ${contents(plan)}.`);
  return notices.length > 0 ? `${sound}\n${issueLines(file, notices)}` : sound;
}

function contents(plan: Plan): string {
  const counts = [
    [plan.hydrants.length, 'hydrant'],
    [plan.drafts.length, 'draft source'],
    [plan.rigs.length, 'rig'],
    [plan.appliances.length, 'appliance'],
    [plan.lines.length, 'line'],
    [plan.nozzles.length, 'nozzle'],
  ] as const;
  return counts
    .filter(([count]) => count > 0)
    .map(([count, name]) => `${count} ${name}${count === 1 ? '' : 's'}`)
    .join(', ');
}
