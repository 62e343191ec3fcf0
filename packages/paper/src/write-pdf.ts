import { randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

/**
 * Writes all of a PDF or none of it: into a new file beside it, which then takes its name.
 * @param signal aborting it leaves what was there before
 * @throws what the PDF's making or the disk throws
 */
export async function writePdf(
  path: string,
  pdf: AsyncIterable<Uint8Array>,
  signal?: AbortSignal,
): Promise<void> {
  const beside = join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}.part`);
  try {
    const file = createWriteStream(beside, { flags: 'wx', flush: true });
    await pipeline(Readable.from(pdf, { objectMode: false }), file, { signal });
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}
