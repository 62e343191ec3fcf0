import type { ReadIssue } from '@plugside/fireground';
import { type ExitCode, exitCodes } from './exit-codes.ts';

/** What stops a command: told on standard error, or as JSON where JSON was asked for. */
export class CommandFailure extends Error {
  readonly exitCode: ExitCode;
  /** Faults in a plan, each with its place. */
  readonly issues: readonly ReadIssue[];

  constructor(
    message: string,
    exitCode: ExitCode = exitCodes.badInput,
    issues: readonly ReadIssue[] = [],
  ) {
    super(message);
    this.name = 'CommandFailure';
    this.exitCode = exitCode;
    this.issues = issues;
  }
}
