import { migrate } from './migrate.ts';
import { openPostgresql } from './postgresql.ts';
import type { RecordStore } from './record-store.ts';
import { type Connections, SqlStore } from './sql-store.ts';
import { openSqliteFile, openSqliteInMemory } from './sqlite.ts';

/** Where records are kept: one SQLite file, a PostgreSQL server, or this process's memory alone. */
export type StoreTarget = { file: string } | { url: string } | { memory: true };

/** A store that knows where it was opened, so that another thread can open the same records. */
export type OpenedStore = RecordStore & { readonly target: StoreTarget };

export interface OpenOptions {
  /** Connections to a PostgreSQL server at once [whole number ≥ 1]; 10 where left out. */
  mostConnections?: number;
}

/**
 * Opens the records and brings an older database's tables up to date; a file that is not there is
 * made.
 * @throws StoreOpenError where it cannot be opened, is another program's, or was written by a newer Plugside
 */
export async function openStore(
  target: StoreTarget,
  options: OpenOptions = {},
): Promise<OpenedStore> {
  return Object.assign(new SqlStore(await connect(target, options)), { target });
}

/** Connections to a database whose tables are up to date. @throws StoreOpenError */
export async function connect(
  target: StoreTarget,
  options: OpenOptions = {},
): Promise<Connections> {
  const connections = await connectUnchecked(target, options);
  try {
    await migrate(connections.write);
  } catch (error) {
    await connections.close();
    throw error;
  }
  return connections;
}

function connectUnchecked(
  target: StoreTarget,
  { mostConnections }: OpenOptions,
): Connections | Promise<Connections> {
  if ('file' in target) return openSqliteFile(target.file);
  if ('url' in target) return openPostgresql(target.url, mostConnections);
  return openSqliteInMemory();
}
