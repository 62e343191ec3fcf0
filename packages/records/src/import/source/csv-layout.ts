/** How a table is laid out as text: what separates its columns, where its heads are. */

export const delimiters = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof delimiters)[number];

export interface CsvLayout {
  delimiter: Delimiter;
  /** Records before the heads: a title, `sep=;`. */
  skip: number;
  /** False where the first record is data already. */
  heads: boolean;
  columns: string[];
}

/**
 * The layout of a table from its first part: the delimiter that splits its records most evenly.
 * @param head the file's first text, at best a few dozen whole lines
 */
export function csvLayout(head: string): CsvLayout {
  const stated = /^sep=(.)\r?\n/i.exec(head);
  const body = stated ? head.slice(stated[0].length) : head;
  const delimiter =
    delimiters.find((one) => one === stated?.[1]) ?? mostEven(body.replace(/\r\n?/g, '\n'));
  const records = splitRecords(body.replace(/\r\n?/g, '\n'), delimiter, 40).filter(notBlank);
  const width = usualWidth(records);
  // A title above the table fills one cell, or at most half of what its rows fill.
  const cells = records.map((record) => record.filter(filled).length);
  const usual = [...cells].sort((a, b) => a - b)[cells.length >> 1] ?? 0;
  let skip = 0;
  while (width >= 3 && skip < records.length - 1) {
    const isTitle = cells[skip]! <= Math.max(1, usual / 2);
    if (!isTitle || (cells[skip]! > 1 && isRow(records[skip + 1]!))) break;
    skip += 1;
  }
  const first = records[skip] ?? [];
  const heads = !first.some(isNumber);
  const names = heads ? first : first.map((_, at) => `column ${at + 1}`);
  return { delimiter, skip: skip + (stated ? 1 : 0), heads, columns: distinct(names) };
}

/** Data and no heads: what is above it are its heads, however few. */
const isRow = (record: readonly string[]) => record.some(isNumber);
const filled = (cell: string) => cell.trim() !== '';
const notBlank = (record: readonly string[]) => record.some(filled);
const isNumber = (cell: string) => /^\s*-?\d+([.,]\d+)?\s*$/.test(cell);

function mostEven(text: string): Delimiter {
  let best: Delimiter = ',';
  let bestScore = 0;
  for (const delimiter of delimiters) {
    const records = splitRecords(text, delimiter, 40).filter(notBlank);
    const width = usualWidth(records);
    if (width < 2) continue;
    const even = records.filter((record) => record.length === width).length / records.length;
    // The heads hold no decimal comma: a delimiter that splits them too is the likelier.
    const inHeads = (records[0]?.length ?? 0) > 1 ? 1 : 0.5;
    const score = even * inHeads * (1 + Math.min(width, 10) / 100);
    if (score > bestScore) [best, bestScore] = [delimiter, score];
  }
  return best;
}

function usualWidth(records: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const { length } of records) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 0;
}

/** The first records of a text, quotes minded; what is cut off at the end is left out. */
function splitRecords(text: string, delimiter: string, most: number): string[][] {
  const records: string[][] = [];
  let record: string[] = [];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < text.length && records.length < most; at += 1) {
    const letter = text[at]!;
    if (quoted) {
      if (letter !== '"') cell += letter;
      else if (text[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (letter === '"' && cell === '') quoted = true;
    else if (letter === delimiter) {
      record.push(cell);
      cell = '';
    } else if (letter === '\n') {
      records.push([...record, cell]);
      record = [];
      cell = '';
    } else cell += letter;
  }
  if (records.length === 0 || (records.length < most && (record.length > 0 || cell !== ''))) {
    records.push([...record, cell]);
  }
  return records;
}

/** Heads as names: blank ones numbered, repeated ones told apart. */
export function distinct(names: readonly string[]): string[] {
  const seen = new Set<string>();
  return names.map((name, at) => {
    const base = name.trim().slice(0, 200) || `column ${at + 1}`;
    let one = base;
    for (let n = 2; seen.has(one); n += 1) one = `${base} (${n})`;
    seen.add(one);
    return one;
  });
}
