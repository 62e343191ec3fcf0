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
export async function answerFile(c: Context, path: string, download: Download): Promise<Response> {
  setHeaders(c, download);
  c.header('Content-Length', String((await stat(path)).size));
  const file = createReadStream(path);
  file.once('close', () => void rm(path, { force: true }));
  return c.body(ReadableStream.from(file) as ReadableStream);
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
