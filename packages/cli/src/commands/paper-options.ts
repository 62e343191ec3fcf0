import type { PaperOptions } from '@plugside/paper';
import { type Command, Option } from 'commander';
import { CommandFailure } from '../failure.ts';
import { loadPaper } from '../input/paper.ts';
import { checkWritable, type WriteOptions } from '../output/write-file.ts';
import type { CommonOptions } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';

export interface PrintOptions extends CommonOptions, WriteOptions {
  output: string;
  paper: 'letter' | 'a4';
  department?: string;
}

/** What every document is printed with, besides the options of every command. */
export function withPaperOptions(command: Command): Command {
  return withCommonOptions(
    command
      .requiredOption('-o, --output <file>', 'PDF file to write')
      .option('--force', 'write over a file that is there')
      .addOption(
        new Option('--paper <size>', 'size of the paper')
          .choices(['letter', 'a4'] satisfies PrintOptions['paper'][])
          .default('letter'),
      )
      .option('--department <name>', 'name to print; the records’ own where left out'),
  );
}

/** Refuses a place that cannot take the file before anything is worked out. */
export function checkPrintable(options: PrintOptions): void {
  if (options.output === '-') {
    throw new CommandFailure('A PDF is not for a terminal: name a file with -o FILE.');
  }
  checkWritable(options.output, options);
}

/** How the document is to be printed, now. */
export function printedWith(options: PrintOptions, department?: string): PaperOptions {
  const named = options.department ?? department;
  return {
    printedAt: new Date(),
    paper: options.paper,
    units: options.units,
    ...(named !== undefined && { department: named }),
  };
}

/**
 * Writes all of a PDF or nothing; Ctrl+C leaves nothing half-written.
 * @throws CommandFailure where it is stopped or the file cannot be written
 */
export async function writePrinted(
  options: PrintOptions,
  make: (signal: AbortSignal) => AsyncIterable<Uint8Array>,
): Promise<void> {
  const stop = new AbortController();
  const onInterrupt = () => stop.abort();
  process.once('SIGINT', onInterrupt);
  try {
    const { writePdf } = await loadPaper();
    await writePdf(options.output, make(stop.signal), stop.signal);
  } catch (error) {
    if (stop.signal.aborted) throw new CommandFailure('Stopped. Nothing was written.');
    if (error instanceof Error && 'syscall' in error) {
      throw new CommandFailure(
        `${options.output} cannot be written: ${error.message}. Nothing was written.`,
      );
    }
    throw error;
  } finally {
    process.off('SIGINT', onInterrupt);
  }
}
