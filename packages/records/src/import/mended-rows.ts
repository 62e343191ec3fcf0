import type { Source, SourceRow, TypedPlace } from './source/source.ts';

export interface MendedRow {
  /** New texts of cells, by column. */
  values: Readonly<Record<string, string>>;
  /** A place in place of the file's geometry; blank in both: the file's own after all. */
  place?: TypedPlace | undefined;
}

/** By row number. */
export type MendedRows = ReadonlyMap<number, MendedRow>;

/** What is mended of a row now, on top of what was mended before. */
export function mendedAgain(before: MendedRow | undefined, now: MendedRow): MendedRow {
  const place = now.place ?? before?.place;
  return { values: { ...before?.values, ...now.values }, ...(place && { place }) };
}

/**
 * The file with some of its cells, and some places, written anew. A row whose width was wrong is taken with its cells
 * as they then stand. Since the whole file is read again, a mended row is held against the others:
 * one that now has another row's id is found out.
 */
export function withMendedRows(source: Source, mended: MendedRows): Source {
  if (mended.size === 0) return source;
  const mend = (row: SourceRow): SourceRow => {
    const anew = mended.get(row.number);
    if (!anew) return row;
    const { fault: _, raw: __, ...rest } = row;
    const { longitude = '', latitude = '' } = anew.place ?? {};
    const isTyped = longitude.trim() !== '' || latitude.trim() !== '';
    return {
      ...rest,
      values: { ...row.values, ...anew.values },
      ...(isTyped && { typedPlace: { longitude, latitude } }),
    };
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
