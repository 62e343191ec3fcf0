import { type Kysely, sql } from 'kysely';
import { z } from 'zod';
import { idSchema } from '../model/index.ts';
import type { KeptDrill } from '../store/drill-runs.ts';
import { putDrill } from '../store/sql-drill-runs.ts';
import type { CheckedArchive } from './check-archive.ts';
import { linesOf } from './lines-of.ts';
import { damaged } from './zip-reader.ts';

type Db = Kysely<unknown>;

/** What a drill itself holds is its own affair. */
const keptSchema = z.strictObject({
  run: z.looseObject({
    id: idSchema,
    code: z.string(),
    title: z.string(),
    seed: z.number(),
    startedAt: z.string(),
    changedAt: z.string(),
    tick: z.int(),
  }),
  log: z.array(z.looseObject({ seq: z.int().min(0) })),
});

export async function hasDrills(db: Db): Promise<boolean> {
  const { rows } = await sql`select id from drill_runs limit 1`.execute(db);
  return rows.length > 0;
}

/** Drills that ran when the archive was made run again, from where they stood. */
export async function restoreDrills(
  db: Db,
  file: string,
  { manifest: { drills }, zip }: CheckedArchive,
): Promise<void> {
  if (!drills) return;
  let line = 0;
  for await (const text of linesOf(zip.read(drills.name))) {
    line += 1;
    let given: unknown;
    try {
      given = JSON.parse(text);
    } catch (error) {
      throw damaged(file, `${drills.name} line ${line} is no JSON`, error);
    }
    const read = keptSchema.safeParse(given);
    if (!read.success) throw damaged(file, `${drills.name} line ${line} is no drill`, read.error);
    await putDrill(db, given as KeptDrill);
  }
  if (line !== drills.runs) {
    throw damaged(file, `${drills.name} holds ${line} drills where ${drills.runs} were written`);
  }
}
