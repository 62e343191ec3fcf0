/** What the store itself keeps of a record: id, version, times. */
import { monotonicFactory } from 'ulid';
import { type Fields, idSchema, type Kind, type Stored } from '../model/index.ts';

/** Rises within a millisecond too, so that order of id is order of making. */
export const newId = monotonicFactory();

export function newRecord<K extends Kind>(fields: Fields<K>): Stored<K> {
  const now = new Date().toISOString();
  return { id: newId(), version: 1, createdAt: now, updatedAt: now, ...fields };
}

export function changedRecord<K extends Kind>(current: Stored<K>, fields: Fields<K>): Stored<K> {
  const { id, version, createdAt } = current;
  const updatedAt = new Date().toISOString();
  return { id, version: version + 1, createdAt, updatedAt, ...fields };
}

/** Anything else is the id of nothing, and PostgreSQL fails at some texts. */
export function isId(text: string): boolean {
  return idSchema.safeParse(text).success;
}
