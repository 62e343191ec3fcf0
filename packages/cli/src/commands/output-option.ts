import type { Command } from 'commander';
import { checkWritable, type WriteOptions, writeWhole } from '../output/write-file.ts';

export interface OutputOptions extends WriteOptions {
  output?: string;
}

/** `--output FILE` and `--force`, for commands whose answer is a file. */
export function withOutput(command: Command, what: string): Command {
  return command
    .option('-o, --output <file>', `${what} (standard output where left out, or -)`)
    .option('--force', 'write over a file that is there');
}

/** Whether the answer goes to a file; refuses a place that cannot take it. */
export function goesToFile(options: OutputOptions): boolean {
  const { output } = options;
  if (output === undefined || output === '-') return false;
  checkWritable(output, options);
  return true;
}

/** Writes the file; the sentence that says so. */
export function writeOutput(options: OutputOptions, text: string): string {
  writeWhole(options.output!, text);
  return `Wrote ${options.output}.`;
}
