import type { ImportKind, MendedRows, Source } from '@plugside/records';
import { ProblemError } from '../problem.ts';
import { mendSchema } from './import-schema.ts';

const atPoint: ReadonlySet<ImportKind> = new Set([
  'stations',
  'hydrants',
  'water-sources',
  'buildings',
]);

/**
 * Cells and places of this file written anew, as they were sent.
 * @throws ProblemError 422 for another shape, a column that the file has not, or a place of what has none
 */
export function checkedMended(given: unknown, { columns }: Source, kind: ImportKind): MendedRows {
  const read = mendSchema.safeParse(given);
  if (!read.success) {
    throw refused(
      read.error.issues.map(({ path, message }) => ({
        path: path.join('.'),
        message: `${path.join('.') || 'The rows'}: ${message}.`,
        remedy:
          'Send {"rows": [{"row": 4, "values": {"column": "text"}, "place": {"longitude": "-84.1", "latitude": "33.4"}}]}.',
      })),
    );
  }
  const known = new Set(columns);
  const issues = read.data.rows.flatMap(({ row, values = {} }, at) =>
    Object.keys(values)
      .filter((column) => !known.has(column))
      .map((column) => ({
        path: `rows.${at}.values`,
        message: `Row ${row} names the column "${column.slice(0, 80)}", which the file has not.`,
        remedy: `Name one of: ${columns.slice(0, 50).join(', ')}.`,
      })),
  );
  // A street is a line: a point cannot stand for it.
  const placeless = read.data.rows.filter(({ place }) => place && !atPoint.has(kind));
  for (const { row } of placeless) {
    issues.push({
      path: `rows.${read.data.rows.findIndex((one) => one.row === row)}.place`,
      message: `Row ${row} gives a place, and ${kind} are not at one point.`,
      remedy: 'Leave place out.',
    });
  }
  if (issues.length > 0) throw refused(issues);
  return new Map(
    read.data.rows.map(({ row, values = {}, place }) => [row, { values, ...(place && { place }) }]),
  );
}

function refused(issues: { path: string; message: string; remedy: string }[]): ProblemError {
  return new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: issues.map(({ message, remedy }) => `${message} ${remedy}`).join('\n'),
    extra: { issues },
  });
}
