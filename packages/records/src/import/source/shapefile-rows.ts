import { openShp } from 'shapefile';
import type { DbfTable } from './dbf.ts';
import type { Cell, SourceGeometry, SourceRow } from './source.ts';

/**
 * The rows of a shapefile: shapes joined with their table by order. Where one is longer than the
 * other the missing side is blank. A damaged shape ends the reading, because nothing says where the
 * next begins; the rows after it come as faulty ones, so that none is lost unsaid.
 */
export async function* shapefileRows(
  shp: Uint8Array,
  table: DbfTable | undefined,
): AsyncIterable<SourceRow> {
  const columns = table?.columns ?? [];
  const cells = (at: number): Record<string, Cell> => {
    const record = table?.record(at);
    return Object.fromEntries(columns.map((column, i) => [column, record?.[i] ?? null]));
  };
  const sound = soundLength(shp);
  const source = await openShp(shp.subarray(0, sound));
  let at = 0;
  for (; ; at += 1) {
    let geometry: SourceGeometry | null;
    try {
      const read = await source.read();
      if (read.done) {
        if (sound < shp.length) throw new Error('a record is longer than the file');
        break;
      }
      geometry = soundGeometry(read.value);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      const last = Math.max(at, (table?.count ?? 0) - 1);
      for (; at <= last; at += 1) {
        yield {
          number: at + 1,
          values: cells(at),
          geometry: null,
          fault: {
            code: 'unreadable row',
            reason: `The shape cannot be read; the .shp file is damaged from here on (${why}).`,
            remedy: 'Export the shapefile again from where it came from.',
          },
        };
      }
      return;
    }
    if (!table?.deleted(at)) yield { number: at + 1, values: cells(at), geometry };
  }
  for (; at < (table?.count ?? 0); at += 1) {
    if (!table?.deleted(at)) yield { number: at + 1, values: cells(at), geometry: null };
  }
}

/** Up to the first record whose stated length does not fit, so that no such length is ever asked for. */
function soundLength(shp: Uint8Array): number {
  const view = new DataView(shp.buffer, shp.byteOffset, shp.byteLength);
  let at = 100;
  while (at + 12 <= shp.length) {
    const next = at + 8 + view.getInt32(at + 4) * 2;
    if (next < at + 12 || next > shp.length) return at;
    at = next;
  }
  return at === shp.length ? at : Math.min(at, shp.length);
}

function soundGeometry(value: unknown): SourceGeometry | null {
  const geometry = value as SourceGeometry | null;
  if (!geometry) return null;
  const flat = (geometry.coordinates as unknown[]).flat(3) as unknown[];
  // Nothing is measured where ESRI writes a number below −1e38.
  const sound = flat.length > 0 && flat.every((one) => Number.isFinite(one) && Number(one) > -1e38);
  return sound ? geometry : null;
}
