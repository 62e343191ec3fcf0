import type { PlanFormat } from '@plugside/fireground';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import type { Outcome } from '../outcome.ts';
import type { CommonOptions } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { goesToFile, type OutputOptions, withOutput } from './output-option.ts';
import { planCommand } from './plan-argument.ts';
import { planOutcome } from './plan-outcome.ts';

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
        [
          'plugside convert examples/hill-relay.yaml --to yaml --units si',
          'The plan as YAML in metres, bar and litres per minute.',
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
  return planOutcome('convert', plan, toFile, options, 'json');
}
