/** Brings the tables to this version; refuses what a newer version has written. */
import { type Kysely, type Migration, Migrator, sql } from 'kysely';
import { isBusy } from './database-errors.ts';
import { StoreOpenError } from './errors.ts';
import { migrations } from './migrations/index.ts';
import { waitWhileBusy } from './wait-while-busy.ts';

const MIGRATION_TABLE = 'plugside_migration';

/**
 * @param steps other steps than this version's, for tests
 * @throws StoreOpenError
 */
export async function migrate(
  db: Kysely<unknown>,
  steps: Readonly<Record<string, Migration>> = migrations,
): Promise<void> {
  const done = await stepsDone(db);
  refuseNewer(done, steps);
  if (done.length === Object.keys(steps).length) return;
  await waitWhileBusy(() => takeSteps(db, steps));
}

async function takeSteps(db: Kysely<unknown>, steps: Readonly<Record<string, Migration>>) {
  const migrator = new Migrator({
    db,
    provider: { getMigrations: async () => ({ ...steps }) },
    migrationTableName: MIGRATION_TABLE,
    migrationLockTableName: `${MIGRATION_TABLE}_lock`,
  });
  const { error, results } = await migrator.migrateToLatest();
  if (error === undefined) return;
  if (isBusy(error)) throw error;
  const failed = results?.find(({ status }) => status === 'Error')?.migrationName;
  const step = failed ? ` at step ${failed}` : '';
  const why = error instanceof Error ? error.message : String(error);
  throw new StoreOpenError(
    `The database's tables could not be brought up to date${step}: ${why}. They are as they were.`,
    { cause: error },
  );
}

async function stepsDone(db: Kysely<unknown>): Promise<string[]> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
  if (!tables.some(({ name }) => name === MIGRATION_TABLE)) return [];
  const { rows } = await sql<{
    name: string;
  }>`select name from ${sql.table(MIGRATION_TABLE)}`.execute(db);
  return rows.map(({ name }) => name);
}

function refuseNewer(done: readonly string[], steps: Readonly<Record<string, Migration>>): void {
  const unknown = done.filter((name) => !(name in steps));
  if (unknown.length === 0) return;
  throw new StoreOpenError(
    `The database was written by a newer version of Plugside (step ${unknown.sort().at(-1)} is not known here). ` +
      'Nothing was changed. Use that version or a later one.',
  );
}
