import { type PlanFormat, writePlan } from '@plugside/fireground';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import type { Outcome } from '../outcome.ts';
import { writtenPlan } from '../output/envelope.ts';
import { aboutPlan } from '../report/heading.ts';
import type { CommonOptions } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { goesToFile, type OutputOptions, withOutput, writeOutput } from './output-option.ts';
import { planCommand } from './plan-argument.ts';
import { formatOf } from './write-option.ts';

interface ConvertOptions extends CommonOptions, OutputOptions {
  to?: PlanFormat;
}

/** `convert`: the same plan in the other format. */
export function addConvert(program: Command, answer: Answer): void {
  const command = withOutput(
    planCommand(
      program,
      'convert',
      'The same plan as YAML with units beside the numbers, or as JSON with bare numbers in inside units. Comments are not carried over.',
    ),
    'plan file to write',
  ).addOption(
    new Option(
      '--to <format>',
      'yaml or json; as the file is named where left out, else json',
    ).choices(['yaml', 'json']),
  );
  withCommonOptions(command)
    .addHelpText(
      'after',
      examples(
        ['plugside convert examples/hill-relay.yaml', 'The plan as JSON.'],
        [
          'plugside convert examples/two-hydrants.yaml --to yaml -o us.yaml',
          'A metric plan written in US units.',
        ],
      ),
    )
    .action((file: string, options: ConvertOptions) =>
      answer('convert', options, () => askConvert(file, options)),
    );
}

async function askConvert(file: string, options: ConvertOptions): Promise<Outcome> {
  const toFile = goesToFile(options);
  const { plan } = await readPlanFile(file);
  const format = options.to ?? (toFile ? formatOf(options.output!) : 'json');
  const text = writePlan(plan, format);
  const wrote = toFile ? writeOutput(options, text) : undefined;
  return {
    exitCode: exitCodes.answered,
    text: () => wrote ?? text,
    data: () => ({
      plan: aboutPlan(plan),
      answer: {
        question: 'convert',
        plan: writtenPlan(plan),
        ...(wrote && { file: options.output }),
      },
    }),
  };
}
