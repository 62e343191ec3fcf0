/** What a stack of cards is asked for with, checked. */
import { z } from '@hono/zod-openapi';
import { ProblemError } from '../problem.ts';
import { paperSchema, unitsSchema } from './paper-query.ts';

/** A county's worth; more go into several files. */
export const MOST_CARDS = 5000;

export const cardsRequestSchema = z
  .strictObject({
    hydrantIds: z
      .array(z.string().max(40))
      .min(1)
      .max(MOST_CARDS)
      .optional()
      .openapi({ description: `In that order, ${MOST_CARDS} at most; all by name where left out` }),
    attackId: z.string().max(40).optional().openapi({ description: 'Rig at the fire' }),
    boosterId: z.string().max(40).optional().openapi({ description: 'Rig at the hydrant' }),
    paper: paperSchema.default('letter'),
    units: unitsSchema.default('us'),
  })
  .openapi('HydrantCardsRequest');

export type CardsBody = z.infer<typeof cardsRequestSchema>;

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
