/** Which main a hydrant is on, so that two on one main are not counted as two. */
import { type Kysely, type Migration, sql } from 'kysely';

export const hydrantMain: Migration = {
  async up(db: Kysely<unknown>) {
    await sql`alter table "hydrants" add column "main" text`.execute(db);
  },
};
