/** The district's terrain file, in pieces that either database takes. */
import { type Kysely, type Migration, sql } from 'kysely';

export const terrainTables: Migration = {
  async up(db: Kysely<unknown>) {
    await sql`create table "terrain" (
      "id" text not null primary key check ("id" = 'district'),
      "name" text not null,
      "unit" text,
      "bytes" integer not null,
      "sha256" text not null,
      "added_at" text not null)`.execute(db);
    // SQLite does not mind the name of a type.
    await sql`create table "terrain_pieces" (
      "at" integer not null primary key,
      "piece" bytea not null)`.execute(db);
  },
};
