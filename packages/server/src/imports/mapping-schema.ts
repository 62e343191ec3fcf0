import { z } from '@hono/zod-openapi';
import { type ImportKind, importKinds, type Mapping } from '@plugside/records';

const column = z.string().min(1).max(500);

const fieldMappingSchema = z.strictObject({
  field: z
    .string()
    .max(80)
    .openapi({ description: 'Of the record, or a part: `flowing[0].pitotPsi`' }),
  columns: z.array(column).min(1).max(50),
  join: z.enum(['first', 'space', 'named']).optional(),
  unit: z.string().max(20).optional().openapi({ description: 'Of numbers that come without one' }),
  decimal: z.enum(['point', 'comma']).optional(),
  words: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])).optional(),
  confidence: z.number().min(0).max(1).default(1),
  why: z.string().max(1000).default('Chosen by hand.'),
});

const placeMappingSchema = z.strictObject({
  geometry: z.boolean(),
  longitude: column.optional(),
  latitude: column.optional(),
  point: column.optional(),
  pointOrder: z.enum(['latitude first', 'longitude first']).optional(),
  crs: z.string().min(1).max(10_000).openapi({ example: 'EPSG:4326' }),
  swapped: z.enum(['refuse', 'exchange']),
  farOff: z.enum(['refuse', 'take']),
  near: z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]).optional(),
});

/** Which column of a file means what. */
export const mappingSchema = z
  .strictObject({
    kind: z.enum(importKinds as readonly ImportKind[] as [ImportKind, ...ImportKind[]]),
    sourceName: z.string().trim().min(1).max(200),
    idColumn: column.optional(),
    sourceColumn: column.optional(),
    recordColumn: column.optional(),
    fields: z.array(fieldMappingSchema).max(200),
    place: placeMappingSchema.optional(),
    only: z
      .array(z.strictObject({ column, values: z.array(z.string().max(500)).max(200) }))
      .max(50)
      .optional(),
    dateOrder: z.enum(['day first', 'month first']).optional(),
    unused: z.array(column).max(2000).default([]),
    notices: z.array(z.string().max(2000)).max(500).default([]),
  })
  .openapi('Mapping') satisfies z.ZodType<Mapping>;
