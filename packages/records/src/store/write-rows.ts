/** Many rows in one statement, in the way that each database takes fastest. */
import { CompiledQuery, type Kysely, sql } from 'kysely';
import type { Kind, Stored } from '../model/index.ts';
import { type Cell, type Engine, toCells } from './cells.ts';
import { tableOf } from './columns.ts';
import { derivedColumns } from './derived.ts';

/** SQLite takes at most 32,766 values in a statement. */
const GREATEST_VALUES = 30_000;

interface Target {
  table: string;
  columns: readonly { name: string; type: string }[];
}

/** Writes records as they are, envelope and all; one with a known id replaces it. */
export async function writeRows(
  db: Kysely<unknown>,
  engine: Engine,
  kind: Kind,
  records: readonly Stored<Kind>[],
): Promise<void> {
  const target = targetOf(kind);
  const most = Math.floor(GREATEST_VALUES / target.columns.length);
  for (let from = 0; from < records.length; from += most) {
    const rows = records.slice(from, from + most).map((record) => toCells(engine, kind, record));
    await db.executeQuery(engine === 'sqlite' ? rowByRow(target, rows) : byColumn(target, rows));
  }
}

/**
 * Writes one record over the one with its id. Not by `writeRows`, whose kind of statement makes
 * PostgreSQL keep everybody from referring to the record meanwhile, and changes of two that refer
 * to each other would wait for one another.
 */
export async function updateRow(
  db: Kysely<unknown>,
  engine: Engine,
  kind: Kind,
  record: Stored<Kind>,
): Promise<void> {
  const { table, columns } = targetOf(kind);
  const cells = toCells(engine, kind, record);
  const sets = columns
    .map(({ name }, at) => ({ name, set: sql`${sql.ref(name)} = ${cells[at] ?? null}` }))
    .filter(({ name }) => name !== 'id')
    .map(({ set }) => set);
  await sql`update ${sql.table(table)} set ${sql.join(sets)} where id = ${record.id}`.execute(db);
}

function targetOf(kind: Kind): Target {
  const { name, columns } = tableOf(kind);
  return { table: name, columns: [...columns, ...derivedColumns(kind)] };
}

/** `values (?,?), (?,?)`. */
function rowByRow(target: Target, rows: readonly Cell[][]) {
  const row = `(${target.columns.map(() => '?').join(',')})`;
  const values = `values ${rows.map(() => row).join(',')}`;
  return CompiledQuery.raw(upsert(target, values), rows.flat());
}

/** One array for each column: PostgreSQL takes long over thousands of values by themselves. */
function byColumn(target: Target, rows: readonly Cell[][]) {
  const arrays = target.columns.map(
    ({ type }, at) => `$${at + 1}::${type === 'json' ? 'text' : type}[]`,
  );
  const values = target.columns.map((_, at) => rows.map((row) => row[at] ?? null));
  return CompiledQuery.raw(upsert(target, `select * from unnest(${arrays.join(',')})`), values);
}

function upsert({ table, columns }: Target, rows: string): string {
  const names = columns.map(({ name }) => `"${name}"`);
  const replaced = names
    .filter((name) => name !== '"id"')
    .map((name) => `${name}=excluded.${name}`);
  return (
    `insert into "${table}" (${names.join(',')}) ${rows} ` +
    `on conflict ("id") do update set ${replaced.join(',')}`
  );
}
