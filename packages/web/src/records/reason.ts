import { ProblemError } from '../api/problem.ts';

/** Why something could not be done, with each refused field where there are any. */
export function reasonOf(error: unknown): string {
  if (error instanceof ProblemError && error.problem.issues?.length) {
    return error.problem.issues
      .map(({ message, remedy }) => [message, remedy].filter(Boolean).join(' '))
      .join(' ');
  }
  return error instanceof Error ? error.message : String(error);
}
