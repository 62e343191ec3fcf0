import type { Outcome } from './outcome.ts';
import type { CommonOptions, Terminal } from './terminal.ts';

/** Runs a question and writes its outcome in the form that the options ask for. */
export type Answer = (
  command: string,
  options: CommonOptions,
  ask: (terminal: Terminal) => Outcome | Promise<Outcome>,
) => Promise<void>;
