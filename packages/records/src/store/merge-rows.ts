/** Bringing in a list: each row is new, changes a record that is known by its key, or is the same. */
import { isDeepStrictEqual } from 'node:util';
import { type Kysely, sql } from 'kysely';
import type { Kind, Stored } from '../model/index.ts';
import { among } from './among.ts';
import { type Engine, fromRow, ownFields, type Row } from './cells.ts';
import { checkReferences } from './check-references.ts';
import { tableOf } from './columns.ts';
import { changedRecord, newRecord } from './envelope.ts';
import { joinedOrigins, originsAfterList } from './origins.ts';
import type { MergeCount, MergeOptions } from './record-store.ts';
import { validate } from './validate.ts';
import { writeRows } from './write-rows.ts';

type Db = Kysely<unknown>;
type Given = Readonly<Record<string, unknown>>;

const ROWS_AT_ONCE = 500;

/** Must run inside a transaction that keeps other writers out. */
export async function mergeRows(
  db: Db,
  engine: Engine,
  kind: Kind,
  rows: Iterable<unknown> | AsyncIterable<unknown>,
  { onProgress, signal }: MergeOptions,
): Promise<MergeCount> {
  const count = { added: 0, changed: 0, same: 0 };
  let done = 0;
  signal?.throwIfAborted();
  for await (const batch of inBatches(rows, ROWS_AT_ONCE)) {
    signal?.throwIfAborted();
    await mergeBatch(db, engine, kind, batch as Given[], done, count);
    done += batch.length;
    onProgress?.(done);
    // SQLite answers without ever leaving this thread's turn: let others have theirs.
    await new Promise((resolve) => setImmediate(resolve));
  }
  signal?.throwIfAborted();
  return count;
}

async function mergeBatch(
  db: Db,
  engine: Engine,
  kind: Kind,
  batch: readonly Given[],
  first: number,
  count: MergeCount,
): Promise<void> {
  const known = await findByKey(db, engine, kind, batch);
  const writes = new Map<string, { record: Stored<Kind>; place: string }>();
  batch.forEach((given, index) => {
    const place = `rows[${first + index}]`;
    const key = keyOf(given);
    const current = key === undefined ? undefined : known.get(key);
    const record = current ? changed(kind, current, given, place) : added(kind, given, place);
    if (record === undefined) {
      count.same += 1;
      return;
    }
    count[current ? 'changed' : 'added'] += 1;
    writes.set(record.id, { record, place });
    if (key !== undefined) known.set(key, record);
  });
  const written = [...writes.values()];
  await checkReferences(
    db,
    engine,
    kind,
    written.map(({ record, place }) => ({ fields: ownFields(record), place })),
  );
  await writeRows(
    db,
    engine,
    kind,
    written.map(({ record }) => record),
  );
}

function added(kind: Kind, given: Given, place: string): Stored<Kind> {
  return newRecord(validate(kind, given, place));
}

/** Undefined where the row changes nothing. */
function changed(kind: Kind, current: Stored<Kind>, given: Given, place: string) {
  const before = ownFields(current);
  const origins = joinedOrigins(before.origins, given.origins);
  const after = validate(kind, { ...before, ...given, origins }, place);
  after.origins = originsAfterList(before, ownFields(after), given.origins);
  return isDeepStrictEqual(before, after) ? undefined : changedRecord(current, after);
}

async function findByKey(db: Db, engine: Engine, kind: Kind, batch: readonly Given[]) {
  const bySource = new Map<string, Set<string>>();
  for (const { externalSource: source, externalId: id } of batch) {
    if (typeof source !== 'string' || typeof id !== 'string') continue;
    bySource.set(source, (bySource.get(source) ?? new Set()).add(id));
  }
  const known = new Map<string, Stored<Kind>>();
  for (const [source, ids] of bySource) {
    const { rows } = await sql<Row>`
      select * from ${sql.table(tableOf(kind).name)}
      where external_source = ${source} and ${among(engine, 'external_id', [...ids])}`.execute(db);
    for (const row of rows) {
      const record = fromRow(kind, row);
      const key = keyOf(record as unknown as Given);
      if (key !== undefined) known.set(key, record);
    }
  }
  return known;
}

function keyOf({ externalSource, externalId }: Given): string | undefined {
  if (typeof externalSource !== 'string' || typeof externalId !== 'string') return undefined;
  return JSON.stringify([externalSource, externalId]);
}

async function* inBatches<T>(rows: Iterable<T> | AsyncIterable<T>, size: number) {
  let batch: T[] = [];
  for await (const row of rows) {
    batch.push(row);
    if (batch.length < size) continue;
    yield batch;
    batch = [];
  }
  if (batch.length > 0) yield batch;
}
