/** Pieces that the descriptions of routes share. */
import { type RouteConfig, z } from '@hono/zod-openapi';

type Responses = RouteConfig['responses'];

const issueSchema = z.object({
  path: z.string().openapi({ description: 'Where: `flowing[1].pitotPsi`' }),
  value: z.unknown().openapi({ description: 'As given' }),
  allowed: z.string().openapi({ description: 'What may stand there: `0 to 500`' }),
  message: z.string(),
  remedy: z.string(),
});

/** RFC 9457. */
export const problemSchema = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    instance: z.string(),
    issues: z.array(issueSchema).optional(),
    current: z
      .record(z.string(), z.unknown())
      .optional()
      .openapi({ description: 'The record as it is now' }),
    yours: z
      .record(z.string(), z.unknown())
      .optional()
      .openapi({ description: 'The version that the change was made on, and the fields it gave' }),
    by: z
      .array(
        z.object({
          kind: z.string(),
          field: z.string(),
          count: z.int(),
          ids: z.array(z.string()),
        }),
      )
      .optional()
      .openapi({ description: 'What refers to the record' }),
  })
  .openapi('Problem');

const told: Readonly<Record<number, string>> = {
  400: 'The request cannot be read',
  403: 'Asked for by another site’s page, or under a name that is not this server’s',
  404: 'Not there',
  409: 'Changed meanwhile, referred to, or a key that is taken; nothing was written',
  413: 'The body is too long',
  415: 'The body is of another type',
  422: 'A value is not accepted; nothing was written',
  428: 'If-Match is left out',
  503: 'Too much is asked for at once; ask again after Retry-After',
};

/** Problem documents by status; 403 and 500 may come from any route and are told once. */
export function problems(...statuses: number[]): Responses {
  return Object.fromEntries(
    statuses.map((status) => [
      status,
      {
        description: told[status] ?? 'The request fails',
        content: { 'application/problem+json': { schema: problemSchema } },
      },
    ]),
  );
}

/** A successful answer in JSON. */
export function json(description: string, schema: z.ZodType, status = 200): Responses {
  return { [status]: { description, content: { 'application/json': { schema } } } };
}

/** A successful answer in another type. */
export function body(description: string, type: string, status = 200): Responses {
  const schema = z.string().openapi({ format: 'binary' });
  return { [status]: { description, content: { [type]: { schema } } } };
}
