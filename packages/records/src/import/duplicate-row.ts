import type { Mapping } from './mapping/mapping.ts';
import type { Refusal } from './report.ts';
import type { SourceRow } from './source/source.ts';

/** Keys of the rows of one file, so that the second of two with the same key is found. */
export class SeenKeys {
  readonly #rows = new Map<string, number>();

  /**
   * Why a row is refused whose key an earlier row has; undefined for the first of its key. A row out
   * of a file of refused rows that was refused for its key, and still has it, is refused again: the
   * row that was taken for that key is in another file, and this one must not write over it.
   */
  refusalOf(
    row: SourceRow,
    { externalSource, externalId }: { externalSource?: unknown; externalId?: unknown },
    mapping: Mapping,
  ): Refusal | undefined {
    const id = String(externalId);
    if (String(row.values.refused_key ?? '') === id) {
      return duplicateOf('Another row of the list', row, id, mapping);
    }
    const key = JSON.stringify([externalSource, externalId]);
    const first = this.#rows.get(key);
    if (first !== undefined) return duplicateOf(`Row ${first}`, row, id, mapping);
    this.#rows.set(key, row.number);
    return undefined;
  }
}

function duplicateOf(other: string, row: SourceRow, key: string, { idColumn }: Mapping): Refusal {
  return {
    code: 'duplicate key',
    row: row.number,
    key,
    ...(idColumn !== undefined && { column: idColumn, value: key }),
    reason: idColumn
      ? `${other} has the same id and was taken.`
      : `${other} is of the same name and place (or hydrant and day) and was taken.`,
    remedy: 'Give each row an id of its own, or take one of the two out.',
  };
}
