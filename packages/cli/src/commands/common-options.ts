import type { UnitSystem } from '@plugside/fireground';
import { type Command, Option } from 'commander';

/** The options that every command takes. */
export function withCommonOptions(command: Command): Command {
  return command
    .option('--json', 'answer as JSON for programs, in inside units (gpm, psi, ft, in, gal)')
    .addOption(
      new Option('--units <system>', 'units to show to people')
        .choices(['us', 'si'] satisfies UnitSystem[])
        .default('us'),
    )
    .option('--no-color', 'no colours; NO_COLOR in the environment does the same')
    .helpOption('-h, --help', 'print this help');
}
