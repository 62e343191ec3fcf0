import type { Context } from 'hono';
import { ProblemError } from '../problem.ts';

/** A record's version as an entity tag. */
export function versionTag(version: number): string {
  return `"${version}"`;
}

/**
 * The version that a change was made on, from If-Match. A weak tag counts too: compressing an
 * answer weakens its tag, and the version is the same.
 * @throws ProblemError 428 where it is left out, 400 where it is no version
 */
export function requiredVersion(c: Context): number {
  const given = c.req.header('if-match')?.trim();
  if (!given) {
    throw new ProblemError({
      status: 428,
      title: 'Version needed',
      detail:
        'If-Match is left out. Give the version that you read, for instance If-Match: "3", so ' +
        'that nobody else’s change is overwritten.',
    });
  }
  const version = Number(/^(?:W\/)?"(\d{1,15})"$/.exec(given)?.[1] ?? Number.NaN);
  if (Number.isSafeInteger(version)) return version;
  throw new ProblemError({
    status: 400,
    title: 'No version',
    detail: `If-Match is ${given.slice(0, 80)}; give one version in quotes, for instance If-Match: "3".`,
  });
}
