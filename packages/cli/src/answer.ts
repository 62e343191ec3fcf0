import type { Outcome } from './outcome.ts';
import type { CommonOptions, Session } from './session.ts';

/** Runs a question and writes its outcome in the form that the options ask for. */
export type Answer = (
  command: string,
  options: CommonOptions,
  ask: (session: Session) => Outcome | Promise<Outcome>,
) => Promise<void>;
