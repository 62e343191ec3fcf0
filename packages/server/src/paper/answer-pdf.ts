import type { Context } from 'hono';
import { answerBytes } from '../api/stream-answer.ts';

/** A document's media type. */
export const PDF = 'application/pdf';

/**
 * Sends a document when it is printed. Where whoever asked goes away meanwhile, the printing ends.
 * @param name what a browser saves it as
 */
export async function answerPdf(
  c: Context,
  name: string,
  print: (signal: AbortSignal) => Promise<Uint8Array>,
): Promise<Response> {
  const { signal } = c.req.raw;
  try {
    return answerBytes(c, await print(signal), { type: PDF, name });
  } catch (error) {
    if (signal.aborted) return c.body(null, 408);
    throw error;
  }
}
