/** What an archive says of itself: which files it holds, how many records in each, and their checksums. */
import { z } from 'zod';
import { type Kind, kinds } from '../model/index.ts';

/**
 * Goes up where an older Plugside could not read the archive: 2 with terrain in it, 3 with drills,
 * which one that knows less would leave out without a word.
 */
export const archiveFormats = { records: 1, withTerrain: 2, withDrills: 3 } as const;
export const newestFormat = archiveFormats.withDrills;

export const MANIFEST = 'manifest.json';
/** SHA-256 of the manifest, as `sha256sum` writes and checks it. */
export const MANIFEST_SUM = 'manifest.json.sha256';

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);

export const manifestSchema = z.object({
  plugside: z.literal('records'),
  format: z.literal(Object.values(archiveFormats)),
  madeAt: z.iso.datetime(),
  files: z.array(
    z.strictObject({
      name: z.string(),
      kind: z.enum(kinds as readonly [Kind, ...Kind[]]),
      records: z.int().min(0),
      sha256: sha256Schema,
    }),
  ),
  /** Left out where no terrain was loaded. */
  terrain: z
    .strictObject({
      name: z.literal('terrain.tif'),
      title: z.string(),
      unit: z.enum(['m', 'ft']).optional(),
      bytes: z.int().min(0),
      addedAt: z.iso.datetime(),
      sha256: sha256Schema,
    })
    .optional(),
  /** Left out where nobody has drilled. */
  drills: z
    .strictObject({ name: z.literal('drills.jsonl'), runs: z.int().min(1), sha256: sha256Schema })
    .optional(),
});

/** Drills with their logs, one a line, as JSON. */
export const DRILLS = 'drills.jsonl';

/** The district's terrain file, as it was loaded. */
export const TERRAIN = 'terrain.tif';

export type Manifest = z.infer<typeof manifestSchema>;

/** One record a line, as JSON. */
export function fileOf(kind: Kind): string {
  return `${kind}.jsonl`;
}
