/** Rows and time in words. */

/** `1 row`, `1,204 rows`. */
export const rowsText = (count: number): string =>
  `${count.toLocaleString('en-US')} ${count === 1 ? 'row' : 'rows'}`;

/** `under 1 s`, `12 s`, `3 min 5 s`. */
export function spentText(ms: number): string {
  const seconds = Math.floor(ms / 1000);
  if (seconds < 1) return 'under 1 s';
  if (seconds < 60) return `${seconds} s`;
  return `${Math.floor(seconds / 60)} min ${seconds % 60} s`;
}
