import { createHash } from 'node:crypto';

/**
 * A key for a row whose list has no ids: the same for the same name and place, on any machine. Places
 * are rounded to a ten-millionth of a degree (about a centimetre), so that a number written anew does
 * not make another record.
 */
export function stableKey(parts: readonly (string | number | undefined)[]): string {
  const text = parts
    .map((part) => (typeof part === 'number' ? part.toFixed(7) : (part ?? '')))
    .join('\u001f');
  return `~${createHash('sha256').update(text).digest('hex').slice(0, 24)}`;
}
