/** What stands in a column, out of the rows that are shown. */
import type { SampleRow } from '../api/imports.ts';

const MOST_VALUES = 3;
const MOST_LETTERS = 40;

export const cellText = (value: unknown): string =>
  value === null || value === undefined ? '' : String(value).trim();

/** The first different values of a column, shortened. */
export function firstValues(sample: readonly SampleRow[], column: string): string[] {
  const found = new Set<string>();
  for (const { values } of sample) {
    const text = cellText(values[column]);
    if (text !== '') found.add(shortText(text, MOST_LETTERS));
    if (found.size === MOST_VALUES) break;
  }
  return [...found];
}

export const shortText = (text: string, most: number): string =>
  text.length > most ? `${text.slice(0, most - 1)}…` : text;

export interface SaidWord {
  /** In lower case, as a mapping's words have it. */
  word: string;
  /** As the file has it. */
  text: string;
  /** What it was understood as; null where no row with it was understood. */
  means: string | null;
  /** A row was refused for it. */
  refused: boolean;
}

const MOST_WORDS = 12;

/** The different words of a column, and what each was understood as in a field. */
export function wordsSaid(sample: readonly SampleRow[], column: string, field: string): SaidWord[] {
  const found = new Map<string, SaidWord>();
  for (const { values, understood } of sample) {
    const text = cellText(values[column]);
    const word = text.toLowerCase();
    if (word === '') continue;
    const before = found.get(word);
    if (before?.means != null || (!before && found.size === MOST_WORDS)) continue;
    const value = understood.is === 'record' ? understood.fields[field] : undefined;
    const means =
      value === undefined
        ? null
        : typeof value === 'boolean'
          ? value
            ? 'yes'
            : 'no'
          : String(value);
    const refused = understood.is === 'refused' && understood.refusal.column === column;
    found.set(word, { word, text, means, refused: refused || (before?.refused ?? false) });
  }
  return [...found.values()];
}
