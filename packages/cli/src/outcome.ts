import type { ExitCode } from './exit-codes.ts';

/** What a command found: one form for people, one for programs. Only the one asked for is made. */
export interface Outcome {
  exitCode: ExitCode;
  text: () => string;
  data: () => Record<string, unknown>;
}
