/** What a list is asked for, as conditions in SQL. */
import { type RawBuilder, sql } from 'kysely';
import type { Kind } from '../model/index.ts';
import { type Engine, toCell } from './cells.ts';
import { type Column, type Table, tableOf } from './columns.ts';
import { derivedColumns, folded } from './derived.ts';
import { type RecordIssue, RecordIssuesError } from './errors.ts';
import type { Box, ListQuery } from './record-store.ts';

export const pageLimits = { least: 1, usual: 100, greatest: 5000 } as const;

const jsTypes = {
  text: 'string',
  integer: 'number',
  'double precision': 'number',
  boolean: 'boolean',
} as const;

/** Everything but the page. @throws RecordIssuesError */
export function conditionsOf(
  engine: Engine,
  kind: Kind,
  query: ListQuery<Kind>,
): RawBuilder<unknown>[] {
  return [
    ...whereConditions(engine, kind, query.where ?? {}),
    ...searchConditions(query.search ?? ''),
    ...(query.box ? boxConditions(kind, query.box) : []),
  ];
}

/** `where a and b`, or nothing. */
export function whereClause(conditions: readonly RawBuilder<unknown>[]): RawBuilder<unknown> {
  return conditions.length === 0 ? sql`` : sql`where ${sql.join(conditions, sql` and `)}`;
}

/** @throws RecordIssuesError */
export function checkedLimit(kind: Kind, limit: number = pageLimits.usual): number {
  const { least, greatest } = pageLimits;
  if (Number.isInteger(limit) && limit >= least && limit <= greatest) return limit;
  refuse(kind, 'limit', limit, `a whole number, ${least} to ${greatest}`);
}

function whereConditions(engine: Engine, kind: Kind, where: object): RawBuilder<unknown>[] {
  const table = tableOf(kind);
  return Object.entries(where)
    .filter(([, value]) => value !== undefined)
    .map(([field, value]) => fieldCondition(engine, table, field, value));
}

function fieldCondition(engine: Engine, table: Table, field: string, value: unknown) {
  const column = table.byField.get(field);
  const path = `where.${field}`;
  if (!column || column.type === 'json') {
    const askable = table.columns.filter(({ type }) => type !== 'json').map((one) => one.field);
    refuse(table.kind, path, value, `one of the fields: ${askable.join(', ')}`);
  }
  const ref = sql.ref(column.name);
  if (value === null) return sql`${ref} is null`;
  const values: unknown[] = Array.isArray(value) ? value : [value];
  for (const one of values) checkType(table.kind, column, path, one);
  if (values.length === 0) return sql`1 = 0`;
  return sql`${ref} in (${sql.join(values.map((one) => toCell(engine, column, one)))})`;
}

function checkType(kind: Kind, column: Column, path: string, value: unknown): void {
  const wanted = jsTypes[column.type as keyof typeof jsTypes];
  const fits = typeof value === wanted && (wanted !== 'number' || Number.isFinite(value));
  if (!fits) refuse(kind, path, value, `a ${wanted}`);
}

function searchConditions(search: string): RawBuilder<unknown>[] {
  const words = folded(search)
    .split(/\s+/)
    .filter((word) => word !== '');
  return words.map((word) => {
    const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
    return sql`search_text like ${pattern} escape '\\'`;
  });
}

function boxConditions(kind: Kind, box: Box): RawBuilder<unknown>[] {
  const [west, south, east, north] = box;
  if (box.length !== 4 || !box.every(Number.isFinite) || south > north) {
    refuse(kind, 'box', box, '[west, south, east, north] in degrees, south not above north');
  }
  if (derivedColumns(kind).includes('path_west')) {
    return [
      sql`path_south <= ${north} and path_north >= ${south}`,
      west <= east
        ? sql`path_west <= ${east} and path_east >= ${west}`
        : sql`(path_west <= ${east} or path_east >= ${west})`,
    ];
  }
  if (!tableOf(kind).byField.has('longitude'))
    refuse(kind, 'box', box, 'nothing: no place is kept');
  return [
    sql`latitude between ${south} and ${north}`,
    west <= east
      ? sql`longitude between ${west} and ${east}`
      : sql`(longitude >= ${west} or longitude <= ${east})`,
  ];
}

function refuse(kind: Kind, path: string, value: unknown, allowed: string): never {
  const message = `${path} is ${JSON.stringify(value)}; allowed: ${allowed}.`;
  const issue: RecordIssue = {
    path,
    value,
    allowed,
    message,
    remedy: 'Ask with an allowed value.',
  };
  throw new RecordIssuesError(kind, [issue]);
}
