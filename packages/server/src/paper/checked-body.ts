import type { z } from '@hono/zod-openapi';
import { allowedWords, fieldAt, jsonSchemaOf, unitOf } from '../api/allowed-words.ts';
import { ProblemError } from '../problem.ts';

interface BodyIssue {
  path: string;
  value: unknown;
  allowed: string;
  message: string;
  remedy: string;
}

const MOST_TOLD = 20;

/** @throws ProblemError 422 with every fault: field, value, what is allowed in its unit, remedy */
export function checkedBody<T>(schema: z.ZodType<T>, given: unknown): T {
  const read = schema.safeParse(given);
  if (read.success) return read.data;
  const issues = read.error.issues
    .flatMap((issue) => issuesOf(schema, issue, given))
    .slice(0, MOST_TOLD);
  throw new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: issues.map(({ message, remedy }) => `${message} ${remedy}`).join(' '),
    extra: { issues },
  });
}

function issuesOf(schema: z.ZodType, issue: z.core.$ZodIssue, given: unknown): BodyIssue[] {
  const whole = jsonSchemaOf(schema);
  if (issue.code === 'unrecognized_keys') {
    const names = Object.keys(fieldAt(whole, issue.path)?.properties ?? {});
    return issue.keys.map((key) => {
      const path = pathText([...issue.path, key.slice(0, 80)]);
      const allowed = names.join(', ');
      const value = shown(valueAt(given, [...issue.path, key]));
      const message = `${path} is not known; allowed: ${allowed}.`;
      return { path, value, allowed, message, remedy: `Leave ${path} out.` };
    });
  }
  const field = fieldAt(whole, issue.path);
  const unit = unitOf(issue.path);
  const path = pathText(issue.path);
  const name = path === '' ? 'The body' : path;
  const allowed = (field && allowedWords(field, unit)) ?? inWords(issue.message);
  const value = valueAt(given, issue.path);
  const message = `${name} ${valueText(value, unit)}; allowed: ${allowed}.`;
  const leaf = issue.path.at(-1);
  const needed =
    leaf === undefined ||
    typeof leaf === 'number' ||
    (fieldAt(whole, issue.path.slice(0, -1))?.required?.includes(String(leaf)) ?? false);
  const remedy = `Send ${path === '' ? 'the body' : path} as ${allowed}${needed ? '' : ', or leave it out'}.`;
  return [{ path, value: shown(value), allowed, message, remedy }];
}

/** `duties.0.duty` */
const pathText = (path: readonly PropertyKey[]) => path.map(String).join('.');

function inWords(message: string): string {
  return message.charAt(0).toLowerCase() + message.slice(1);
}

function valueText(value: unknown, unit: string): string {
  if (value === undefined) return 'is left out';
  if (typeof value === 'number') return `is ${value}${unit === '' ? '' : ` ${unit}`}`;
  if (typeof value === 'string') {
    return value.length > 80 ? `has ${value.length} characters` : `is "${value}"`;
  }
  if (Array.isArray(value)) return `is a list of ${value.length}`;
  return typeof value === 'object' && value !== null ? 'is an object' : `is ${value}`;
}

function valueAt(given: unknown, path: readonly PropertyKey[]): unknown {
  let value = given;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = Object.hasOwn(value, step) ? (value as Record<PropertyKey, unknown>)[step] : undefined;
  }
  return value;
}

function shown(value: unknown): unknown {
  if (typeof value === 'string') return value.slice(0, 80);
  return typeof value === 'object' && value !== null ? undefined : value;
}
