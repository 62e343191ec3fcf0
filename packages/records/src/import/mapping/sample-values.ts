import type { Cell, SourceRow } from '../source/source.ts';
import { isBlank } from '../values/blank.ts';

/** What stands in a column in the rows that are looked at, blanks apart. */
export function valuesOf(sample: readonly SourceRow[], column: string): Cell[] {
  return sample
    .slice(0, 200)
    .map((row) => row.values[column] ?? null)
    .filter((value) => !isBlank(value, false));
}
