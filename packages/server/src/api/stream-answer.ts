import { createReadStream } from 'node:fs';
import { rm, stat } from 'node:fs/promises';
import type { Context } from 'hono';

interface Download {
  type: string;
  /** What a browser saves it as; letters, digits, dots and hyphens. */
  name: string;
}

/** Sends text as it is made, never holding all of it. */
export function answerText(c: Context, parts: AsyncIterable<string>, download: Download): Response {
  setHeaders(c, download);
  return c.body(streamOf(parts));
}

/** Sends a file and removes it, sent or not. */
export function answerFile(c: Context, path: string, download: Download): Promise<Response> {
  return answerKeptFile(c, path, download, () => void rm(path, { force: true }));
}

/** Sends a file that stays, to be sent again. */
export async function answerKeptFile(
  c: Context,
  path: string,
  download: Download,
  onClosed?: () => void,
): Promise<Response> {
  setHeaders(c, download);
  c.header('Content-Length', String((await stat(path)).size));
  const file = createReadStream(path);
  if (onClosed) file.once('close', onClosed);
  return c.body(ReadableStream.from(file) as ReadableStream);
}

/** Sends bytes that are all there. */
export function answerBytes(c: Context, bytes: Uint8Array, download: Download): Response {
  setHeaders(c, download);
  c.header('Content-Length', String(bytes.length));
  return c.body(bytes as Uint8Array<ArrayBuffer>);
}

function setHeaders(c: Context, { type, name }: Download): void {
  c.header('Content-Type', type);
  c.header('Content-Disposition', `attachment; filename="${name}"`);
  c.header('Cache-Control', 'no-store');
}

/** Small parts are joined: a chunk for each row would cost more than the row. */
async function* inChunks(parts: AsyncIterable<string>): AsyncGenerator<Uint8Array> {
  const encoder = new TextEncoder();
  let pending = '';
  for await (const part of parts) {
    pending += part;
    if (pending.length < 65_536) continue;
    yield encoder.encode(pending);
    pending = '';
  }
  if (pending !== '') yield encoder.encode(pending);
}

function streamOf(parts: AsyncIterable<string>): ReadableStream<Uint8Array> {
  return ReadableStream.from(inChunks(parts)) as ReadableStream<Uint8Array>;
}
