export interface Column {
  head: string;
  /** Numbers stand at the right, so that their digits line up. */
  number?: boolean;
}

const GAP = '  ';

/** Rows under their heads, in columns. No row ends in spaces. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map(({ head }, at) =>
    Math.max(widthOf(head), ...rows.map((row) => widthOf(row[at] ?? ''))),
  );
  const lineOf = (cells: readonly string[]) =>
    columns
      .map(({ number }, at) => {
        const cell = cells[at] ?? '';
        const space = ' '.repeat(widths[at]! - widthOf(cell));
        return number ? `${space}${cell}` : `${cell}${space}`;
      })
      .join(GAP)
      .trimEnd();
  const heads = columns.map(({ head }) => head);
  const rule = widths.map((width) => '-'.repeat(width));
  return [heads, rule, ...rows].map(lineOf).join('\n');
}

/** Columns that a text takes on a terminal; the trade's fractions and signs take one each. */
export function widthOf(text: string): number {
  return [...text].length;
}
