/** Cells for a spreadsheet (RFC 4180). */

/** A text that a spreadsheet would run as a formula; numbers such as −84.3 are none. */
const formula = /^'*[=+\-@\t\r]/;
const number = /^[+-]?\d+([.,]\d+)?(e[+-]?\d+)?$/i;

/**
 * One cell. A text that begins with `=`, `+`, `-`, `@` or a tab gets an apostrophe before it, by
 * which spreadsheets know it for text; our import takes it off again.
 */
export function csvCell(value: string | number | boolean | null | undefined): string {
  if (value === null || value === undefined) return '';
  const text = String(value);
  const safe =
    typeof value === 'string' && formula.test(text) && !number.test(text) ? `'${text}` : text;
  return /[",\r\n;\t]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

export function csvLine(cells: readonly (string | number | boolean | null | undefined)[]): string {
  return `${cells.map(csvCell).join(',')}\r\n`;
}
