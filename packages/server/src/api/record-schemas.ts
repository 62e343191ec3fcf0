/** The records' own schemas, as the OpenAPI document shows them. */
import { z } from '@hono/zod-openapi';
import { envelopeSchema, type Kind, recordSchemas } from '@plugside/records';

/** A record's fields as given. */
export function fieldsSchema(kind: Kind): z.ZodObject {
  const schema: z.ZodObject = recordSchemas[kind];
  // Any JSON at all: written out it would name itself without end.
  return kind === 'settings' ? schema.extend({ value: z.unknown() }) : schema;
}

/** Any of them, or null to clear one. */
export function changesSchema(kind: Kind): z.ZodObject {
  return fieldsSchema(kind).partial();
}

/** A record as stored. */
export function storedSchema(kind: Kind): z.ZodObject {
  return fieldsSchema(kind).extend(envelopeSchema.shape);
}

/** A record as it was just written. */
export function writtenSchema(kind: Kind): z.ZodObject {
  if (kind !== 'flow-tests') return storedSchema(kind);
  return storedSchema(kind).extend({
    remarks: z.array(z.string()).optional().openapi({
      description:
        'Why plans cannot use the test, which is kept all the same; left out where they can',
    }),
  });
}

/** A page of them. */
export function pageSchema(kind: Kind): z.ZodObject {
  return z.object({
    records: z.array(storedSchema(kind)),
    total: z.int().openapi({ description: 'In all the pages together' }),
    next: z.string().optional().openapi({ description: 'For `after`; left out on the last page' }),
  });
}
