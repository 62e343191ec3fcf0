/** Columns that the store fills by itself, so that both databases search and cut the same way. */
import type { Kind } from '../model/index.ts';

/** Fields whose words a search looks through. */
const searched = [
  'name',
  'address',
  'owner',
  'type',
  'size',
  'class',
  'by',
  'occupancy',
  'construction',
  'statusReason',
  'access',
  'externalId',
  'note',
] as const;

/** Names of the derived columns of a kind's table. */
export function derivedColumns(kind: Kind): readonly string[] {
  return kind === 'streets'
    ? ['search_text', 'path_west', 'path_south', 'path_east', 'path_north']
    : ['search_text'];
}

/** Their values, in the same order. */
export function derivedCells(
  kind: Kind,
  fields: Readonly<Record<string, unknown>>,
): (string | number)[] {
  const text = searchText(fields);
  return kind === 'streets'
    ? [text, ...pathBox(fields.path as readonly (readonly [number, number])[])]
    : [text];
}

/** Lower case and without accents: "É" is found as "e". */
export function folded(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

function searchText(fields: Readonly<Record<string, unknown>>): string {
  const words = searched.map((field) => fields[field]).filter((one) => typeof one === 'string');
  return folded(words.join('\n'));
}

function pathBox(path: readonly (readonly [number, number])[]): number[] {
  const box = [Infinity, Infinity, -Infinity, -Infinity] as [number, number, number, number];
  for (const [longitude, latitude] of path) {
    box[0] = Math.min(box[0], longitude);
    box[1] = Math.min(box[1], latitude);
    box[2] = Math.max(box[2], longitude);
    box[3] = Math.max(box[3], latitude);
  }
  return box;
}
