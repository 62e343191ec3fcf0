/** A drill that was asked for and cannot be made: by field, with what is allowed and what to do. */
import { ProblemError } from '../problem.ts';

/** 422 for a field, its value, what is allowed there, and the remedy. */
export function refused(
  path: string,
  value: unknown,
  allowed: string,
  remedy: string,
): ProblemError {
  const shown = value === undefined ? '' : ` is ${JSON.stringify(value)}`;
  return notAccepted({
    path,
    value,
    allowed,
    message: `${path}${shown}; allowed: ${allowed}.`,
    remedy,
  });
}

/** 422 for an issue in words of its own. */
export function notAccepted(issue: {
  path: string;
  value?: unknown;
  allowed: string;
  message: string;
  remedy: string;
}): ProblemError {
  return new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: `${issue.message} ${issue.remedy}`,
    extra: { issues: [issue] },
  });
}
