/** The order of a list, alike on both databases, and where its next page begins. */
import { hoseSizes, latestTestDay } from '@plugside/fireground';
import { type RawBuilder, sql } from 'kysely';
import { type Kind, sortFields } from '../model/index.ts';
import type { Cell, Engine, Row } from './cells.ts';
import { type Column, tableOf } from './columns.ts';
import { whereClause } from './conditions.ts';
import { isNamed } from './derived.ts';
import { isId } from './envelope.ts';
import type { Sort } from './record-store.ts';
import { referencesFrom } from './references.ts';
import { refuse } from './refuse.ts';

/** What a list is put in order by. */
interface SortBy {
  expression: RawBuilder<unknown>;
  type: 'text' | 'number' | 'boolean';
  /** Never null. */
  required: boolean;
  /** Looked up in another table, so once for each record. */
  lookedUp?: true;
}

export interface ListOrder {
  /** Rows with the kind's columns and `sort_cell`, up to a limit. */
  page(
    matching: readonly RawBuilder<unknown>[],
    after: string | undefined,
    limit: number,
  ): RawBuilder<Row>;
  /** Where the page behind a row begins, for `after`. */
  next(row: Row): string;
}

/**
 * The order asked for; by id, which is the order of making, where none is. Records without a value
 * come last both ways, and those of the same value in the order of making, or the newest first where
 * it is turned round.
 * @throws RecordIssuesError
 */
export function listOrder(engine: Engine, kind: Kind, sort: Sort | undefined): ListOrder {
  return sort === undefined ? orderOfMaking(kind) : orderBy(engine, kind, sort);
}

function orderOfMaking(kind: Kind): ListOrder {
  const table = sql.table(tableOf(kind).name);
  const behind = (after: string) => {
    if (!isId(after)) refuse(kind, 'after', after, NEXT);
    return sql`id > ${after}`;
  };
  return {
    page: (matching, after, limit) => sql`
      select * from ${table}
      ${whereClause(after === undefined ? matching : [...matching, behind(after)])}
      order by id limit ${limit}`,
    next: ({ id }) => id as string,
  };
}

const NEXT = '`next` of the page before, asked for in the same order';

function orderBy(engine: Engine, kind: Kind, { field, descending = false }: Sort): ListOrder {
  if (!sortFields(kind).includes(field)) {
    refuse(kind, 'sort', field, `one of the fields: ${sortFields(kind).join(', ')}`);
  }
  const by = sortBy(engine, kind, field);
  const { expression, required } = by;
  const table = sql.table(tableOf(kind).name);
  const way = sql.raw(descending ? 'desc' : 'asc');
  const beyond = sql.raw(descending ? '<' : '>');
  const name = `${descending ? '-' : ''}${field}`;
  const inOrder = (value: RawBuilder<unknown>) =>
    required ? sql`${value} ${way}, id ${way}` : sql`${value} ${way} nulls last, id ${way}`;
  const behind = (value: RawBuilder<unknown>, after: string | undefined) => {
    if (after === undefined) return [];
    const [last, id] = readNext(kind, name, by, after);
    if (required) return [sql`(${value}, id) ${beyond} (${last}, ${id})`];
    if (last === null) return [sql`(${value} is null and id ${beyond} ${id})`];
    return [
      sql`(${value} ${beyond} ${last} or (${value} = ${last} and id ${beyond} ${id})
        or ${value} is null)`,
    ];
  };
  const plain: ListOrder['page'] = (matching, after, limit) => sql`
    select ${table}.*, ${expression} as sort_cell from ${table}
    ${whereClause([...matching, ...behind(expression, after)])}
    order by ${inOrder(expression)} limit ${limit}`;
  const once: ListOrder['page'] = (matching, after, limit) => sql`
    with ranked as materialized (
      select id as ranked_id, ${expression} as sort_cell from ${table} ${whereClause(matching)})
    select ${table}.*, sort_cell from ranked join ${table} on id = ranked_id
    ${whereClause(behind(sql`sort_cell`, after))}
    order by ${inOrder(sql`sort_cell`)} limit ${limit}`;
  return {
    page: by.lookedUp ? once : plain,
    next: ({ sort_cell: cell, id }) =>
      Buffer.from(JSON.stringify([name, cell, id])).toString('base64url'),
  };
}

/** The last value and id before. */
function readNext(kind: Kind, name: string, by: SortBy, next: string): [Cell, string] {
  let read: unknown;
  try {
    read = JSON.parse(Buffer.from(next, 'base64url').toString());
  } catch {
    read = undefined;
  }
  const [order, value, id] = Array.isArray(read) ? (read as unknown[]) : [];
  const fits = order === name && typeof id === 'string' && isId(id) && fitsIn(by, value);
  if (!fits) refuse(kind, 'after', next, NEXT);
  return [value as Cell, id];
}

function fitsIn({ type, required }: SortBy, value: unknown): boolean {
  if (value === null) return !required;
  if (type === 'text') return typeof value === 'string' && !value.includes('\0');
  if (type === 'number') return typeof value === 'number';
  return value === 0 || value === 1;
}

function sortBy(engine: Engine, kind: Kind, field: string): SortBy {
  const table = tableOf(kind);
  if (field === 'name') {
    // A street without a name has no place among names.
    return kind === 'streets'
      ? { expression: sql`nullif(name_key, '')`, type: 'text', required: false }
      : { expression: sql`name_key`, type: 'text', required: true };
  }
  if (field === 'q20Gpm' && kind === 'flow-tests') {
    return { expression: sql`q20_gpm`, type: 'number', required: false };
  }
  const column = table.byField.get(field);
  if (!column) return ofUsedTest(field);
  const reference = referencesFrom(kind).find((one) => one.field === field && isNamed(one.to));
  if (reference) {
    const to = sql.table(tableOf(reference.to).name);
    const own = sql`${sql.table(table.name)}.${sql.ref(column.name)}`;
    const expression = sql`(select ${to}.name_key from ${to} where ${to}.id = ${own})`;
    return { expression, type: 'text', required: false, lookedUp: true };
  }
  if (field === 'size') return bySize(column);
  return ofColumn(engine, column);
}

function ofColumn(engine: Engine, { name, type, required, isDate }: Column): SortBy {
  const ref = sql.ref(name);
  if (type === 'boolean') {
    return { expression: sql`cast(${ref} as integer)`, type: 'boolean', required };
  }
  if (type !== 'text') return { expression: ref, type: 'number', required };
  if (isDate) return { expression: ref, type: 'text', required };
  // Letters as they are written, A to Z in either case: the databases' own ways differ.
  const own = engine === 'postgresql' ? sql`${ref} collate "C"` : ref;
  return { expression: sql`lower(${own})`, type: 'text', required };
}

/** Hose by its size, not by how the size is written; sizes that no list has come last. */
function bySize({ name }: Column): SortBy {
  const cases = hoseSizes.map((size, at) => sql`when ${sql.lit(size)} then ${sql.lit(at)}`);
  const expression = sql`case ${sql.ref(name)} ${sql.join(cases, sql` `)} end`;
  return { expression, type: 'number', required: false };
}

/** Of the test that a hydrant's plans use: the one chosen where it can be used, else the newest that can. */
function ofUsedTest(field: string): SortBy {
  const column = field === 'testedOn' ? 'tested_on' : 'q20_gpm';
  const expression = sql`(select t.${sql.ref(column)} from flow_tests t
    where t.hydrant_id = hydrants.id and t.q20_gpm is not null
      and t.tested_on <= ${latestTestDay()}
    order by case when t.id = hydrants.plan_test_id then 0 else 1 end,
      t.tested_on desc, t.residual_psi, t.id desc
    limit 1)`;
  const type = field === 'testedOn' ? 'text' : 'number';
  return { expression, type, required: false, lookedUp: true };
}
