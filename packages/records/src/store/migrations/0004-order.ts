/** What lists are put in order by: names as people count, and a flow test's flow at 20 psi. */
import { type Kysely, type Migration, sql } from 'kysely';
import { kinds } from '../../model/index.ts';
import { tableOf } from '../columns.ts';
import { isNamed } from '../derived.ts';
import { engineOf, fillDerived } from './fill-derived.ts';

export const orderColumns: Migration = {
  async up(db: Kysely<unknown>) {
    // Compared byte by byte on both: SQLite does so anyhow.
    const byBytes = engineOf(db) === 'postgresql' ? sql`collate "C"` : sql``;
    for (const kind of kinds.filter(isNamed)) {
      const table = sql.table(tableOf(kind).name);
      await sql`alter table ${table} add column "name_key" text ${byBytes} not null default ''`.execute(
        db,
      );
      await fillDerived(db, kind, ['name_key']);
    }
    await sql`alter table "flow_tests" add column "q20_gpm" double precision`.execute(db);
    await fillDerived(db, 'flow-tests', ['q20_gpm']);
  },
};
