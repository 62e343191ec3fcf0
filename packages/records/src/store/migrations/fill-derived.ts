import { type Kysely, SqliteAdapter, sql } from 'kysely';
import type { Kind } from '../../model/index.ts';
import { type Engine, fromRow, type Row } from '../cells.ts';
import { tableOf } from '../columns.ts';
import { derivedCells, derivedColumns } from '../derived.ts';

const ROWS_AT_ONCE = 500;

/** Which database a migration runs on. */
export function engineOf(db: Kysely<unknown>): Engine {
  return db.getExecutor().adapter instanceof SqliteAdapter ? 'sqlite' : 'postgresql';
}

/**
 * Writes derived columns of every record of a kind anew, leaving versions and times as they are: for
 * columns that are new, or whose rule has changed.
 */
export async function fillDerived(
  db: Kysely<unknown>,
  kind: Kind,
  names: readonly string[],
): Promise<void> {
  const table = sql.table(tableOf(kind).name);
  const derived = derivedColumns(kind);
  let after = '';
  for (;;) {
    const { rows } = await sql<Row>`
      select * from ${table} where id > ${after} order by id limit ${ROWS_AT_ONCE}`.execute(db);
    const filled = rows.map((row) => {
      const cells = derivedCells(kind, fromRow(kind, row) as unknown as Row);
      const wanted = names.map((name) => cells[derived.findIndex((one) => one.name === name)]);
      return [row.id, ...wanted.map((cell) => cell ?? null)];
    });
    await write(db, kind, names, filled);
    const last = rows.at(-1);
    if (rows.length < ROWS_AT_ONCE || !last) return;
    after = last.id as string;
  }
}

/** All of them in one statement, their values as one text of JSON. */
async function write(
  db: Kysely<unknown>,
  kind: Kind,
  names: readonly string[],
  rows: readonly unknown[][],
): Promise<void> {
  if (rows.length === 0) return;
  const table = sql.table(tableOf(kind).name);
  const json = JSON.stringify(rows);
  const [from, at] =
    engineOf(db) === 'sqlite'
      ? [
          sql`json_each(${json}) as fresh`,
          (n: number) => sql`fresh.value ->> ${sql.lit(`$[${n}]`)}`,
        ]
      : [
          sql`jsonb_array_elements(cast(${json} as jsonb)) as fresh(value)`,
          (n: number) => sql`fresh.value ->> ${sql.lit(n)}`,
        ];
  const sets = names.map((name, n) => {
    const { type } = derivedColumns(kind).find((one) => one.name === name)!;
    return sql`${sql.ref(name)} = cast(${at(n + 1)} as ${sql.raw(type)})`;
  });
  await sql`update ${table} set ${sql.join(sets)} from ${from} where ${table}.id = ${at(0)}`.execute(
    db,
  );
}
