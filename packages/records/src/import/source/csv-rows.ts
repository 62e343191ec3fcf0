import type { Bytes } from './bytes.ts';
import { type CsvLayout, csvLayout } from './csv-layout.ts';
import { type CsvRecord, csvRecords } from './csv-records.ts';
import { decode, type Encoding } from './encoding.ts';
import type { Cell, RowFault, SourceRow } from './source.ts';

/** The layout of the table in a file. */
export async function layoutOf(bytes: Bytes, encoding: Encoding): Promise<CsvLayout> {
  let head = '';
  for await (const text of decode(bytes, encoding)) {
    head += text;
    if (head.length > 200_000) break;
  }
  return csvLayout(head);
}

/**
 * The rows of a table, one after the other. A row that cannot be read comes with its fault and its
 * text; the rows after it go on.
 */
export async function* csvRows(
  bytes: Bytes,
  encoding: Encoding,
  layout: CsvLayout,
): AsyncIterable<SourceRow> {
  let before = layout.skip + (layout.heads ? 1 : 0);
  for await (const record of csvRecords(decode(bytes, encoding), layout.delimiter)) {
    if (record.cells.every((cell) => cell.trim() === '')) continue;
    if (before > 0) {
      before -= 1;
      continue;
    }
    for (const one of torn(record, layout) ?? [record]) yield rowOf(one, layout.columns);
  }
}

/**
 * A quote that is opened in one row and closed in a later one swallows what is between. Where a
 * record spans lines and has the wrong width while its lines, taken as they stand, have the right
 * one, those are the rows.
 */
function torn({ cells, raw, line }: CsvRecord, layout: CsvLayout): CsvRecord[] | undefined {
  if (cells.length === layout.columns.length || !raw.includes('\n')) return undefined;
  const lines = raw.split('\n').map((text, at) => {
    const bare = text.replace(/\r$/, '');
    return { cells: bare.split(layout.delimiter), raw: bare, line: line + at };
  });
  const fitting = lines.filter((one) => one.cells.length === layout.columns.length).length;
  return fitting >= lines.length / 2 ? lines.filter(({ raw }) => raw.trim() !== '') : undefined;
}

function rowOf({ cells, line, raw }: CsvRecord, columns: readonly string[]): SourceRow {
  const values: Record<string, Cell> = {};
  columns.forEach((column, at) => {
    values[column] = plainText(cells[at] ?? '');
  });
  const rest = cells.slice(columns.length);
  const wrong = cells.length < columns.length || rest.some((cell) => cell.trim() !== '');
  return wrong
    ? { number: line, values, raw: raw.slice(0, 20_000), fault: wrongWidth(cells.length, columns) }
    : { number: line, values };
}

/** The apostrophe that marks `=`, `+`, `-` or `@` as text and no formula is the spreadsheet's, not the value's. */
function plainText(cell: string): string {
  return /^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell;
}

function wrongWidth(width: number, columns: readonly string[]): RowFault {
  const fewer = width < columns.length;
  return {
    code: 'column count',
    reason: `The row has ${width} columns, ${fewer ? 'fewer' : 'more'} than the ${columns.length} of the heads.`,
    remedy: fewer
      ? 'Give the row a cell for every column, blank ones too.'
      : 'Put a value that holds the delimiter between double quotes, or take the extra column out.',
  };
}
