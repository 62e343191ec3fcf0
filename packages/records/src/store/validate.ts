/** The door: what is given becomes a record's fields, or a list of what is wrong with it. */
import type { z } from 'zod';
import { type Fields, type Kind, recordSchemas } from '../model/index.ts';
import { allowedAt, fieldNames } from './allowed.ts';
import { type RecordIssue, RecordIssuesError } from './errors.ts';
import { dayAheadRemedy, daysAhead, testDaysAllowed } from './test-days.ts';

/**
 * Checks against the kind's schema; defaults are filled in, fields given as undefined left out.
 * @param place put before each path, for instance `rows[17]`
 * @param options `kept`: the record was kept before, so that a test dated after today, which is
 *   refused otherwise, is let by; what reads it leaves it aside
 * @throws RecordIssuesError
 */
export function validate<K extends Kind>(
  kind: K,
  given: unknown,
  place = '',
  { kept = false }: { kept?: boolean } = {},
): Fields<K> {
  const bare = withoutUndefined(given);
  const result = recordSchemas[kind].safeParse(bare);
  if (!result.success) {
    const issues = result.error.issues.flatMap((issue) => toIssues(kind, issue, bare, place));
    throw new RecordIssuesError(kind, issues);
  }
  const fields: Record<string, unknown> = result.data;
  const unstorable = Object.entries(fields).filter(([, value]) => !storable(value));
  if (unstorable.length > 0) {
    throw new RecordIssuesError(
      kind,
      unstorable.map(([field, value]) => unstorableIssue(pathText([field], place), value)),
    );
  }
  const ahead = kept ? [] : daysAhead(kind, fields);
  if (ahead.length > 0) {
    throw new RecordIssuesError(
      kind,
      ahead.map(({ path, value }) => dayAheadIssue(pathText(path, place), value)),
    );
  }
  for (const field in fields) {
    // Databases differ on the sign of zero.
    if (fields[field] === 0) fields[field] = 0;
  }
  return fields as Fields<K>;
}

/** `flowing[1].pitotPsi`, behind the place where there is one. */
export function pathText(path: readonly PropertyKey[], place = ''): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? String(step) : `${text}.${String(step)}`;
  }, place);
}

function withoutUndefined(given: unknown): unknown {
  if (typeof given !== 'object' || given === null || Array.isArray(given)) return given;
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
}

function toIssues(
  kind: Kind,
  issue: z.core.$ZodIssue,
  given: unknown,
  place: string,
): RecordIssue[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => unknownField(kind, [...issue.path, key], given, place));
  }
  const path = pathText(issue.path, place);
  const value = valueAt(given, issue.path);
  const allowed = allowedAt(kind, issue.path);
  if (value === undefined) {
    const message = `${path || 'The record'} is missing.`;
    return [{ path, value, allowed, message, remedy: `Give it: ${allowed}.` }];
  }
  const message = `${path || 'The record'} is ${shown(value)}; allowed: ${allowed}.`;
  const remedy =
    issue.code === 'invalid_type'
      ? `Give ${allowed}, without quotes or units around it where it is a number.`
      : 'Give a value that is allowed, or leave the field out where it may be.';
  return [{ path, value, allowed, message, remedy }];
}

function unknownField(
  kind: Kind,
  at: readonly PropertyKey[],
  given: unknown,
  place: string,
): RecordIssue {
  const path = pathText(at, place);
  const allowed = at.length === 1 ? `one of: ${fieldNames(kind).join(', ')}` : 'no such field';
  return {
    path,
    value: valueAt(given, at),
    allowed,
    message: `${path} is not a field of ${kind}.`,
    remedy: `Remove it or mend its spelling${at.length === 1 ? `; ${allowed}` : ''}.`,
  };
}

/** PostgreSQL takes no NUL, and no database half a surrogate pair. */
function storable(value: unknown): boolean {
  return (
    typeof value !== 'string' ||
    !/\0|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/.test(value)
  );
}

function dayAheadIssue(path: string, value: string): RecordIssue {
  const allowed = testDaysAllowed();
  return {
    path,
    value,
    allowed,
    message: `${path} is "${value}", a day that has not been yet; allowed: ${allowed}.`,
    remedy: dayAheadRemedy,
  };
}

function unstorableIssue(path: string, value: unknown): RecordIssue {
  return {
    path,
    value,
    allowed: 'text without NUL and broken characters',
    message: `${path} holds a character that no database can keep.`,
    remedy: 'Type the text anew, or read its file with the right encoding.',
  };
}

function valueAt(given: unknown, path: readonly PropertyKey[]): unknown {
  let value = given;
  for (const step of path) value = (value as Record<PropertyKey, unknown> | undefined)?.[step];
  return value;
}

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}
