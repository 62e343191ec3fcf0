/** Drills that run or have run, and what happened in each, entry by entry. */
import { type Kysely, type Migration, sql } from 'kysely';

export const drillTables: Migration = {
  async up(db: Kysely<unknown>) {
    // A seed goes to 4,294,967,295: beyond PostgreSQL's integer.
    await sql`create table "drill_runs" (
      "id" text not null primary key,
      "code" text not null,
      "title" text not null,
      "evolution" text,
      "crew" text,
      "seed" double precision not null,
      "started_at" text not null,
      "changed_at" text not null,
      "ended_at" text,
      "tick" integer not null,
      "scene" text not null,
      "seats" text not null,
      "keyframe" text,
      "result" text)`.execute(db);
    // A code is free again when its drill has ended.
    await sql`create unique index "drill_runs_code" on "drill_runs" ("code")
      where "ended_at" is null`.execute(db);
    await sql`create table "drill_log" (
      "run_id" text not null references "drill_runs" ("id") on delete cascade,
      "seq" integer not null,
      "entry" text not null,
      "sender" text,
      "client_seq" integer,
      primary key ("run_id", "seq"))`.execute(db);
  },
};
