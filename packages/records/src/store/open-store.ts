import { migrate } from './migrate.ts';
import { openPostgresql } from './postgresql.ts';
import type { RecordStore } from './record-store.ts';
import { SqlStore } from './sql-store.ts';
import { openSqliteFile, openSqliteInMemory } from './sqlite.ts';

/** Where records are kept: one SQLite file, a PostgreSQL server, or this process's memory alone. */
export type StoreTarget = { file: string } | { url: string } | { memory: true };

/**
 * Opens the records and brings an older database's tables up to date; a file that is not there is
 * made.
 * @throws StoreOpenError where it cannot be opened, is another program's, or was written by a newer Plugside
 */
export async function openStore(target: StoreTarget): Promise<RecordStore> {
  const connections = await connect(target);
  try {
    await migrate(connections.write);
  } catch (error) {
    await connections.close();
    throw error;
  }
  return new SqlStore(connections);
}

function connect(target: StoreTarget) {
  if ('file' in target) return openSqliteFile(target.file);
  if ('url' in target) return openPostgresql(target.url);
  return openSqliteInMemory();
}
