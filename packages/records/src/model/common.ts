/** What every record has. Units inside: gpm, psi, ft, in, gal; places in degrees WGS 84; dates ISO. */
import { z } from 'zod';

/** Where a value comes from; shown beside it. */
export const originSchema = z.strictObject({
  kind: z.enum([
    'measured',
    'maker',
    'standard',
    'department',
    'common practice',
    'default',
    'estimated',
    'imported',
  ]),
  text: z.string().min(1).max(500),
  date: z.iso.date().optional(),
});

/** A record's own name in the department's words: "H-114", "Engine 7". */
export const nameSchema = z.string().trim().min(1).max(120);
export const noteSchema = z.string().max(4000);
export const idSchema = z.ulid();
export const dateSchema = z.iso.date();
export const longitudeSchema = z.number().min(-180).max(180);
export const latitudeSchema = z.number().min(-90).max(90);
/** [ft] above the datum of the department's survey. */
export const elevationFtSchema = z.number().min(-1500).max(20000);

/** Kept by the store, never written by hand. */
export const envelopeSchema = z.strictObject({
  id: idSchema,
  /** Goes up by one at each change; a change must name the version that it was made on. */
  version: z.int().min(1),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
});

/** Fields that any record may carry besides its own. */
export const sharedShape = {
  note: noteSchema.optional(),
  /** By field name. What a field without one comes from `originOf` tells. */
  origins: z.record(z.string(), originSchema).default({}),
  /** Which list it came from and its key there: importing again updates instead of doubling. */
  externalSource: z.string().max(200).optional(),
  externalId: z.string().max(200).optional(),
};

export type RecordOrigin = z.infer<typeof originSchema>;
export type Envelope = z.infer<typeof envelopeSchema>;
