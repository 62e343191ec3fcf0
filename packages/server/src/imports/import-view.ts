/** An import as it is told over HTTP. */
import {
  type ImportKind,
  type ImportReport,
  type Mapping,
  type Refusal,
  SeenKeys,
  type Source,
  type SourceRow,
  type UnderstandContext,
  type Understood,
  understand,
} from '@plugside/records';
import type { Whereabouts } from './whereabouts.ts';

export type ImportState = 'reading' | 'ready' | 'running' | 'done' | 'cancelled' | 'failed';

/** A row as it stands in the file, and as it was understood. */
export interface SampleRow {
  row: number;
  values: Readonly<Record<string, unknown>>;
  understood: Understood;
}

/** A refused row, to be mended where it is shown. */
export interface RefusedRow {
  row: number;
  values: Readonly<Record<string, unknown>>;
  refusal: Refusal;
}

export interface ImportView {
  id: string;
  name: string;
  kind: ImportKind;
  state: ImportState;
  format: Source['format'] | null;
  encoding: string | null;
  delimiter: string | null;
  columns: readonly string[];
  hasGeometry: boolean;
  crs: Source['crs'] | null;
  mapping: Mapping | null;
  /** The kind that its columns tell of, where that is another. */
  likelyKind: ImportKind | null;
  whereabouts: Whereabouts | null;
  sample: readonly SampleRow[];
  /** How much of the file has been looked through, 0 to 1. */
  readShare: number;
  progress: { done: number; total: number };
  /** How long the run has taken, to its end or so far [ms]; null before the first. */
  elapsedMs: number | null;
  /** Rows mended here since the file was read. */
  mendedCount: number;
  report: ImportReport | null;
  /** Rows were refused, and their file can be had. */
  hasRefusedFile: boolean;
  /** Why it failed, and what to do. */
  failure: { detail: string; remedy: string } | null;
}

/** A cell that holds a whole drawing is no cell to mend. */
const MOST_CELL_LETTERS = 2000;

const shortened = ({ values }: SourceRow): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(values).map(([column, value]) => [
      column,
      typeof value === 'string' ? value.slice(0, MOST_CELL_LETTERS) : value,
    ]),
  );

/** As it is kept for mending. */
export const refusedRow = (row: SourceRow, refusal: Refusal): RefusedRow => ({
  row: row.number,
  values: shortened(row),
  refusal,
});

/** Rows beside what becomes of them; a row with the key of an earlier one is refused, as in a run. */
export function understoodRows(
  rows: readonly SourceRow[],
  mapping: Mapping,
  context: UnderstandContext,
): SampleRow[] {
  const seen = new SeenKeys();
  return rows.map((row) => {
    const understood = understand(row, mapping, context);
    const refusal =
      understood.is === 'record' ? seen.refusalOf(row, understood.fields, mapping) : undefined;
    return {
      row: row.number,
      values: row.values,
      understood: refusal ? { is: 'refused', refusal } : understood,
    };
  });
}
