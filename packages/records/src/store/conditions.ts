/** What a list is asked for, as conditions in SQL. */
import { type RawBuilder, sql } from 'kysely';
import type { Kind } from '../model/index.ts';
import { type Engine, toCell } from './cells.ts';
import { type ColumnType, type Table, tableOf } from './columns.ts';
import { isNamed } from './derived.ts';
import { folded } from './folded.ts';
import type { Box, ListQuery } from './record-store.ts';
import { referencesFrom } from './references.ts';
import { refuse } from './refuse.ts';

export const pageLimits = { least: 1, usual: 100, greatest: 5000 } as const;

/** More would be a program gone wrong, and some databases break at it. */
const GREATEST_SEARCH = 200;
const GREATEST_CHOICE = 1000;

/** What can be asked of a column; PostgreSQL fails at anything else. */
const askable = {
  text: ['a text', (value: unknown) => typeof value === 'string' && !value.includes('\0')],
  integer: ['a whole number', (value: unknown) => (Number(value) | 0) === value],
  'double precision': ['a number', Number.isFinite],
  boolean: ['true or false', (value: unknown) => typeof value === 'boolean'],
} as const satisfies Partial<Record<ColumnType, readonly [string, (value: unknown) => boolean]>>;

/** Everything but the page. @throws RecordIssuesError */
export function conditionsOf(
  engine: Engine,
  kind: Kind,
  query: ListQuery<Kind>,
): RawBuilder<unknown>[] {
  return [
    ...whereConditions(engine, kind, query.where ?? {}),
    ...searchConditions(engine, kind, query.search ?? ''),
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
    const fields = table.columns.filter(({ type }) => type !== 'json').map((one) => one.field);
    refuse(table.kind, path, value, `one of the fields: ${fields.join(', ')}`);
  }
  const ref = sql.ref(column.name);
  if (value === null) return sql`${ref} is null`;
  const values: unknown[] = Array.isArray(value) ? value : [value];
  if (values.length > GREATEST_CHOICE) {
    refuse(table.kind, path, `${values.length} values`, `up to ${GREATEST_CHOICE} values`);
  }
  const [allowed, fits] = askable[column.type];
  const unfit = values.find((one) => !fits(one));
  if (unfit !== undefined) refuse(table.kind, path, unfit, allowed);
  if (values.length === 0) return sql`1 = 0`;
  return sql`${ref} in (${sql.join(values.map((one) => toCell(engine, column, one)))})`;
}

/** Each word in the record's own texts, or in the name of a record that it belongs to. */
function searchConditions(engine: Engine, kind: Kind, search: string): RawBuilder<unknown>[] {
  if (search.length > GREATEST_SEARCH || search.includes('\0')) {
    refuse(kind, 'search', search, `text of up to ${GREATEST_SEARCH} characters`);
  }
  const words = folded(search)
    .split(/\s+/)
    .filter((word) => word !== '');
  return words.map((word) => {
    const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
    const own = sql`search_text like ${pattern} escape '\\'`;
    const named = referencesFrom(kind)
      .filter(({ to, list }) => !list && isNamed(to))
      .map(
        ({ field, to }) => sql`${sql.ref(tableOf(kind).byField.get(field)?.name ?? field)} in (
          select id from ${sql.table(tableOf(to).name)}
          where search_text like ${pattern} escape '\\'
            and ${foldedName(engine)} like ${pattern} escape '\\')`,
      );
    return named.length === 0 ? own : sql`(${sql.join([own, ...named], sql` or `)})`;
  });
}

/** The name is the first line of what is searched. */
function foldedName(engine: Engine): RawBuilder<unknown> {
  return engine === 'sqlite'
    ? sql`substr(search_text, 1, instr(search_text || char(10), char(10)) - 1)`
    : sql`split_part(search_text, chr(10), 1)`;
}

function boxConditions(kind: Kind, box: Box): RawBuilder<unknown>[] {
  const [west, south, east, north] = box;
  if (box.length !== 4 || !box.every(Number.isFinite) || south > north) {
    refuse(kind, 'box', box, '[west, south, east, north] in degrees, south not above north');
  }
  if (kind === 'streets') {
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
