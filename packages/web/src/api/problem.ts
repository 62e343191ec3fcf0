/** Failures of the records' server, as what a page can do about them. */
import type { Kind } from '@plugside/records/model';

/** One field of a record that was refused. */
export interface RefusedField {
  path: string;
  value?: unknown;
  allowed?: string;
  message: string;
  remedy?: string;
}

/** Records of one kind that refer to another by one field. */
export interface Referrer {
  kind: Kind;
  field: string;
  count: number;
  /** The first ten. */
  ids: readonly string[];
}

/** A problem document (RFC 9457) with the members that this server adds. */
export interface ProblemDocument {
  type?: string;
  title: string;
  status: number;
  detail: string;
  issues?: readonly RefusedField[];
  /** A stale edit: the record as it now is. */
  current?: unknown;
  /** A stale edit: the changes as they were sent, null for a field to clear, and the version that they were made on. */
  yours?: Readonly<Record<string, unknown>> & { readonly version: number };
  /** Records that refer to one that was to be removed. */
  by?: readonly Referrer[];
}

/** The server answered that it cannot. */
export class ProblemError extends Error {
  readonly problem: ProblemDocument;

  constructor(problem: ProblemDocument) {
    super(problem.detail || problem.title);
    this.name = 'ProblemError';
    this.problem = problem;
  }

  get status(): number {
    return this.problem.status;
  }
}

/** Somebody else changed the record first; `current` is what it is now. */
export class StaleError<Record = unknown> extends ProblemError {
  get current(): Record {
    return this.problem.current as Record;
  }
}

/** No server of records answers at this address: the page is served as files alone, or offline. */
export class UnreachableError extends Error {
  constructor() {
    super(
      'No records answer here. Start Plugside with its server (npm start), or look at the network; the lay works without them.',
    );
    this.name = 'UnreachableError';
  }
}

/** An answer that is no success, as an error. */
export function problemFrom(status: number, answer: unknown): ProblemError {
  const told = (
    typeof answer === 'object' && answer !== null ? answer : {}
  ) as Partial<ProblemDocument>;
  const problem: ProblemDocument = {
    ...told,
    status,
    title: told.title ?? 'The server refused',
    detail: told.detail ?? `It answered with status ${status} and no reason.`,
  };
  return status === 409 && problem.current !== undefined
    ? new StaleError(problem)
    : new ProblemError(problem);
}
