import { readFileSync } from 'node:fs';
import { Command, type OutputConfiguration } from 'commander';
import type { Answer } from './answer.ts';
import { addCatalogue } from './commands/catalogue.ts';
import { addCheck } from './commands/check.ts';
import { addChoose } from './commands/choose.ts';
import { addCompare } from './commands/compare.ts';
import { addConvert } from './commands/convert.ts';
import { addCurves } from './commands/curves.ts';
import { addMost } from './commands/most.ts';
import { addNew } from './commands/new.ts';
import { addNow } from './commands/now.ts';
import { addPrint } from './commands/print.ts';
import { addProfile } from './commands/profile.ts';
import { addRecords } from './commands/records.ts';
import { addSchema } from './commands/schema.ts';
import { addSet } from './commands/set.ts';
import { addSweep } from './commands/sweep.ts';
import { exitCodeLines } from './exit-codes.ts';

/** The command line's grammar; each command's action goes through `answer`. */
export function buildProgram(answer: Answer, output: OutputConfiguration): Command {
  const program = new Command('plugside')
    .description(
      'Water supply for the fireground: what a lay delivers, what stops it, how to set every pump.',
    )
    .version(versionOf(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .configureOutput(output)
    .showSuggestionAfterError()
    .exitOverride();
  program.commandsGroup('Questions:');
  for (const add of [addMost, addSet, addNow, addCompare, addSweep, addCurves])
    add(program, answer);
  program.commandsGroup('Plans:');
  for (const add of [addNew, addCheck, addConvert, addProfile]) add(program, answer);
  program.commandsGroup('Records:');
  addChoose(program, answer);
  addRecords(program, answer);
  program.commandsGroup('Paper:');
  addPrint(program, answer);
  program.commandsGroup('Reference:');
  for (const add of [addCatalogue, addSchema]) add(program, answer);
  program.addHelpCommand(
    new Command('help')
      .argument('[command]')
      .description('Prints the help of a command.')
      .helpOption(false)
      .helpGroup('Reference:'),
  );
  program.addHelpText('after', afterHelp());
  return program;
}

function afterHelp(): string {
  const codes = exitCodeLines.map(([code, means]) => `  ${code}  ${means}`).join('\n');
  return `
PLAN is a plan file (YAML or JSON), or - for standard input. Numbers may carry their unit:
"900 ft", "275 m", "4.8 bar"; bare ones are in gpm, psi, ft, in and gal.

Exit codes:
${codes}

To begin:
  $ plugside new boosted-at-hydrant -o plan.yaml
  $ plugside most plan.yaml

A training and planning aid. It does not replace your department's procedures, the water
utility's word or the makers' data.`;
}

function versionOf(): string {
  const file = new URL('../package.json', import.meta.url);
  return (JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version;
}
