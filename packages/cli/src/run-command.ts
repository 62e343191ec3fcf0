import { NetworkError } from '@plugside/fireground';
import { CommanderError } from 'commander';
import type { Answer } from './answer.ts';
import { type ExitCode, exitCodes } from './exit-codes.ts';
import { CommandFailure } from './failure.ts';
import type { Outcome } from './outcome.ts';
import { envelope, envelopeVersion } from './output/envelope.ts';
import { figuresIn } from './output/figures.ts';
import { inkFor } from './output/ink.ts';
import { buildProgram } from './program.ts';

/** Least and greatest width of text, whatever the terminal [columns]. */
const WIDTHS = { least: 60, usual: 100, greatest: 120 } as const;

/**
 * Runs one command line and sets the process's exit code.
 * @param args what stands after the program's name
 */
export async function runCommand(args: readonly string[]): Promise<void> {
  const json = args.includes('--json');
  endQuietlyOnBrokenPipe();
  try {
    const program = buildProgram(answer, {
      // A wrong option is told once: as text here, or as JSON below.
      writeErr: (text) => void (json || process.stderr.write(text)),
    });
    await program.parseAsync(args, { from: 'user' });
  } catch (error) {
    process.exitCode = tell(error, json);
  }
}

const answer: Answer = async (command, options, ask) => {
  const outcome: Outcome = await ask({
    units: options.units,
    figures: figuresIn(options.units),
    ink: inkFor(options.color, process.stdout.isTTY === true),
    width: Math.min(
      WIDTHS.greatest,
      Math.max(WIDTHS.least, process.stdout.columns ?? WIDTHS.usual),
    ),
  });
  const text = options.json ? envelope(command, outcome.data()) : outcome.text();
  process.exitCode = outcome.exitCode;
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
};

/** Whoever reads may stop reading (`| head`): no fault, and nothing more to say. */
function endQuietlyOnBrokenPipe(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}

function tell(error: unknown, json: boolean): ExitCode {
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return exitCodes.answered;
    if (json) writeFailure(exitCodes.badInput, error.message);
    return exitCodes.badInput;
  }
  const [code, message] = readFault(error);
  if (json) writeFailure(code, message, error);
  else process.stderr.write(`${message}\n`);
  return code;
}

function readFault(error: unknown): [ExitCode, string] {
  if (error instanceof CommandFailure) return [error.exitCode, error.message];
  if (error instanceof NetworkError) {
    return [exitCodes.notSolved, `The plan cannot be solved. ${error.message}`];
  }
  // What the questions throw for a plan that lacks what is asked about.
  if (error instanceof RangeError) return [exitCodes.badInput, error.message];
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return [
    exitCodes.ownFault,
    `A fault in Plugside, not in your plan. Please report it with the plan and the command.\n${trace}`,
  ];
}

function writeFailure(exitCode: ExitCode, message: string, error?: unknown): void {
  const failure: Record<string, unknown> = { exitCode, message };
  if (error instanceof CommandFailure && error.issues.length > 0) failure.issues = error.issues;
  if (error instanceof NetworkError) {
    failure.code = error.code;
    failure.pieces = error.pieces;
  }
  const document = { plugside: { format: envelopeVersion }, failure };
  process.stdout.write(`${JSON.stringify(document, null, 2)}\n`);
}
