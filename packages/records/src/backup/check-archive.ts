/** Is the archive whole, and one that we can read? Looked at before any database is touched. */
import { createHash } from 'node:crypto';
import { ArchiveError } from './errors.ts';
import { MANIFEST, MANIFEST_SUM, type Manifest, manifestSchema, newestFormat } from './manifest.ts';
import { damaged, readZip, type ZipReader } from './zip-reader.ts';

export interface CheckedArchive {
  manifest: Manifest;
  zip: ZipReader;
}

/** Reads all of it and compares every checksum. @throws ArchiveError */
export async function checkArchive(path: string): Promise<CheckedArchive> {
  const zip = await readZip(path);
  if (!zip.names.includes(MANIFEST)) {
    throw new ArchiveError(
      `${path} is no archive of records: it has no ${MANIFEST}. Name one that "records backup" wrote.`,
    );
  }
  const text = await readAll(zip, MANIFEST);
  const sum = (await readAll(zip, MANIFEST_SUM)).toString('utf8').slice(0, 64);
  if (sum !== sha256(text)) throw damaged(path, `${MANIFEST} is not as it was written`);
  const manifest = parseManifest(path, text.toString('utf8'));
  const { terrain, drills } = manifest;
  const files = [...manifest.files, ...(terrain ? [terrain] : []), ...(drills ? [drills] : [])];
  for (const { name, sha256: wanted } of files) {
    const hash = createHash('sha256');
    for await (const piece of zip.read(name)) hash.update(piece);
    if (hash.digest('hex') !== wanted) throw damaged(path, `${name} is not as it was written`);
  }
  return { manifest, zip };
}

function parseManifest(path: string, text: string): Manifest {
  const given: unknown = JSON.parse(text);
  const { format } = given as { format?: unknown };
  if (typeof format === 'number' && format > newestFormat) {
    throw new ArchiveError(
      `${path} was written by a newer version of Plugside (archive format ${format}; this version reads up to ${newestFormat}). ` +
        'Nothing was restored. Use that version or a later one.',
    );
  }
  const result = manifestSchema.safeParse(given);
  if (!result.success) throw damaged(path, `${MANIFEST} is not an archive's`, result.error);
  return result.data;
}

async function readAll(zip: ZipReader, name: string): Promise<Buffer> {
  const pieces: Uint8Array[] = [];
  for await (const piece of zip.read(name)) pieces.push(piece);
  return Buffer.concat(pieces);
}

function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
