import type { Cell } from '../source/source.ts';
import { plainName } from './column-name.ts';
import type { FieldSpec } from './field-spec.ts';

const yes = new Set(['yes', 'y', 'true', 't', '1', 'x', '✓', 'ja', 'oui', 'si', 'sí']);
const no = new Set(['no', 'n', 'false', 'f', '0', 'nein', 'non']);

const asking = new Map<string, boolean>();

/**
 * A yes or no under a head that asks the contrary of the field: "no" under "Out of service" is in
 * service. Any other cell comes back as it is, and so does every cell of another column.
 */
export function asAsked(cell: Cell, { type, field }: FieldSpec, column: string): Cell {
  if (type.is !== 'choice' && type.is !== 'yes-no') return cell;
  const { contrary } = type;
  if (!contrary || cell === null) return cell;
  const key = `${field} ${column}`;
  let isContrary = asking.get(key);
  if (isContrary === undefined) {
    isContrary = contrary.name.test(plainName(column));
    if (asking.size < 1000) asking.set(key, isContrary);
  }
  if (!isContrary) return cell;
  const word = String(cell).trim().toLowerCase();
  if (yes.has(word)) return contrary.yes;
  return no.has(word) ? contrary.no : cell;
}
