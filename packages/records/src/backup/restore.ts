import { type Kysely, sql } from 'kysely';
import { envelopeSchema, type Kind, kindLabels, kinds, type Stored } from '../model/index.ts';
import type { Engine } from '../store/cells.ts';
import { ownFields } from '../store/cells.ts';
import { tableOf } from '../store/columns.ts';
import { isForeignKeyViolation, isUniqueViolation } from '../store/database-errors.ts';
import { connect, type StoreTarget } from '../store/open-store.ts';
import { putTerrainFile, terrainFileIn } from '../store/terrain-file.ts';
import { validate } from '../store/validate.ts';
import { writeRows } from '../store/write-rows.ts';
import { type CheckedArchive, checkArchive } from './check-archive.ts';
import { NotEmptyError } from './errors.ts';
import { linesOf } from './lines-of.ts';
import type { Manifest } from './manifest.ts';
import { hasDrills, restoreDrills } from './restore-drills.ts';
import { damaged } from './zip-reader.ts';

type Db = Kysely<unknown>;

const ROWS_AT_ONCE = 500;

/**
 * Brings back every record of an archive, with its id, version and times, its terrain and its drills, into a
 * database of either kind that holds none yet: all of them or, where anything is wrong, none.
 * @param file an archive that `backUp` wrote
 * @throws ArchiveError, NotEmptyError, StoreOpenError, RecordIssuesError
 */
export async function restore(file: string, target: StoreTarget): Promise<Manifest> {
  const archive = await checkArchive(file);
  const connections = await connect(target);
  try {
    await connections.write.transaction().execute(async (db) => {
      await refuseUnlessEmpty(db);
      for (const { kind } of archive.manifest.files) {
        await restoreKind(db, connections.engine, file, archive, kind);
      }
      await restoreTerrain(db, connections.engine, file, archive);
      await restoreDrills(db, file, archive);
    });
  } catch (error) {
    if (isForeignKeyViolation(error) || isUniqueViolation(error)) {
      throw damaged(file, 'its records do not fit each other', error);
    }
    throw error;
  } finally {
    await connections.close();
  }
  return archive.manifest;
}

async function refuseUnlessEmpty(db: Db): Promise<void> {
  for (const kind of kinds) {
    const found = await countIn(db, kind);
    if (found === 0) continue;
    throw new NotEmptyError(
      `The database holds records already (${found} ${kindLabels[kind][found === 1 ? 0 : 1]}). ` +
        'Nothing was restored. Restore into a new file or an empty database.',
    );
  }
  if (await hasDrills(db)) {
    throw new NotEmptyError(
      'The database holds drills already. Nothing was restored. Restore into a new file or an empty database.',
    );
  }
  if (await terrainFileIn(db)) {
    throw new NotEmptyError(
      'The database holds terrain already. Nothing was restored. Restore into a new file or an empty database.',
    );
  }
}

async function restoreTerrain(
  db: Db,
  engine: Engine,
  file: string,
  { manifest: { terrain }, zip }: CheckedArchive,
): Promise<void> {
  if (!terrain) return;
  const { name, title, unit, addedAt, sha256 } = terrain;
  const given = { name: title, ...(unit && { unit }), addedAt };
  const put = await putTerrainFile(db, engine, given, zip.read(name));
  if (put.sha256 !== sha256) throw damaged(file, `${name} is not as it was written`);
}

async function restoreKind(
  db: Db,
  engine: Engine,
  file: string,
  { manifest, zip }: CheckedArchive,
  kind: Kind,
): Promise<void> {
  const { name, records: wanted } = manifest.files.find((one) => one.kind === kind)!;
  let batch: Stored<Kind>[] = [];
  let line = 0;
  for await (const text of linesOf(zip.read(name))) {
    line += 1;
    batch.push(toRecord(file, kind, text, `${name} line ${line}`));
    if (batch.length < ROWS_AT_ONCE) continue;
    await writeRows(db, engine, kind, batch);
    batch = [];
  }
  await writeRows(db, engine, kind, batch);
  const found = await countIn(db, kind);
  if (line !== wanted || found !== wanted) {
    throw damaged(file, `${name} holds ${found} records where ${wanted} were written`);
  }
}

function toRecord(file: string, kind: Kind, text: string, place: string): Stored<Kind> {
  let given: Record<string, unknown>;
  try {
    given = JSON.parse(text);
  } catch (error) {
    throw damaged(file, `${place} is no JSON`, error);
  }
  const { id, version, createdAt, updatedAt } = given;
  const envelope = envelopeSchema.safeParse({ id, version, createdAt, updatedAt });
  if (!envelope.success) throw damaged(file, `${place} has no id, version or times`);
  return { ...envelope.data, ...validate(kind, ownFields(given), place, { kept: true }) };
}

async function countIn(db: Db, kind: Kind): Promise<number> {
  const { rows } = await sql<{ found: number | string }>`
    select count(*) as found from ${sql.table(tableOf(kind).name)}`.execute(db);
  return Number(rows[0]?.found);
}
