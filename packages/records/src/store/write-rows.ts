/** Many rows in one statement, as both databases take it. */
import { CompiledQuery, type Kysely } from 'kysely';
import type { Kind, Stored } from '../model/index.ts';
import { type Engine, toCells } from './cells.ts';
import { tableOf } from './columns.ts';
import { derivedColumns } from './derived.ts';

/** SQLite takes at most 32,766 values in a statement; PostgreSQL 65,535. */
const GREATEST_VALUES = 30_000;

/** Writes records as they are, envelope and all; one with a known id replaces it. */
export async function writeRows(
  db: Kysely<unknown>,
  engine: Engine,
  kind: Kind,
  records: readonly Stored<Kind>[],
): Promise<void> {
  const names = columnNames(kind);
  const most = Math.floor(GREATEST_VALUES / names.length);
  for (let from = 0; from < records.length; from += most) {
    const some = records.slice(from, from + most);
    const values = some.flatMap((record) => toCells(engine, kind, record));
    const text = upsertText(engine, tableOf(kind).name, names, some.length);
    await db.executeQuery(CompiledQuery.raw(text, values));
  }
}

function columnNames(kind: Kind): string[] {
  return [...tableOf(kind).columns.map(({ name }) => name), ...derivedColumns(kind)];
}

function upsertText(engine: Engine, table: string, names: readonly string[], rows: number): string {
  let next = 0;
  const place = engine === 'sqlite' ? () => '?' : () => `$${++next}`;
  const row = () => `(${names.map(place).join(',')})`;
  const quoted = names.map((name) => `"${name}"`);
  const replaced = quoted
    .filter((name) => name !== '"id"')
    .map((name) => `${name}=excluded.${name}`);
  return (
    `insert into "${table}" (${quoted.join(',')}) values ${Array.from({ length: rows }, row).join(',')} ` +
    `on conflict ("id") do update set ${replaced.join(',')}`
  );
}
