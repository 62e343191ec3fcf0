/** One SQLite file: power-safe, with one connection that writes and one that reads. */
import { existsSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import Database from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type DialectAdapter,
  type Driver,
  Kysely,
  SqliteAdapter,
  SqliteDialect,
  type SqliteDialectConfig,
  SqliteDriver,
} from 'kysely';
import { StoreOpenError } from './errors.ts';
import type { Connections } from './sql-store.ts';
import { waitWhileBusy } from './wait-while-busy.ts';

/**
 * How long SQLite itself waits for another connection [ms], the whole process with it. Reading
 * waits only where a file is being mended or folded up; writers wait in `waitWhileBusy`.
 */
const READER_WAIT_MS = 5_000;
const WRITER_WAIT_MS = 20;

/** Written into the file's header, so that the file can be told from another program's. */
const APPLICATION_ID = 0x506c7367;

/** @throws StoreOpenError */
export function openSqliteFile(file: string): Connections {
  const path = resolve(file);
  checkPlace(path);
  const writer = openDatabase(path, {});
  writer.pragma(`busy_timeout = ${WRITER_WAIT_MS}`);
  const reader = openDatabase(path, {});
  const write = kyselyOver(writer, ImmediateDialect);
  const read = kyselyOver(reader, SqliteDialect);
  return {
    engine: 'sqlite',
    write,
    read,
    snapshot: (work) => inSnapshot(path, work),
    close: async () => {
      await Promise.all([read.destroy(), write.destroy()]);
      // Kysely leaves a connection open that it never came to use. The writer closes last: it
      // folds the log into the file.
      reader.close();
      writer.close();
    },
  };
}

/** Gone when closed: for trials and tests. */
export function openSqliteInMemory(): Connections {
  const write = kyselyOver(openDatabase(':memory:', {}), ImmediateDialect);
  return {
    engine: 'sqlite',
    write,
    read: write,
    snapshot: (work) => write.transaction().execute(work),
    close: () => write.destroy(),
  };
}

/** On a connection of its own, whose transaction goes on seeing what was there when it began. */
async function inSnapshot<T>(path: string, work: (db: Kysely<unknown>) => Promise<T>): Promise<T> {
  const db = kyselyOver(openDatabase(path, { readonly: true }), SqliteDialect);
  try {
    return await db.transaction().execute(work);
  } finally {
    await db.destroy();
  }
}

function kyselyOver(
  database: Database.Database,
  Dialect: new (config: SqliteDialectConfig) => SqliteDialect,
): Kysely<unknown> {
  return new Kysely({ dialect: new Dialect({ database }) });
}

function openDatabase(path: string, options: Database.Options): Database.Database {
  let database: Database.Database | undefined;
  try {
    database = new Database(path, { timeout: READER_WAIT_MS, ...options });
    const marked = checkOwn(database, path);
    if (!options.readonly) {
      database.pragma('journal_mode = WAL');
      database.pragma('synchronous = FULL');
      if (!marked) database.pragma(`application_id = ${APPLICATION_ID}`);
    }
    database.pragma('foreign_keys = ON');
    return database;
  } catch (error) {
    database?.close();
    throw openFailure(path, error);
  }
}

function checkPlace(path: string): void {
  if (existsSync(path)) {
    if (!statSync(path).isDirectory()) return;
    throw new StoreOpenError(
      `${path} is a folder, and records are kept in one file. Name a file in it, for instance ${path}/district.db.`,
    );
  }
  const folder = dirname(path);
  if (existsSync(folder)) return;
  throw new StoreOpenError(
    `There is no folder ${folder} for the records' file ${path}. Make the folder, or name a file in one that is there.`,
  );
}

/** Whether it bears our mark; a new file bears none yet. @throws StoreOpenError */
function checkOwn(database: Database.Database, path: string): boolean {
  const mark = database.pragma('application_id', { simple: true });
  if (mark === APPLICATION_ID) return true;
  const { tables } = database.prepare('select count(*) as tables from sqlite_master').get() as {
    tables: number;
  };
  if (mark === 0 && tables === 0) return false;
  throw new StoreOpenError(
    `${path} is another program's database. Nothing in it was touched. Name another file for the records.`,
  );
}

function openFailure(path: string, error: unknown): Error {
  if (error instanceof StoreOpenError) return error;
  const { code, message } = error as { code?: string; message?: string };
  const told: Readonly<Record<string, string>> = {
    SQLITE_NOTADB:
      'It is no SQLite database, or a damaged one. Name another file, or restore a backup into a new one.',
    SQLITE_CORRUPT: 'It is damaged. Restore a backup into a new file.',
    SQLITE_CANTOPEN:
      'This account may not open it. Have the file and its folder made readable and writable for it.',
    SQLITE_READONLY:
      'This account may not write to it. Have the file and its folder made writable for it.',
    SQLITE_READONLY_DIRECTORY:
      'This account may not write to its folder. Have the folder made writable for it.',
    SQLITE_BUSY: 'Another program is holding it. Try again when that has ended.',
  };
  const why = told[code ?? ''] ?? `SQLite says: ${message}.`;
  return new StoreOpenError(`The records' file ${path} cannot be opened. ${why}`, { cause: error });
}

/** Takes the right to write at once: a transaction that reads first could otherwise be refused at its first write. */
class ImmediateDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig;

  constructor(config: SqliteDialectConfig) {
    super(config);
    this.#config = config;
  }

  override createDriver(): Driver {
    return new ImmediateDriver(this.#config);
  }

  override createAdapter(): DialectAdapter {
    return new TransactionalDdlAdapter();
  }
}

class ImmediateDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await waitWhileBusy(() => connection.executeQuery(CompiledQuery.raw('begin immediate')));
  }
}

/** SQLite's tables can be made in a transaction: a migration that is cut short leaves nothing. */
class TransactionalDdlAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}
