import { ProblemError } from './problem.ts';

/** What to tell of a request that failed; every field that was refused, with what to do. */
export function reasonOf(error: unknown, told: { paths: boolean } = { paths: false }): string {
  if (error instanceof ProblemError && error.problem.issues?.length) {
    return error.problem.issues
      .map(({ path, message, remedy }) =>
        [told.paths && `${path}:`, message, remedy].filter(Boolean).join(' '),
      )
      .join(' ');
  }
  return error instanceof Error ? error.message : String(error);
}
