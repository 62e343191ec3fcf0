import type { Kind } from '../model/index.ts';
import { type RecordIssue, RecordIssuesError } from './errors.ts';

/** Refuses what a list was asked for. */
export function refuse(kind: Kind, path: string, value: unknown, allowed: string): never {
  const message = `${path} is ${JSON.stringify(value)}; allowed: ${allowed}.`;
  const issue: RecordIssue = {
    path,
    value,
    allowed,
    message,
    remedy: 'Ask with an allowed value.',
  };
  throw new RecordIssuesError(kind, [issue]);
}
