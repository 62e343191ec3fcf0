import type { MendedCells, Source } from '@plugside/records';
import { ProblemError } from '../problem.ts';
import { mendSchema } from './import-schema.ts';

/**
 * Cells of this file written anew, as they were sent.
 * @throws ProblemError 422 for another shape, or a column that the file has not
 */
export function checkedMended(given: unknown, { columns }: Source): MendedCells {
  const read = mendSchema.safeParse(given);
  if (!read.success) {
    throw refused(
      read.error.issues.map(({ path, message }) => ({
        path: path.join('.'),
        message: `${path.join('.') || 'The rows'}: ${message}.`,
        remedy: 'Send {"rows": [{"row": 4, "values": {"column": "text"}}]}.',
      })),
    );
  }
  const known = new Set(columns);
  const issues = read.data.rows.flatMap(({ row, values }, at) =>
    Object.keys(values)
      .filter((column) => !known.has(column))
      .map((column) => ({
        path: `rows.${at}.values`,
        message: `Row ${row} names the column "${column.slice(0, 80)}", which the file has not.`,
        remedy: `Name one of: ${columns.slice(0, 50).join(', ')}.`,
      })),
  );
  if (issues.length > 0) throw refused(issues);
  return new Map(read.data.rows.map(({ row, values }) => [row, values]));
}

function refused(issues: { path: string; message: string; remedy: string }[]): ProblemError {
  return new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: issues.map(({ message, remedy }) => `${message} ${remedy}`).join('\n'),
    extra: { issues },
  });
}
