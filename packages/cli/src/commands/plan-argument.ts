import type { Command } from 'commander';

/** A command that asks something of one plan. */
export function planCommand(program: Command, name: string, description: string): Command {
  return program
    .command(name)
    .description(description)
    .argument('<PLAN>', 'plan file, or - for standard input');
}
