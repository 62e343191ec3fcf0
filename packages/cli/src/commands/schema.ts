import { planJsonSchema } from '@plugside/fireground';
import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import type { Outcome } from '../outcome.ts';
import type { CommonOptions } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { goesToFile, type OutputOptions, withOutput, writeOutput } from './output-option.ts';

/** `schema`: the plan file's JSON Schema, for editors. */
export function addSchema(program: Command, answer: Answer): void {
  withCommonOptions(
    withOutput(
      program
        .command('schema')
        .description('The JSON Schema of plan files, for editors that complete and check by one.'),
      'file to write',
    ),
  )
    .addHelpText(
      'after',
      examples(
        ['plugside schema', 'The schema on standard output.'],
        ['plugside schema -o plan.schema.json', 'The schema in a file for an editor.'],
      ),
    )
    .action((options: CommonOptions & OutputOptions) =>
      answer('schema', options, () => askSchema(options)),
    );
}

function askSchema(options: OutputOptions): Outcome {
  const toFile = goesToFile(options);
  const schema = planJsonSchema();
  const text = `${JSON.stringify(schema, null, 2)}\n`;
  const wrote = toFile ? writeOutput(options, text) : undefined;
  return {
    exitCode: exitCodes.answered,
    text: () => wrote ?? text,
    data: () => ({ answer: { question: 'schema', schema } }),
  };
}
