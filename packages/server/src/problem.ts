import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';

/** A failure told to a program: RFC 9457, "Problem Details for HTTP APIs". */
export interface Problem {
  status: ContentfulStatusCode;
  /** Same words for the same kind of failure. */
  title: string;
  /** This one, and what to do about it. */
  detail: string;
  /** Members beside the standard's own: `issues`, `current`, `yours`, `by`. */
  extra?: Readonly<Record<string, unknown>>;
  headers?: Readonly<Record<string, string>>;
}

/**
 * Answers with a problem document (`application/problem+json`). Its type is left at
 * `about:blank`, which says that the status tells the kind (RFC 9457, section 4.2.1).
 */
export function answerProblem(c: Context, problem: Problem): Response {
  const { status, title, detail, extra, headers } = problem;
  const members = { type: 'about:blank', title, status, detail, instance: c.req.path, ...extra };
  return c.body(JSON.stringify(members), status, {
    ...headers,
    'Content-Type': 'application/problem+json',
    'Cache-Control': 'no-store',
  });
}

/** Thrown by what answers a request, to be answered as that problem. */
export class ProblemError extends Error {
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(problem.detail);
    this.name = 'ProblemError';
    this.problem = problem;
  }
}
