import { createWriteStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import type { Context } from 'hono';
import { limitedBody } from '../api/limited-body.ts';
import { ProblemError } from '../problem.ts';

/** The most that an upload may hold [bytes]. */
export const UPLOAD_LIMIT_BYTES = 200 * 1_048_576;

/**
 * Writes the request's body to a file as it comes; nothing is left of one that is refused or cut
 * short.
 * @throws ProblemError 413 for too many bytes, 400 for none or a sender that went away
 */
export async function receiveUpload(c: Context, path: string): Promise<void> {
  let bytes = 0;
  const counted = async function* () {
    for await (const chunk of limitedBody(c, UPLOAD_LIMIT_BYTES)) {
      bytes += chunk.byteLength;
      yield chunk;
    }
  };
  try {
    await pipeline(counted, createWriteStream(path, { flags: 'wx', mode: 0o600 }));
    if (bytes === 0) {
      throw new ProblemError({
        status: 400,
        title: 'No file',
        detail: 'The body is empty; send the file itself as the body.',
      });
    }
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  }
}

/**
 * The uploaded file's name for people, from `?name=`; it names no place on this machine.
 * @throws ProblemError 400 where it is left out
 */
export function uploadName(c: Context): string {
  const name = (c.req.query('name') ?? '').split(/[\\/]/).at(-1)?.trim() ?? '';
  if (name !== '' && name.length <= 200 && !/\p{Cc}/u.test(name)) return name;
  throw new ProblemError({
    status: 400,
    title: 'No name',
    detail: `name is "${name.slice(0, 80)}"; give the file's name, up to 200 characters, as ?name=list.csv.`,
  });
}
