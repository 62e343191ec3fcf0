import {
  DuplicateKeyError,
  NotFoundError,
  RecordIssuesError,
  ReferredToError,
  StaleRecordError,
  StoreBusyError,
} from '@plugside/records';
import { type Problem, ProblemError } from '../problem.ts';

/** What a failure is told as; undefined for one that nobody foresaw, which the log alone may know. */
export function problemOf(error: unknown): Problem | undefined {
  if (error instanceof ProblemError) return error.problem;
  if (error instanceof RecordIssuesError) {
    return {
      status: 422,
      title: 'Not accepted',
      detail: error.message,
      extra: { issues: error.issues },
    };
  }
  if (error instanceof StaleRecordError) {
    return {
      status: 409,
      title: 'Changed meanwhile',
      detail: error.message,
      extra: { current: error.current, yours: { version: error.yours } },
    };
  }
  if (error instanceof ReferredToError) {
    return {
      status: 409,
      title: 'Referred to',
      detail: error.message,
      extra: { by: error.by },
    };
  }
  if (error instanceof DuplicateKeyError) {
    return { status: 409, title: 'Key taken', detail: error.message };
  }
  if (error instanceof NotFoundError) {
    return { status: 404, title: 'Not found', detail: error.message };
  }
  if (error instanceof StoreBusyError) {
    return {
      status: 503,
      title: 'Busy',
      detail: error.message,
      headers: { 'Retry-After': '2' },
    };
  }
  return undefined;
}
