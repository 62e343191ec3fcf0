/** What the schema says of a record, as a refusal of its row. */

import type { FieldSpec } from './mapping/field-spec.ts';
import { fieldSpec } from './mapping/fields.ts';
import type { ImportKind } from './mapping/mapping.ts';
import type { Refusal } from './report.ts';
import type { SourceRow } from './source/source.ts';
import { insideUnitOf } from './values/units.ts';

type Draft = Record<string, unknown>;

interface SchemaIssue {
  path: PropertyKey[];
  message: string;
  code?: string | undefined;
  minimum?: unknown;
  maximum?: unknown;
  inclusive?: boolean | undefined;
}

/**
 * @param from the column that each field came from
 */
export function issueOf(
  issue: SchemaIssue,
  record: Draft,
  from: Record<string, string>,
  kind: ImportKind,
  row: SourceRow,
): Omit<Refusal, 'row'> {
  const top = String(issue.path[0] ?? '');
  const value = issue.path.reduce<unknown>(
    (inside, key) => (inside as Record<PropertyKey, unknown> | undefined)?.[key],
    record,
  );
  const spec = fieldSpec(kind, pathText(issue.path)) ?? fieldSpec(kind, top);
  const label = spec?.label ?? top;
  const missing = value === undefined;
  const column = from[pathText(issue.path)] ?? from[top];
  // As it stands in the file, where one column gave it.
  const cell = column === undefined ? null : (row.values[column] ?? null);
  const read = typeof value === 'object' ? JSON.stringify(value) : String(value);
  const text = cell === null || typeof value === 'object' ? read : String(cell);
  return {
    code: missing ? 'missing value' : 'value out of range',
    field: top,
    ...(column !== undefined && { column }),
    ...(!missing && { value: text }),
    reason: missing ? `${label}: it is missing.` : `${label}: ${rangeText(issue, value, spec)}.`,
    remedy: missing
      ? `Fill in ${label.toLowerCase()}.`
      : 'Correct the value, or the unit of its column.',
  };
}

/** `flowing[0].pitotPsi` */
const pathText = (path: readonly PropertyKey[]) =>
  path
    .map((one, at) => (typeof one === 'number' ? `[${one}]` : `${at > 0 ? '.' : ''}${String(one)}`))
    .join('');

/** What a value out of range came to, and what is allowed. */
function rangeText(issue: SchemaIssue, value: unknown, spec: FieldSpec | undefined): string {
  const { code, minimum, maximum, inclusive = true } = issue;
  const bound = code === 'too_big' ? maximum : code === 'too_small' ? minimum : undefined;
  if (typeof bound !== 'number') return issue.message;
  const unit = spec?.type.is === 'measure' ? ` ${insideUnitOf(spec.type.of)}` : '';
  const most = code === 'too_big';
  if (typeof value === 'string') {
    return `It has ${value.length} characters; ${most ? 'at most' : 'at least'} ${bound} are allowed`;
  }
  if (typeof value !== 'number') return issue.message;
  const than = inclusive
    ? `${most ? 'at most' : 'at least'}`
    : `${most ? 'less than' : 'more than'}`;
  const shown = Math.round(value * 1000) / 1000;
  return `It comes to ${shown.toLocaleString('en-US')}${unit}; ${than} ${bound.toLocaleString('en-US')}${unit} is allowed`;
}
