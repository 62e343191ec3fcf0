import type { SourceRow } from '../source/source.ts';
import type { DateOrder } from '../values/dates.ts';
import { fieldsByKind } from './fields.ts';
import type { FieldMapping, ImportKind } from './mapping.ts';

/** From dates that can only be read one way. */
export function dateOrderOf(
  fields: readonly FieldMapping[],
  sample: readonly SourceRow[],
  kind: ImportKind,
  notices: string[],
): DateOrder | undefined {
  const columns = fields
    .filter(
      ({ field }) => fieldsByKind[kind].find((one) => one.field === field)?.type.is === 'date',
    )
    .flatMap(({ columns: some }) => some);
  let [dayFirst, monthFirst, either] = [0, 0, 0];
  for (const row of sample) {
    for (const column of columns) {
      const figures = /^\s*(\d{1,2})[-/](\d{1,2})[-/]\d{2,4}\b/.exec(
        String(row.values[column] ?? ''),
      );
      if (!figures) continue;
      if (Number(figures[1]) > 12) dayFirst += 1;
      else if (Number(figures[2]) > 12) monthFirst += 1;
      else if (figures[1] !== figures[2]) either += 1;
    }
  }
  if (dayFirst > 0 && monthFirst === 0) return 'day first';
  if (monthFirst > 0 && dayFirst === 0) return 'month first';
  if (either > 0) notices.push('Dates can be read with the day or the month first: say which.');
  return undefined;
}
