/** What a row changes in the record that is known already, and what it must leave as it is. */
import { isDeepStrictEqual } from 'node:util';
import { isDefault } from '../store/origins.ts';
import type { ImportKind } from './mapping/mapping.ts';
import type { KeptValue } from './report.ts';

type Draft = Record<string, unknown>;

export interface Difference {
  /** Fields to write, with the key and their origins. */
  changes: Draft;
  /** True where nothing of the record changes. */
  same: boolean;
  kept: Omit<KeptValue, 'row'>[];
}

const keyFields = new Set(['externalSource', 'externalId', 'origins']);

/**
 * Fields that say the same are left out, so that they keep the origin they have. A value that the
 * department gave itself (it does not come from an import) is kept and told, and so is a field that
 * it cleared; what the schema filled in by itself is no such value. A row exported at the version that the record still has was changed
 * by the department as well, and counts in full.
 */
export function differenceFrom(
  kind: ImportKind,
  current: Draft,
  row: Draft,
  exportedVersion?: number,
): Difference {
  const changes: Draft = {};
  const origins: Draft = {};
  const kept: Omit<KeptValue, 'row'>[] = [];
  const before = (current.origins ?? {}) as Record<string, { kind?: string } | undefined>;
  for (const [field, theirs] of Object.entries(row)) {
    if (keyFields.has(field) || theirs === undefined) continue;
    const ours = current[field];
    if (isDeepStrictEqual(ours, theirs)) continue;
    const stale = exportedVersion !== current.version;
    if (stale && isOwn(kind, field, ours, before[field]?.kind)) {
      kept.push({
        record: String(current.name ?? current.id),
        field,
        ours: ours === undefined ? 'cleared' : shown(ours),
        theirs: shown(theirs),
      });
      continue;
    }
    changes[field] = theirs;
    const origin = (row.origins as Draft | undefined)?.[field];
    if (origin !== undefined) origins[field] = origin;
  }
  const same = Object.keys(changes).length === 0;
  return {
    changes: {
      ...changes,
      ...(Object.keys(origins).length > 0 && { origins }),
      externalSource: row.externalSource,
      externalId: row.externalId,
    },
    same,
    kept,
  };
}

/** Whatever does not come from a list; of nothing and of what the schema fills in, only what is said to. */
function isOwn(kind: ImportKind, field: string, value: unknown, origin: string | undefined) {
  if (origin !== undefined) return origin !== 'imported' && origin !== 'default';
  return value !== undefined && !isDefault(kind, field, value);
}

const shown = (value: unknown) =>
  (typeof value === 'string' ? value : JSON.stringify(value)).slice(0, 200);
