import { type RawBuilder, sql } from 'kysely';
import type { Engine } from './cells.ts';

/** `column in (…)` for any number of texts, given as one value. */
export function among(
  engine: Engine,
  column: string,
  texts: readonly string[],
): RawBuilder<unknown> {
  return engine === 'sqlite'
    ? sql`${sql.ref(column)} in (select value from json_each(${JSON.stringify(texts)}))`
    : sql`${sql.ref(column)} = any(${texts}::text[])`;
}
