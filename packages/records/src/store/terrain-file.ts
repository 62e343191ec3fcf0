/** The district's terrain, kept as the file that it came in: with the records, so that it goes where they go. */
import { createHash } from 'node:crypto';
import { type Kysely, sql } from 'kysely';
import type { Engine } from './cells.ts';

type Db = Kysely<unknown>;

export interface TerrainFile {
  /** As people know the file. */
  name: string;
  /** Unit of its heights, where somebody said so; else the file's own. */
  unit?: 'm' | 'ft';
  /** Length [bytes]. */
  bytes: number;
  sha256: string;
  /** ISO time. */
  addedAt: string;
}

/** What is said of a file that is put in. */
export type TerrainGiven = Pick<TerrainFile, 'name' | 'unit'> & { addedAt?: string };

export type Pieces = Iterable<Uint8Array> | AsyncIterable<Uint8Array>;

/** Bytes of a row: neither database has to hold the whole file at once. */
const PIECE = 1 << 20;

export async function terrainFileIn(db: Db): Promise<TerrainFile | undefined> {
  const { rows } = await sql<{
    name: string;
    unit: 'm' | 'ft' | null;
    bytes: number;
    sha256: string;
    added_at: string;
  }>`select name, unit, bytes, sha256, added_at from terrain`.execute(db);
  const row = rows[0];
  if (!row) return undefined;
  const { name, unit, bytes, sha256, added_at: addedAt } = row;
  return { name, ...(unit && { unit }), bytes, sha256, addedAt };
}

export async function* terrainPiecesIn(db: Db): AsyncIterable<Uint8Array> {
  for (let at = 0; ; at += 1) {
    const { rows } = await sql<{ piece: Uint8Array }>`
      select piece from terrain_pieces where at = ${at}`.execute(db);
    if (!rows[0]) return;
    yield rows[0].piece;
  }
}

/** In place of what was there. Must run inside a transaction. */
export async function putTerrainFile(
  db: Db,
  engine: Engine,
  { name, unit, addedAt = new Date().toISOString() }: TerrainGiven,
  pieces: Pieces,
): Promise<TerrainFile> {
  await removeTerrainFile(db, engine);
  const hash = createHash('sha256');
  let [at, bytes] = [0, 0];
  for await (const piece of inRows(pieces)) {
    hash.update(piece);
    bytes += piece.length;
    await sql`insert into terrain_pieces (at, piece) values (${at}, ${piece})`.execute(db);
    at += 1;
  }
  const sha256 = hash.digest('hex');
  await sql`insert into terrain (id, name, unit, bytes, sha256, added_at)
    values ('district', ${name}, ${unit ?? null}, ${bytes}, ${sha256}, ${addedAt})`.execute(db);
  return { name, ...(unit && { unit }), bytes, sha256, addedAt };
}

/** Must run inside a transaction. */
export async function removeTerrainFile(db: Db, engine: Engine): Promise<void> {
  // Two that put a file in at once would otherwise both find nothing to take away.
  if (engine === 'postgresql') {
    await sql`lock table terrain in share row exclusive mode`.execute(db);
  }
  await sql`delete from terrain`.execute(db);
  await sql`delete from terrain_pieces`.execute(db);
}

async function* inRows(pieces: Pieces): AsyncIterable<Buffer> {
  let gathered: Uint8Array[] = [];
  let length = 0;
  for await (const piece of pieces) {
    for (let from = 0; from < piece.length; ) {
      const part = piece.subarray(from, from + PIECE - length);
      gathered.push(part);
      length += part.length;
      from += part.length;
      if (length < PIECE) continue;
      yield Buffer.concat(gathered);
      [gathered, length] = [[], 0];
    }
  }
  if (length > 0) yield Buffer.concat(gathered);
}
