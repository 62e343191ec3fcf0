/** Records to rows of a table and back, the same on both databases. */
import type { Kind, Stored } from '../model/index.ts';
import { type Column, tableOf } from './columns.ts';
import { derivedCells } from './derived.ts';

export type Engine = 'sqlite' | 'postgresql';
export type Cell = string | number | boolean | null;
export type Row = Readonly<Record<string, unknown>>;

/** One cell per column of the kind's table, and the derived ones after them. */
export function toCells(engine: Engine, kind: Kind, record: Stored<Kind>): Cell[] {
  const values = record as unknown as Record<string, unknown>;
  const cells = tableOf(kind).columns.map((column) => toCell(engine, column, values[column.field]));
  return [...cells, ...derivedCells(kind, values)];
}

export function toCell(engine: Engine, column: Column, value: unknown): Cell {
  if (value === undefined) return null;
  if (column.type === 'json') return JSON.stringify(value);
  // SQLite has no boolean of its own.
  if (column.type === 'boolean' && engine === 'sqlite') return value ? 1 : 0;
  return value as Cell;
}

export function fromRow<K extends Kind>(kind: K, row: Row): Stored<K> {
  const record: Record<string, unknown> = {};
  for (const { field, name, type } of tableOf(kind).columns) {
    const cell = row[name];
    if (cell === null || cell === undefined) continue;
    if (type === 'json') record[field] = JSON.parse(cell as string);
    else record[field] = type === 'boolean' ? Boolean(cell) : cell;
  }
  return record as Stored<K>;
}

/** A record's own fields, without what the store keeps. */
export function ownFields(record: object): Record<string, unknown> {
  const { id: _, version: __, createdAt: ___, updatedAt: ____, ...fields } = record as Row;
  return fields;
}
