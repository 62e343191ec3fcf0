/** Which cells of a refused row are to be written anew, and which tell a person what row it is. */
import type { Mapping } from '@plugside/records/import-fields';
import type { RefusedRow } from '../api/imports.ts';
import { cellText, shortText } from './first-values.ts';

/** Columns at fault; none where no cell can mend the row. */
export function columnsAtFault({ refusal, values }: RefusedRow, mapping: Mapping): string[] {
  const { place } = mapping;
  const placeColumns = [place?.longitude, place?.latitude, place?.point].filter(
    (column) => column !== undefined,
  );
  if (isPlaceAtFault({ refusal, values } as RefusedRow, mapping)) return [];
  const named = refusal.column === undefined ? [] : columnsIn(refusal.column, values);
  if (refusal.code === 'column count' || refusal.code === 'unreadable row') {
    return Object.keys(values).filter((column) => !column.startsWith('refused_'));
  }
  // Of two coordinates either may be the wrong one.
  if (isPlaceFault(refusal.code) || named.some((column) => placeColumns.includes(column))) {
    return placeColumns.length > 0 ? placeColumns : named;
  }
  if (named.length > 0) return named;
  const field = mapping.fields.find((one) => one.field === refusal.field);
  if (field) return field.columns.slice(0, 1);
  if (refusal.code === 'duplicate key') {
    return mapping.idColumn !== undefined
      ? [mapping.idColumn]
      : ['name', 'hydrantId', 'testedOn'].flatMap(
          (name) => mapping.fields.find((one) => one.field === name)?.columns.slice(0, 1) ?? [],
        );
  }
  return [];
}

/** What stands at a point: a street is a line, and the others have no place. */
const AT_POINT: ReadonlySet<string> = new Set([
  'stations',
  'hydrants',
  'water-sources',
  'buildings',
]);

/** Whether the place is at fault, and stands in the file's geometry: it is entered as coordinates. */
export function isPlaceAtFault({ refusal }: RefusedRow, { kind, place }: Mapping): boolean {
  if (!place?.geometry || !AT_POINT.has(kind)) return false;
  return isPlaceFault(refusal.code) || refusal.column === PLACE_BY_HAND;
}

/** As the server calls a place that was entered here. */
const PLACE_BY_HAND = 'place entered by hand';

const isPlaceFault = (code: string) => code.startsWith('place') || code === 'no place';

/** A refusal names one column, or several with commas between, or the geometry. */
const columnsIn = (text: string, values: RefusedRow['values']): string[] =>
  text in values ? [text] : text.split(', ').filter((column) => column in values);

const MOST_TOLD = 3;

/** What a row is known by: its key, its name, its address. */
export function rowWords({ values }: RefusedRow, mapping: Mapping): string {
  const byField = (name: string) =>
    mapping.fields.find(({ field }) => field === name)?.columns ?? [];
  const columns = [
    ...(mapping.idColumn === undefined ? [] : [mapping.idColumn]),
    ...byField('name'),
    ...byField('hydrantId'),
    ...byField('address'),
    ...byField('testedOn'),
  ];
  const texts = columns.map((column) => cellText(values[column])).filter((text) => text !== '');
  const different = [...new Set(texts)].slice(0, MOST_TOLD);
  if (different.length > 0) return different.map((text) => shortText(text, 60)).join(', ');
  const first = Object.values(values)
    .map(cellText)
    .find((text) => text !== '');
  return first === undefined ? 'blank' : shortText(first, 60);
}
