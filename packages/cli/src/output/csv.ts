/** Rows for a spreadsheet, as in RFC 4180 but with plain line ends. */
export function csv(heads: readonly string[], rows: readonly (readonly (string | number)[])[]) {
  return [heads, ...rows].map((row) => row.map(cell).join(',')).join('\n');
}

function cell(value: string | number): string {
  const text = String(value);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
