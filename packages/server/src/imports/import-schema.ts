import { z } from '@hono/zod-openapi';
import { importKinds } from '@plugside/records';
import { mappingSchema } from './mapping-schema.ts';

const refusalSchema = z.object({
  code: z.string(),
  row: z.int().openapi({ description: 'Line of a CSV file, else the feature, from 1' }),
  column: z.string().optional(),
  field: z.string().optional(),
  key: z.string().optional(),
  value: z.string().optional(),
  reason: z.string(),
  remedy: z.string(),
});

const reportSchema = z
  .object({
    kind: z.enum(importKinds),
    sourceName: z.string(),
    fileName: z.string(),
    dryRun: z.boolean(),
    rows: z.int(),
    added: z.int(),
    changed: z.int(),
    same: z.int(),
    skipped: z.int(),
    otherKinds: z.array(z.object({ kind: z.enum(importKinds), count: z.int() })).openapi({
      description: 'Of the skipped rows, those that are known to be of another kind',
    }),
    notedCount: z.int(),
    noted: z
      .array(
        z.object({
          row: z.int(),
          record: z.string(),
          what: z.enum(['cannot be used', 'kept in the note']),
          text: z.string(),
        }),
      )
      .openapi({ description: 'Rows that were taken and should be looked at; the first 1,000' }),
    refusedCount: z.int(),
    refused: z.array(refusalSchema).openapi({ description: 'The first 1,000' }),
    byReason: z.array(z.object({ code: z.string(), count: z.int(), example: z.string() })),
    keptCount: z.int().openapi({ description: 'Values that the department gave itself' }),
    kept: z.array(z.record(z.string(), z.unknown())),
    notices: z.array(z.string()),
  })
  .openapi('ImportReport');

/** How an import stands. */
export const importSchema = z
  .object({
    id: z.string(),
    name: z.string(),
    kind: z.enum(importKinds),
    state: z.enum(['reading', 'ready', 'running', 'done', 'cancelled', 'failed']),
    format: z.enum(['csv', 'geojson', 'shapefile']).nullable(),
    encoding: z.string().nullable(),
    delimiter: z.string().nullable(),
    columns: z.array(z.string()),
    hasGeometry: z.boolean(),
    crs: z.object({ crs: z.string(), from: z.string() }).nullable(),
    mapping: mappingSchema.nullable(),
    likelyKind: z.enum(importKinds).nullable().openapi({
      description: 'The kind that the columns tell of, where it is another',
    }),
    whereabouts: z
      .object({
        district: z.array(z.number()).length(4),
        places: z.array(z.tuple([z.number(), z.number()])),
        middle: z.tuple([z.number(), z.number()]),
        awayKm: z.number(),
      })
      .nullable()
      .openapi({
        description:
          'Where the first rows lie, beside the bounds (west, south, east, north) of what is on record; null where either is not known',
      }),
    sample: z
      .array(
        z.object({
          row: z.int(),
          values: z.record(z.string(), z.unknown()),
          understood: z.object({
            is: z.enum(['record', 'skipped', 'refused']),
            fields: z.record(z.string(), z.unknown()).optional(),
            refusal: refusalSchema.optional(),
          }),
        }),
      )
      .openapi({ description: 'The first rows as they stand and as understood' }),
    readShare: z.number().openapi({ description: 'Of the file, while it is read: 0 to 1' }),
    progress: z.object({ done: z.int(), total: z.int() }),
    elapsedMs: z.int().nullable(),
    mendedCount: z.int(),
    report: reportSchema.nullable(),
    hasRefusedFile: z.boolean(),
    failure: z.object({ detail: z.string(), remedy: z.string() }).nullable(),
  })
  .openapi('Import');

/** Refused rows with their cells, to be mended where they are shown. */
export const refusedRowsSchema = z
  .object({
    total: z.int(),
    rows: z
      .array(
        z.object({
          row: z.int(),
          values: z.record(z.string(), z.unknown()),
          refusal: refusalSchema,
        }),
      )
      .openapi({ description: 'At most the first 1,000' }),
  })
  .openapi('RefusedRows');

/** Cells and places written anew. */
export const mendSchema = z
  .strictObject({
    rows: z
      .array(
        z.strictObject({
          row: z.int().min(1),
          values: z.record(z.string().max(500), z.string().max(20_000)).optional(),
          place: z
            .strictObject({ longitude: z.string().max(60), latitude: z.string().max(60) })
            .optional()
            .openapi({
              description:
                'In place of the file’s geometry: degrees WGS 84 as text; both blank: the file’s own after all',
            }),
        }),
      )
      .min(1)
      .max(1000),
  })
  .openapi('MendedRows');
