import type { Mapping } from './mapping/mapping.ts';
import type { Refusal } from './report.ts';
import type { SourceRow } from './source/source.ts';

/** Why a row is refused whose key an earlier row of the same file has. */
export function duplicateOf(
  firstRow: number,
  row: SourceRow,
  key: unknown,
  { idColumn }: Mapping,
): Refusal {
  return {
    code: 'duplicate key',
    row: row.number,
    ...(idColumn !== undefined && { column: idColumn, value: String(key) }),
    reason: idColumn
      ? `Row ${firstRow} has the same id and was taken.`
      : `Row ${firstRow} is of the same name and place (or hydrant and day) and was taken.`,
    remedy: 'Give each row an id of its own, or take one of the two out.',
  };
}
