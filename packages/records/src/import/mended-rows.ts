import type { Source, SourceRow } from './source/source.ts';

/** New texts of cells, by row number and column. */
export type MendedCells = ReadonlyMap<number, Readonly<Record<string, string>>>;

/**
 * The file with some of its cells written anew. A row whose width was wrong is taken with its cells
 * as they then stand. Since the whole file is read again, a mended row is held against the others:
 * one that now has another row's id is found out.
 */
export function withMendedRows(source: Source, mended: MendedCells): Source {
  if (mended.size === 0) return source;
  const mend = (row: SourceRow): SourceRow => {
    const cells = mended.get(row.number);
    if (!cells) return row;
    const { fault: _, raw: __, ...rest } = row;
    return { ...rest, values: { ...row.values, ...cells } };
  };
  return {
    ...source,
    sample: source.sample.map(mend),
    rows: async function* () {
      for await (const row of source.rows()) yield mend(row);
    },
    close: () => source.close(),
  };
}
