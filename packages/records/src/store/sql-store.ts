/** The store over SQL: one class for both databases, which differ in their connections alone. */
import { isDeepStrictEqual } from 'node:util';
import { type Kysely, type RawBuilder, sql } from 'kysely';
import type { FieldsIn, Kind, Stored } from '../model/index.ts';
import { type Engine, fromRow, ownFields, type Row } from './cells.ts';
import { checkNotReferredTo, checkReferences } from './check-references.ts';
import { tableOf } from './columns.ts';
import { checkedLimit, conditionsOf, pageLimits, whereClause } from './conditions.ts';
import { isBusy, isForeignKeyViolation, isUniqueViolation } from './database-errors.ts';
import type { DrillRuns } from './drill-runs.ts';
import { changedRecord, isId, newRecord } from './envelope.ts';
import { DuplicateKeyError, NotFoundError, StaleRecordError, StoreBusyError } from './errors.ts';
import { mergeRows } from './merge-rows.ts';
import { joinedOrigins, originsAfterHand, originsOfNew } from './origins.ts';
import type {
  ListQuery,
  MergeCount,
  MergeOptions,
  Page,
  RecordStore,
  Where,
} from './record-store.ts';
import { listOrder } from './sort.ts';
import { sqlDrillRuns } from './sql-drill-runs.ts';
import {
  type Pieces,
  putTerrainFile,
  removeTerrainFile,
  type TerrainFile,
  type TerrainGiven,
  terrainFileIn,
  terrainPiecesIn,
} from './terrain-file.ts';
import { validate } from './validate.ts';
import { updateRow, writeRows } from './write-rows.ts';

type Db = Kysely<unknown>;

export interface Connections {
  engine: Engine;
  /** SQLite: the one connection that writes. */
  write: Db;
  /** What reads go through: on SQLite another connection, so that a long import keeps no reader waiting. */
  read: Db;
  /** Reads all as it was at one moment. */
  snapshot<T>(work: (db: Db) => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/** Rows that `all` reads at once. */
const PAGE_OF_ALL = 500;

export class SqlStore implements RecordStore {
  readonly engine: Engine;
  readonly #connections: Connections;
  /** Inside a transaction: work that must not overlap, since savepoints end in order. */
  #turn: Promise<unknown> | undefined;
  readonly #inside: boolean;

  constructor(connections: Connections, inside = false) {
    this.engine = connections.engine;
    this.#connections = connections;
    this.#inside = inside;
  }

  async create<K extends Kind>(kind: K, given: FieldsIn<K>): Promise<Stored<K>> {
    const fields = validate(kind, given);
    fields.origins = originsOfNew(
      kind,
      given as Readonly<Record<string, unknown>>,
      ownFields(fields),
    );
    return this.#atomic(async (db) => {
      await checkReferences(db, this.engine, kind, [{ fields: ownFields(fields), place: '' }]);
      const record = newRecord(fields);
      await this.#keyed(kind, record, writeRows(db, this.engine, kind, [record]));
      return record;
    });
  }

  async get<K extends Kind>(kind: K, id: string): Promise<Stored<K> | undefined> {
    return readOne(this.#connections.read, kind, id);
  }

  async list<K extends Kind>(kind: K, query: ListQuery<K> = {}): Promise<Page<K>> {
    const limit = checkedLimit(kind, query.limit);
    const matching = conditionsOf(this.engine, kind, query as ListQuery<Kind>);
    const order = listOrder(this.engine, kind, query.sort);
    const db = this.#connections.read;
    const { rows: found } = await order.page(matching, query.after, limit + 1).execute(db);
    const { rows } = await sql<{ total: number | string }>`
      select count(*) as total from ${sql.table(tableOf(kind).name)} ${whereClause(matching)}`.execute(
      db,
    );
    const shown = found.slice(0, limit);
    const records = shown.map((row) => fromRow(kind, row));
    const page: Page<K> = { records, total: Number(rows[0]?.total) };
    const last = shown.at(-1);
    if (found.length > limit && last) page.next = order.next(last);
    return page;
  }

  async *all<K extends Kind>(kind: K, where?: Where<K>): AsyncIterable<Stored<K>> {
    const matching = conditionsOf(this.engine, kind, { where } as ListQuery<Kind>);
    const order = listOrder(this.engine, kind, undefined);
    let after: string | undefined;
    for (;;) {
      const page = order.page(matching, after, PAGE_OF_ALL);
      const { rows } = await page.execute(this.#connections.read);
      for (const row of rows) yield fromRow(kind, row);
      const last = rows.at(-1);
      if (rows.length < PAGE_OF_ALL || !last) return;
      after = order.next(last);
    }
  }

  async count(kind: Kind): Promise<number> {
    return (await this.list(kind, { limit: pageLimits.least })).total;
  }

  /** Adding makes a greater id, changing a greater sum of versions, removing alone a smaller count. */
  async revision(kind: Kind): Promise<string> {
    const { rows } = await sql<{ count: unknown; versions: unknown; last: unknown }>`
      select count(*) as count, sum(version) as versions, max(id) as last
      from ${sql.table(tableOf(kind).name)}`.execute(this.#connections.read);
    const row = rows[0];
    return `${row?.count}.${row?.versions ?? 0}.${row?.last ?? ''}`;
  }

  async change<K extends Kind>(
    kind: K,
    id: string,
    version: number,
    changes: Partial<FieldsIn<K>>,
  ): Promise<Stored<K>> {
    return this.#atomic(async (db) => {
      const current = await this.#lockedAt(db, kind, id, version, sql`no key update`);
      const before = ownFields(current);
      const { origins: given, ...values } = changes as Partial<FieldsIn<Kind>>;
      const joined =
        'origins' in changes && given === undefined
          ? undefined
          : joinedOrigins(before.origins, given);
      const fields = validate(kind, { ...before, ...values, origins: joined });
      if (isDeepStrictEqual(before, fields)) return current;
      fields.origins = originsAfterHand(kind, before, ownFields(fields), given);
      await checkReferences(db, this.engine, kind, [{ fields: ownFields(fields), place: '' }]);
      const record = changedRecord(current, fields);
      await this.#keyed(kind, record, updateRow(db, this.engine, kind, record));
      return record;
    });
  }

  async remove(kind: Kind, id: string, version: number): Promise<void> {
    await this.#atomic(async (db) => {
      await this.#lockedAt(db, kind, id, version, sql`update`);
      await checkNotReferredTo(db, kind, id);
      await sql`delete from ${sql.table(tableOf(kind).name)} where id = ${id}`.execute(db);
    });
  }

  async merge<K extends Kind>(
    kind: K,
    rows: Iterable<FieldsIn<K>> | AsyncIterable<FieldsIn<K>>,
    options: MergeOptions = {},
  ): Promise<MergeCount> {
    return this.#atomic(async (db) => {
      if (this.engine === 'postgresql') {
        await sql`lock table ${sql.table(tableOf(kind).name)} in share row exclusive mode`.execute(
          db,
        );
      }
      return mergeRows(db, this.engine, kind, rows, options);
    });
  }

  async transaction<T>(work: (store: RecordStore) => Promise<T>): Promise<T> {
    return this.#atomic((db) => work(this.#within(db)));
  }

  async snapshot<T>(work: (store: RecordStore) => Promise<T>): Promise<T> {
    if (this.#inside) return work(this);
    return this.#connections.snapshot((db) => work(this.#within(db)));
  }

  async terrainFile(): Promise<TerrainFile | undefined> {
    return terrainFileIn(this.#connections.read);
  }

  terrainPieces(): AsyncIterable<Uint8Array> {
    return terrainPiecesIn(this.#connections.read);
  }

  async putTerrainFile(given: TerrainGiven, pieces: Pieces): Promise<TerrainFile> {
    return this.#atomic((db) => putTerrainFile(db, this.engine, given, pieces));
  }

  async removeTerrainFile(): Promise<void> {
    await this.#atomic((db) => removeTerrainFile(db, this.engine));
  }

  get drillRuns(): DrillRuns {
    return sqlDrillRuns(this.#connections.read, (work) => this.#atomic(work));
  }

  async close(): Promise<void> {
    await this.#connections.close();
  }

  #within(db: Db): RecordStore {
    const { engine } = this;
    const connections: Connections = {
      engine,
      write: db,
      read: db,
      snapshot: (work) => work(db),
      close: async () => {},
    };
    return new SqlStore(connections, true);
  }

  /**
   * The record, held against other writers; refused where it is no longer at that version.
   * @param strength PostgreSQL's: a change lets others go on referring to the record, a removal not
   */
  async #lockedAt<K extends Kind>(
    db: Db,
    kind: K,
    id: string,
    version: number,
    strength: RawBuilder<unknown>,
  ): Promise<Stored<K>> {
    const lock = this.engine === 'postgresql' ? sql`for ${strength}` : sql``;
    const current = await readOne(db, kind, id, lock);
    if (!current) throw new NotFoundError(kind, id);
    if (current.version !== version) {
      throw new StaleRecordError(kind, id, version, current as Stored<Kind>);
    }
    return current;
  }

  async #keyed<T>(kind: Kind, record: Stored<Kind>, work: Promise<T>): Promise<T> {
    try {
      return await work;
    } catch (error) {
      if (!isUniqueViolation(error)) throw error;
      throw new DuplicateKeyError(kind, record.externalSource, record.externalId);
    }
  }

  /** All or nothing: a transaction, or a savepoint in the one that this store is inside. */
  async #atomic<T>(work: (db: Db) => Promise<T>): Promise<T> {
    try {
      if (!this.#inside) return await this.#connections.write.transaction().execute(work);
      const before = this.#turn;
      const mine = (async () => {
        await before?.catch(() => {});
        return savepoint(this.#connections.write, work);
      })();
      this.#turn = mine;
      return await mine;
    } catch (error) {
      if (isBusy(error)) throw new StoreBusyError({ cause: error });
      if (isForeignKeyViolation(error)) throw referenceLost(error);
      throw error;
    }
  }
}

async function savepoint<T>(db: Db, work: (db: Db) => Promise<T>): Promise<T> {
  await sql`savepoint step`.execute(db);
  try {
    const result = await work(db);
    await sql`release savepoint step`.execute(db);
    return result;
  } catch (error) {
    await sql`rollback to savepoint step`.execute(db);
    await sql`release savepoint step`.execute(db);
    throw error;
  }
}

async function readOne<K extends Kind>(
  db: Db,
  kind: K,
  id: string,
  lock = sql``,
): Promise<Stored<K> | undefined> {
  if (!isId(id)) return undefined;
  const { rows } = await sql<Row>`
    select * from ${sql.table(tableOf(kind).name)} where id = ${id}
    ${lock}`.execute(db);
  return rows[0] && fromRow(kind, rows[0]);
}

/** Only where another writer took it away between our look and our writing. */
function referenceLost(cause: unknown): Error {
  return new StoreBusyError({ cause });
}
