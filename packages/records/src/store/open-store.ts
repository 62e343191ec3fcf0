import { migrate } from './migrate.ts';
import { openPostgresql } from './postgresql.ts';
import type { RecordStore } from './record-store.ts';
import { type Connections, SqlStore } from './sql-store.ts';
import { openSqliteFile, openSqliteInMemory } from './sqlite.ts';

/** Where records are kept: one SQLite file, a PostgreSQL server, or this process's memory alone. */
export type StoreTarget = { file: string } | { url: string } | { memory: true };

/**
 * Opens the records and brings an older database's tables up to date; a file that is not there is
 * made.
 * @throws StoreOpenError where it cannot be opened, is another program's, or was written by a newer Plugside
 */
export async function openStore(target: StoreTarget): Promise<RecordStore> {
  return new SqlStore(await connect(target));
}

/** Connections to a database whose tables are up to date. @throws StoreOpenError */
export async function connect(target: StoreTarget): Promise<Connections> {
  const connections = await connectUnchecked(target);
  try {
    await migrate(connections.write);
  } catch (error) {
    await connections.close();
    throw error;
  }
  return connections;
}

function connectUnchecked(target: StoreTarget): Connections | Promise<Connections> {
  if ('file' in target) return openSqliteFile(target.file);
  if ('url' in target) return openPostgresql(target.url);
  return openSqliteInMemory();
}
