/** Ids of other records must be those of records that are there. */
import { type Kysely, sql } from 'kysely';
import { type Kind, kindLabels } from '../model/index.ts';
import { among } from './among.ts';
import type { Engine } from './cells.ts';
import { tableOf } from './columns.ts';
import { type RecordIssue, RecordIssuesError, ReferredToError, type Referrer } from './errors.ts';
import { type Reference, referencesFrom, referencesTo } from './references.ts';
import { pathText } from './validate.ts';

type Db = Kysely<unknown>;

interface Checked {
  fields: Readonly<Record<string, unknown>>;
  /** Put before paths. */
  place: string;
}

/**
 * On PostgreSQL what is referred to stays locked against removal until the transaction ends, since
 * no foreign key watches ids in a list.
 * @throws RecordIssuesError
 */
export async function checkReferences(
  db: Db,
  engine: Engine,
  kind: Kind,
  rows: readonly Checked[],
): Promise<void> {
  const issues: RecordIssue[] = [];
  for (const reference of referencesFrom(kind)) {
    const named = rows.flatMap((row) => idsIn(reference, row));
    if (named.length === 0) continue;
    const found = await findIds(db, engine, reference.to, new Set(named.map(({ id }) => id)));
    for (const { id, path } of named) {
      if (!found.has(id)) issues.push(missingReference(reference, path, id));
    }
  }
  if (issues.length > 0) throw new RecordIssuesError(kind, issues);
}

/** @throws ReferredToError */
export async function checkNotReferredTo(db: Db, kind: Kind, id: string): Promise<void> {
  const by: Referrer[] = [];
  for (const { from, field, list } of referencesTo(kind)) {
    const column = sql.ref(tableOf(from).byField.get(field)?.name ?? field);
    // An id is 26 letters and digits of its own: found in the list's text, it is in the list.
    const holds = list ? sql`${column} like ${`%"${id}"%`}` : sql`${column} = ${id}`;
    const { rows } = await sql<{ id: string }>`
      select id from ${sql.table(tableOf(from).name)} where ${holds} order by id`.execute(db);
    if (rows.length > 0) {
      by.push({ kind: from, field, count: rows.length, ids: rows.slice(0, 10).map((r) => r.id) });
    }
  }
  if (by.length > 0) throw new ReferredToError(kind, id, by);
}

function idsIn({ field, list }: Reference, { fields, place }: Checked) {
  const value = fields[field];
  if (value === undefined) return [];
  if (!list) return [{ id: value as string, path: pathText([field], place) }];
  return (value as string[]).map((id, index) => ({ id, path: pathText([field, index], place) }));
}

async function findIds(db: Db, engine: Engine, kind: Kind, ids: ReadonlySet<string>) {
  const lock = engine === 'postgresql' ? sql`for key share` : sql``;
  const { rows } = await sql<{ id: string }>`
    select id from ${sql.table(tableOf(kind).name)}
    where ${among(engine, 'id', [...ids])} ${lock}`.execute(db);
  return new Set(rows.map(({ id }) => id));
}

function missingReference({ to }: Reference, path: string, value: string): RecordIssue {
  const [one, many] = kindLabels[to];
  return {
    path,
    value,
    allowed: `the id of one of the ${many}`,
    message: `${path} is ${value}, and there is no ${one} with that id.`,
    remedy: `Enter the ${one} first, or give the id of one that is there.`,
  };
}
