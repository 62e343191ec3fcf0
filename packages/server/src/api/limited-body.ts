import type { Context } from 'hono';
import { ProblemError } from '../problem.ts';

/**
 * The request's body as it comes, refused as soon as it is known to be too long: by its
 * Content-Length before any of it is read, else at the byte too many.
 * @throws ProblemError 413, 408 when the signal aborts first, 400 when the sender goes away
 */
export async function* limitedBody(
  c: Context,
  limitBytes: number,
  signal?: AbortSignal,
): AsyncGenerator<Uint8Array> {
  const announced = Number(c.req.header('content-length') ?? 0);
  if (announced > limitBytes) throw tooLong(limitBytes);
  const body = c.req.raw.body;
  if (!body) return;
  const reader = body.getReader();
  const aborted = new Promise<never>((_, reject) => {
    signal?.addEventListener('abort', () => reject(tooSlow()), { once: true });
  });
  aborted.catch(() => {});
  let read = 0;
  try {
    for (;;) {
      const { done, value } = await Promise.race([reader.read(), aborted]);
      if (done) return;
      read += value.byteLength;
      if (read > limitBytes) throw tooLong(limitBytes);
      yield value;
    }
  } catch (error) {
    if (error instanceof ProblemError) throw error;
    throw cutShort();
  } finally {
    reader.cancel().catch(() => {});
  }
}

function tooLong(limitBytes: number): ProblemError {
  const limit =
    limitBytes >= 1_048_576 ? `${limitBytes / 1_048_576} MB` : `${limitBytes / 1024} kB`;
  return new ProblemError({
    status: 413,
    title: 'Too long',
    detail: `The body is longer than ${limit}, the most that is taken here. Send it in parts.`,
    headers: { Connection: 'close' },
  });
}

function tooSlow(): ProblemError {
  return new ProblemError({
    status: 408,
    title: 'Too slow',
    detail: 'The body did not come in time. Send the request again.',
    headers: { Connection: 'close' },
  });
}

function cutShort(): ProblemError {
  return new ProblemError({
    status: 400,
    title: 'Cut short',
    detail: 'The body ended before all of it came. Send the request again.',
  });
}
