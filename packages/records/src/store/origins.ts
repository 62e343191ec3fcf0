/** Whose a value is once it has changed: what a person writes by hand is no longer a list's. */
import { isDeepStrictEqual } from 'node:util';
import {
  defaultOf,
  hasImported,
  isFilledIn,
  type Kind,
  type RecordOrigin,
} from '../model/index.ts';

type Draft = Readonly<Record<string, unknown>>;
type Origins = Record<string, RecordOrigin>;

/** Fields that say where a record belongs, and have no origin of their own. */
const withoutOrigin: ReadonlySet<string> = new Set(['origins', 'externalSource', 'externalId']);

/**
 * Origins joined by field; one given as undefined is taken away. What is no such list is handed on
 * as it is, for the schema to refuse.
 */
export function joinedOrigins(before: unknown, given: unknown): unknown {
  if (given === undefined) return before;
  if (typeof given !== 'object' || given === null || Array.isArray(given)) return given;
  const joined = Object.entries({ ...(before as object), ...given });
  return Object.fromEntries(joined.filter(([, origin]) => origin !== undefined));
}

/**
 * What a list has changed: a field whose value is another one, and whose origin the list does not
 * give, loses the origin of the value before.
 * @param given origins that came with the change
 */
export function originsAfterList(before: Draft, after: Draft, given: unknown): Origins {
  const origins = { ...(after.origins as Origins) };
  for (const field of changedFields(before, after)) {
    if (originIn(given, field) === undefined) delete origins[field];
  }
  return origins;
}

/**
 * What a person has changed: the value is the department's own unless another origin came with it.
 * An origin that is sent back as it was read says nothing of the new value. Where the absence of an
 * origin would not tell that a person was here, since the field is empty now, or as the schema fills
 * it in, or the record's list has marked nothing, the origin says so: so that a list that is imported again can leave it alone.
 */
export function originsAfterHand(
  kind: Kind,
  before: Draft,
  after: Draft,
  given: unknown,
  now = new Date(),
): Origins {
  const origins = { ...(after.origins as Origins) };
  // A list that marked nothing: what has no mark reads as the list's.
  const isOfList = before.externalSource !== undefined && !hasImported(before.origins as Origins);
  for (const field of changedFields(before, after)) {
    const stated = originIn(given, field);
    if (stated !== undefined && !isDeepStrictEqual(stated, originIn(before.origins, field))) {
      continue;
    }
    delete origins[field];
    const value = after[field];
    if (value !== undefined && !isDefault(kind, field, value) && !isOfList) continue;
    const text = value === undefined ? 'cleared by hand' : 'entered by hand';
    origins[field] = { kind: 'department', text, date: now.toISOString().slice(0, 10) };
  }
  return origins;
}

/**
 * Of a record that a person adds: a value that is also the schema's own was entered all the same, and
 * its origin says so.
 */
export function originsOfNew(kind: Kind, given: Draft, fields: Draft, now = new Date()): Origins {
  const origins = { ...(fields.origins as Origins) };
  for (const field of Object.keys(given)) {
    if (given[field] === undefined || !isFilledIn(kind, fields, field)) continue;
    const date = now.toISOString().slice(0, 10);
    origins[field] = { kind: 'department', text: 'entered by hand', date };
  }
  return origins;
}

/** True where the value is the one that the schema gives a field that was left out. */
export function isDefault(kind: Kind, field: string, value: unknown): boolean {
  const filledIn = defaultOf(kind, field);
  return filledIn !== undefined && isDeepStrictEqual(filledIn, value);
}

function changedFields(before: Draft, after: Draft): string[] {
  const fields = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...fields].filter(
    (field) => !withoutOrigin.has(field) && !isDeepStrictEqual(before[field], after[field]),
  );
}

function originIn(origins: unknown, field: string): unknown {
  return (origins as Draft | undefined)?.[field];
}
