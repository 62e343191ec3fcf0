/** What a hydrant's main hangs on, so that a dead end is not counted beside its own feeder. */
import { type Kysely, type Migration, sql } from 'kysely';

export const mainFedFrom: Migration = {
  async up(db: Kysely<unknown>) {
    await sql`alter table "hydrants" add column "main_fed_from" text`.execute(db);
  },
};
