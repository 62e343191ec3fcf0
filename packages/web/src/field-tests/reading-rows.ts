/** Rows that come and go in a form: each keeps its own key. */

export interface Row<T> {
  key: number;
  value: T;
}

let next = 0;

export const rowOf = <T>(value: T): Row<T> => ({ key: next++, value });

/** A row of a form that was left, under the key it had. */
export function rowAgain<T>(key: number, value: T): Row<T> {
  next = Math.max(next, key + 1);
  return { key, value };
}

/** The rows with one changed. */
export function withRow<T>(rows: readonly Row<T>[], key: number, change: Partial<T>): Row<T>[] {
  return rows.map((row) => (row.key === key ? { key, value: { ...row.value, ...change } } : row));
}

/** Defined values only: a field left empty is left out of the record. */
export function written<T extends object>(value: T): T {
  return Object.fromEntries(
    Object.entries(value).filter(([, each]) => each !== undefined && each !== ''),
  ) as T;
}

/** A record's own fields, without what the store keeps. */
export function ownFields<T extends object>(record: T): T {
  const { id, version, createdAt, updatedAt, ...fields } = record as Record<string, unknown>;
  return fields as T;
}

/**
 * What to say of a row that was begun and not finished, so that no reading is lost in silence;
 * null where every row is either whole or empty.
 * @param begun values whose presence means that the row was begun
 * @param needed values that make it whole
 */
export function unfinished<T extends object>(
  rows: readonly Row<T>[],
  begun: readonly (keyof T)[],
  needed: readonly (keyof T)[],
): string | null {
  const at = rows.findIndex(
    ({ value }) =>
      begun.some((name) => value[name] !== undefined) &&
      needed.some((name) => value[name] === undefined),
  );
  return at < 0 ? null : `Reading ${at + 1} is not whole. Fill it in, or remove it.`;
}
