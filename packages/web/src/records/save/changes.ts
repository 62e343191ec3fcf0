/** What a change writes: only what is another than before. */
import type { Values } from '../form/draft.ts';
import { sameValue } from '../same-value.ts';

/** The store's own, never written by hand. */
const KEPT_BY_STORE: ReadonlySet<string> = new Set(['id', 'version', 'createdAt', 'updatedAt']);

/**
 * Fields of a record that are another now; null for one that is no longer given, so that the
 * clearing reaches the record.
 */
export function changesBetween(before: Values, after: Values): Record<string, unknown> {
  const fields = new Set([...Object.keys(before), ...Object.keys(after)]);
  const changes: Record<string, unknown> = {};
  for (const field of fields) {
    if (KEPT_BY_STORE.has(field) || sameValue(before[field], after[field])) continue;
    changes[field] = after[field] === undefined ? null : after[field];
  }
  return changes;
}
