/** Two people changed one record: what differs, and what to write once somebody has chosen. */
import type { Values } from '../form/draft.ts';
import { sameValue } from '../same-value.ts';

export type Side = 'mine' | 'theirs';

export interface ConflictRow {
  /** A field, or `origins.<field>` for where its value comes from. */
  slot: string;
  /** Undefined: empty. */
  mine: unknown;
  theirs: unknown;
  changedBy: 'both' | 'me' | 'them';
}

const STORE_OWN: ReadonlySet<string> = new Set(['id', 'version', 'createdAt', 'updatedAt']);
const ORIGIN = 'origins.';

/** The field that a slot belongs to. */
export const fieldOf = (slot: string): string =>
  slot.startsWith(ORIGIN) ? slot.slice(ORIGIN.length) : slot;

/**
 * What differs between the record as this person would have it and as it is now.
 * @param before the record that the change was made on
 * @param changes what was to be written; null clears
 * @param current the record as somebody else left it
 */
export function conflictRows(before: Values, changes: Values, current: Values): ConflictRow[] {
  const base = slots(before);
  const now = slots(current);
  const mine = withChanges(base, changes);
  const names = [...new Set([...base.keys(), ...now.keys(), ...mine.keys()])];
  const rows = names
    .filter((slot) => !sameValue(mine.get(slot), now.get(slot)))
    .map((slot): ConflictRow => {
      const byMe = !sameValue(mine.get(slot), base.get(slot));
      const byThem = !sameValue(now.get(slot), base.get(slot));
      const changedBy = byMe && byThem ? 'both' : byMe ? 'me' : 'them';
      return { slot, mine: mine.get(slot), theirs: now.get(slot), changedBy };
    });
  // A value that they changed took its origin with it: one row tells both.
  const told = new Set(rows.map(({ slot }) => slot));
  return rows.filter(
    ({ slot, changedBy }) =>
      !(slot.startsWith(ORIGIN) && changedBy === 'them' && told.has(fieldOf(slot))),
  );
}

export type Choices = Readonly<Record<string, Side>>;

/** Before anybody chose: what one alone changed stays; what both changed is open. */
export function firstChoices(rows: readonly ConflictRow[]): Choices {
  return Object.fromEntries(
    rows.flatMap(({ slot, changedBy }) =>
      changedBy === 'both' ? [] : [[slot, changedBy === 'me' ? 'mine' : 'theirs'] as const],
    ),
  );
}

/** All mine keeps what only they changed: nobody here has written anything else there. */
export function allOf(side: Side, rows: readonly ConflictRow[]): Choices {
  return Object.fromEntries(
    rows.map(({ slot, changedBy }) => [slot, changedBy === 'them' ? 'theirs' : side]),
  );
}

/** Fields that still want a choice. */
export const openRows = (rows: readonly ConflictRow[], choices: Choices): readonly ConflictRow[] =>
  rows.filter(({ slot }) => choices[slot] === undefined);

/** What is to be written on the record as it is now; empty where theirs is kept in everything. */
export function chosenChanges(
  rows: readonly ConflictRow[],
  choices: Choices,
): Record<string, unknown> {
  const changes: Record<string, unknown> = {};
  const origins: Record<string, unknown> = {};
  for (const { slot, mine } of rows) {
    if (choices[slot] !== 'mine') continue;
    const value = mine === undefined ? null : mine;
    if (slot.startsWith(ORIGIN)) origins[fieldOf(slot)] = value;
    else changes[slot] = value;
  }
  if (Object.keys(origins).length > 0) changes.origins = origins;
  return changes;
}

function slots(record: Values): Map<string, unknown> {
  const all = new Map<string, unknown>();
  for (const [field, value] of Object.entries(record)) {
    if (STORE_OWN.has(field) || value === undefined) continue;
    if (field !== 'origins') all.set(field, value);
    else {
      for (const [of, origin] of Object.entries(value as object)) all.set(ORIGIN + of, origin);
    }
  }
  return all;
}

function withChanges(base: Map<string, unknown>, changes: Values): Map<string, unknown> {
  const mine = new Map(base);
  const put = (slot: string, value: unknown) => {
    if (value === null || value === undefined) mine.delete(slot);
    else mine.set(slot, value);
  };
  for (const [field, value] of Object.entries(changes)) {
    if (field === 'origins') {
      for (const [of, origin] of Object.entries((value ?? {}) as object)) put(ORIGIN + of, origin);
    } else put(field, value);
  }
  return mine;
}
