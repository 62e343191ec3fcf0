import type { Source } from '../source/source.ts';
import { isBlank } from '../values/blank.ts';
import { plainName } from './column-name.ts';
import { idNames } from './field-spec.ts';
import type { FieldMapping, ImportKind } from './mapping.ts';

/**
 * The list's own id: a column of a name for it, filled and without repeats. Where that is a bare "id" of
 * whole numbers, which programs give out anew at each export, another column that names the thing's own
 * id goes before it.
 */
export function idColumnOf(kind: ImportKind, source: Source): string | undefined {
  let bare: string | undefined;
  for (const name of idNames) {
    // A test or a rig names its hydrant or station by an id that is not its own.
    if (kind === 'flow-tests' && /hyd|facility|asset|station|unit/.test(name)) continue;
    if (kind === 'rigs' && /station|hyd/.test(name)) continue;
    if (bare !== undefined && !/\w\s?(id|no|number)$/.test(name)) continue;
    if (bare !== undefined && /global|osm|full|feature|object/.test(name)) continue;
    const column = source.columns.find((one) => {
      const plain = one.startsWith('@') ? one.toLowerCase() : plainName(one);
      return plain === name || plain.replaceAll(' ', '') === name.replaceAll(' ', '');
    });
    if (column === undefined || column === bare || !isKey(source, column)) continue;
    if (bare !== undefined || name !== 'id' || !isWholeNumbers(source, column)) return column;
    bare = column;
  }
  return bare;
}

const isWholeNumbers = ({ sample }: Source, column: string) =>
  sample.every(({ values }) => /^\d*$/.test(String(values[column] ?? '')));

/** Whether a column is filled, and tells the rows apart. */
function isKey(source: Source, column: string): boolean {
  const rows = source.sample.filter(({ fault }) => !fault);
  const values = rows
    .map((row) => row.values[column] ?? null)
    .filter((value) => !isBlank(value, false));
  const distinct = new Set(values.map(String)).size;
  const repeats = values.length - distinct;
  // A few repeats are slips, to be told one by one; many mean that it is no id.
  const isId = repeats <= Math.max(2, 0.1 * values.length) && distinct > values.length / 2;
  return values.length >= 0.9 * rows.length && isId;
}

/** Kinds whose names are numbers of their own, which stay when a place is measured anew. */
const namedByNumber: ReadonlySet<ImportKind> = new Set(['hydrants', 'stations']);

/** The column of the name, where that is the number that a thing is known by. */
export function nameAsId(kind: ImportKind, source: Source, fields: readonly FieldMapping[]) {
  const name = fields.find(({ field }) => field === 'name');
  if (!namedByNumber.has(kind) || name?.columns.length !== 1) return undefined;
  return isKey(source, name.columns[0]!) ? name.columns[0] : undefined;
}
