/** How high a pump stands above a water source, so that it is a number and not a word in the access notes. */
import { type Kysely, type Migration, sql } from 'kysely';

export const waterLift: Migration = {
  async up(db: Kysely<unknown>) {
    await sql`alter table "water_sources" add column "lift_ft" double precision`.execute(db);
  },
};
