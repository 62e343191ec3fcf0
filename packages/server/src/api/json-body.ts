import type { Context } from 'hono';
import { ProblemError } from '../problem.ts';
import { limitedBody } from './limited-body.ts';

/** A record with a long plan or street fits with room to spare [bytes]. */
export const JSON_LIMIT_BYTES = 1_048_576;

/** How long a body of that size may take to come [ms]. */
const BODY_WAIT_MS = 30_000;

const DEPTH_LIMIT = 100;

const JSON_TYPE = /^application\/(json|[\w.+-]+\+json)\s*(;|$)/i;

/**
 * The request's body as an object.
 * @throws ProblemError 415 for another type, 413 for too many bytes, 408 for one that does not
 * come, 400 for what is no JSON or no object
 */
export async function jsonObject(c: Context): Promise<Record<string, unknown>> {
  const type = c.req.header('content-type') ?? '';
  if (!JSON_TYPE.test(type)) {
    throw new ProblemError({
      status: 415,
      title: 'Not JSON',
      detail: `Content-Type is ${type === '' ? 'left out' : `"${type}"`}; send application/json.`,
      headers: { Accept: 'application/json' },
    });
  }
  const value = parse(await readText(c));
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw notJson('The body is no object; send one as {"field": value}.');
  }
  return value as Record<string, unknown>;
}

async function readText(c: Context): Promise<string> {
  const chunks: Uint8Array[] = [];
  const signal = AbortSignal.timeout(BODY_WAIT_MS);
  for await (const chunk of limitedBody(c, JSON_LIMIT_BYTES, signal)) chunks.push(chunk);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
  } catch {
    throw notJson('The body is not UTF-8; send JSON encoded as UTF-8.');
  }
}

function parse(text: string): unknown {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw notJson(`The body is no JSON: ${(error as Error).message}.`);
  }
  if (isDeeperThan(value, DEPTH_LIMIT)) {
    throw notJson(`The body is nested deeper than ${DEPTH_LIMIT} levels; no record is.`);
  }
  return value;
}

/** Without recursion: the nesting is what is in doubt. */
function isDeeperThan(value: unknown, limit: number): boolean {
  let level = [value];
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth > limit) return true;
    level = level.flatMap((one) =>
      typeof one === 'object' && one !== null ? (Object.values(one) as unknown[]) : [],
    );
  }
  return false;
}

function notJson(detail: string): ProblemError {
  return new ProblemError({ status: 400, title: 'Not readable', detail });
}
