/** One file of map tiles on the server's disk (PMTiles version 3, https://github.com/protomaps/PMTiles/blob/main/spec/v3/spec.md). */
import { open, stat } from 'node:fs/promises';

const HEADER_BYTES = 127;
const MAGIC = 'PMTiles';
const VERSION = 3;
/** Byte 99 of the header. */
const TILE_TYPES = ['of an unknown type', 'vector', 'PNG', 'JPEG', 'WebP', 'AVIF'] as const;
const PICTURES_FROM = 2;

export interface TilesFile {
  path: string;
  bytes: number;
  /** Another text whenever the file is another. */
  tag: string;
}

/**
 * Looks whether a file holds map tiles that can be drawn.
 * @throws RangeError naming the file, what is wrong with it, and the remedy
 */
export async function checkTilesFile(path: string): Promise<TilesFile> {
  const header = Buffer.alloc(HEADER_BYTES);
  try {
    const file = await open(path, 'r');
    try {
      await file.read(header, 0, HEADER_BYTES, 0);
    } finally {
      await file.close();
    }
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw refused(path, `cannot be read (${why})`);
  }
  if (header.toString('latin1', 0, MAGIC.length) !== MAGIC || header[MAGIC.length] !== VERSION) {
    throw refused(path, `is not a PMTiles file of version ${VERSION}`);
  }
  const type = header[99] ?? 0;
  if (type < PICTURES_FROM || type >= TILE_TYPES.length) {
    throw refused(path, `holds tiles that are ${TILE_TYPES[type] ?? TILE_TYPES[0]}`);
  }
  return describeFile(path);
}

/** As the file is now. */
export async function describeFile(path: string): Promise<TilesFile> {
  const { size, mtimeMs } = await stat(path);
  return { path, bytes: size, tag: `"${size.toString(36)}-${Math.floor(mtimeMs).toString(36)}"` };
}

function refused(path: string, what: string): RangeError {
  return new RangeError(
    `The base map's file ${path} ${what}. PLUGSIDE_BASE_MAP names a PMTiles file of pictures (PNG, JPEG, WebP or AVIF); leave it out to draw the streets alone.`,
  );
}

export type ByteRange = { first: number; last: number } | 'all' | 'none';

/**
 * The bytes that a Range header asks for (RFC 9110, section 14). `all` where there is none, or
 * more than one: a server may answer with the whole. `none` where they lie past the end.
 */
export function rangeIn(header: string | undefined, bytes: number): ByteRange {
  const [, from, to] = /^bytes=(\d*)-(\d*)$/.exec(header?.trim() ?? '') ?? [];
  if (from === undefined || to === undefined || (from === '' && to === '')) return 'all';
  if (from === '') {
    const suffix = Number(to);
    return suffix === 0 ? 'none' : { first: Math.max(0, bytes - suffix), last: bytes - 1 };
  }
  const [first, last] = [Number(from), to === '' ? bytes - 1 : Math.min(Number(to), bytes - 1)];
  if (to !== '' && Number(to) < first) return 'all';
  return first >= bytes ? 'none' : { first, last };
}
