import type { z } from '@hono/zod-openapi';
import { ProblemError } from '../problem.ts';

/** @throws ProblemError 422 with every fault */
export function checkedBody<T>(schema: z.ZodType<T>, given: unknown): T {
  const read = schema.safeParse(given);
  if (read.success) return read.data;
  const issues = read.error.issues.slice(0, 20).map((issue) => {
    const path = issue.path.join('.');
    return {
      path,
      value: shown(valueAt(given, issue.path)),
      allowed: issue.message,
      message: `${path === '' ? 'The body' : path}: ${issue.message}.`,
      remedy: 'Send an allowed value; /api/openapi.json tells each.',
    };
  });
  throw new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: issues.map(({ message }) => message).join(' '),
    extra: { issues },
  });
}

function valueAt(given: unknown, path: readonly PropertyKey[]): unknown {
  let value = given;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}

function shown(value: unknown): unknown {
  if (typeof value === 'string') return value.slice(0, 80);
  return typeof value === 'object' && value !== null ? undefined : value;
}
