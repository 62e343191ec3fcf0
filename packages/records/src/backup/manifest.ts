/** What an archive says of itself: which files it holds, how many records in each, and their checksums. */
import { z } from 'zod';
import { type Kind, kinds } from '../model/index.ts';

/** Goes up where an older Plugside could not read the archive. */
export const archiveFormat = 1;

export const MANIFEST = 'manifest.json';
/** SHA-256 of the manifest, as `sha256sum` writes and checks it. */
export const MANIFEST_SUM = 'manifest.json.sha256';

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);

export const manifestSchema = z.object({
  plugside: z.literal('records'),
  format: z.literal(archiveFormat),
  madeAt: z.iso.datetime(),
  files: z.array(
    z.strictObject({
      name: z.string(),
      kind: z.enum(kinds as readonly [Kind, ...Kind[]]),
      records: z.int().min(0),
      sha256: sha256Schema,
    }),
  ),
});

export type Manifest = z.infer<typeof manifestSchema>;

/** One record a line, as JSON. */
export function fileOf(kind: Kind): string {
  return `${kind}.jsonl`;
}
