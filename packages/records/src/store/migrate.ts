/** Brings the tables to this version; refuses what a newer version has written. */
import { type Kysely, type Migration, Migrator, sql } from 'kysely';
import { StoreOpenError } from './errors.ts';
import { migrations } from './migrations/index.ts';

const MIGRATION_TABLE = 'plugside_migration';

/**
 * @param steps other steps than this version's, for tests
 * @throws StoreOpenError
 */
export async function migrate(
  db: Kysely<unknown>,
  steps: Readonly<Record<string, Migration>> = migrations,
): Promise<void> {
  await refuseNewer(db, steps);
  const migrator = new Migrator({
    db,
    provider: { getMigrations: async () => ({ ...steps }) },
    migrationTableName: MIGRATION_TABLE,
    migrationLockTableName: `${MIGRATION_TABLE}_lock`,
  });
  const { error, results } = await migrator.migrateToLatest();
  if (error === undefined) return;
  const failed = results?.find(({ status }) => status === 'Error')?.migrationName;
  const step = failed ? ` at step ${failed}` : '';
  const why = error instanceof Error ? error.message : String(error);
  throw new StoreOpenError(
    `The database's tables could not be brought up to date${step}: ${why}. They are as they were.`,
    { cause: error },
  );
}

async function refuseNewer(db: Kysely<unknown>, steps: Readonly<Record<string, Migration>>) {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
  if (!tables.some(({ name }) => name === MIGRATION_TABLE)) return;
  const { rows } = await sql<{
    name: string;
  }>`select name from ${sql.table(MIGRATION_TABLE)}`.execute(db);
  const unknown = rows.map(({ name }) => name).filter((name) => !(name in steps));
  if (unknown.length === 0) return;
  throw new StoreOpenError(
    `The database was written by a newer version of Plugside (step ${unknown.sort().at(-1)} is not known here). ` +
      'Nothing was changed. Use that version or a later one.',
  );
}
