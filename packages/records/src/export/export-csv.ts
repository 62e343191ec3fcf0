import { writeWkt } from '../import/place/wkt.ts';
import type { SourceGeometry } from '../import/source/source.ts';
import type { Fields, Kind } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import { csvLine } from './csv-cell.ts';
import { exportColumns, referredKind } from './export-columns.ts';
import { namesById } from './names-by-id.ts';
import { fitsColumns, outletCells, outletColumns } from './outlet-columns.ts';

/**
 * Every record of a kind as a table (UTF-8 with its mark, commas), a line at a time. Columns have the
 * fields' names, values are in the inside units that those tell (gpm, psi, ft, in, gal), places in
 * degrees WGS 84; a path or a footprint is well-known text and a list is JSON, but for the outlets of a
 * flow test, which have columns of their own where those hold them. Importing it again,
 * here or elsewhere, gives the same records.
 */
export async function* exportCsv(store: RecordStore, kind: Kind): AsyncIterable<string> {
  const columns = exportColumns(kind).flatMap((column) =>
    kind === 'flow-tests' && column === 'flowing' ? [column, ...outletColumns] : [column],
  );
  const nameOf = await namesById(store, kind);
  yield `\uFEFF${csvLine(columns)}`;
  for await (const record of store.all(kind)) {
    const cells = kind === 'flow-tests' ? withOutlets(record) : { ...record };
    yield csvLine(
      columns.map((column, at) => {
        if (column === 'plugside_id') return record.id;
        if (column === 'plugside_version') return record.version;
        const before = columns[at - 1];
        const isName = before !== undefined && referredKind[before] && !(column in cells);
        return isName ? nameOf(before, cells[before]) : cellOf(column, cells[column]);
      }),
    );
  }
}

/** With each outlet in columns of its own where they hold it, and then not as JSON too. */
function withOutlets(record: object): Record<string, unknown> {
  const { flowing } = record as Fields<'flow-tests'>;
  if (!fitsColumns(flowing)) return { ...record };
  return { ...record, flowing: undefined, ...Object.fromEntries(outletCells(flowing)) };
}

function cellOf(field: string, value: unknown): string | number | boolean | null | undefined {
  if (value === null || value === undefined) return undefined;
  if (typeof value !== 'object') return value as string | number | boolean;
  const shape = shapeOf(field, value);
  if (shape) return writeWkt(shape);
  return JSON.stringify(value);
}

/** A street's path or a building's footprint as a geometry. */
export function shapeOf(field: string, value: unknown): SourceGeometry | undefined {
  if (!Array.isArray(value) || value.length === 0) return undefined;
  if (field === 'path') return { type: 'LineString', coordinates: value as number[][] };
  if (field === 'footprint') return { type: 'Polygon', coordinates: value as number[][][] };
  return undefined;
}
