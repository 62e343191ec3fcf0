import { NetworkError } from '@plugside/fireground';
import { ProblemError } from '../problem.ts';

export function refused(detail: string): ProblemError {
  return new ProblemError({ status: 422, title: 'Not accepted', detail });
}

/** What the questions refuse is the sender's to mend. @throws ProblemError 422 for it */
export async function solved<T>(work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof NetworkError) {
      throw refused(`The plan cannot be solved. ${error.message}`);
    }
    throw error instanceof RangeError ? refused(error.message) : error;
  }
}
