import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { kinds } from '../../model/index.ts';
import { tableOf } from '../columns.ts';
import { derivedColumns } from '../derived.ts';
import { migrate } from '../migrate.ts';
import { references } from '../references.ts';
import { openSqliteInMemory } from '../sqlite.ts';

const { write: db, close } = openSqliteInMemory();

beforeAll(() => migrate(db));
afterAll(close);

describe('after every step', () => {
  it.each(kinds)('%s has the columns that the model asks for, and no other', async (kind) => {
    const { name, columns } = tableOf(kind);
    const { rows } = await sql<{ name: string; type: string; notnull: number }>`
      select name, type, "notnull" from pragma_table_info(${name})`.execute(db);
    const wanted = [...columns, ...derivedColumns(kind)].map(({ name, type, required }) => [
      name,
      type === 'json' ? 'text' : type,
      required,
    ]);
    const found = rows.map((row) => [row.name, row.type.toLowerCase(), row.notnull === 1]);
    expect(found.sort()).toEqual(wanted.sort());
  });

  it('every field that holds one id has a foreign key, and each list of ids is known', async () => {
    for (const kind of kinds) {
      const { name, fields } = tableOf(kind);
      const { rows } = await sql<{ from: string; table: string }>`
        select "from", "table" from pragma_foreign_key_list(${name})`.execute(db);
      const ours = references.filter((one) => one.from === kind);
      const wanted = ours
        .filter(({ list }) => !list)
        .map(({ field, to }) => [tableOf(kind).byField.get(field)?.name, tableOf(to).name]);
      expect(rows.map(({ from, table }) => [from, table]).sort()).toEqual(wanted.sort());
      const named = fields.map(({ field }) => field).filter((field) => /Ids?$/.test(field));
      const known = ours.map(({ field }) => field);
      expect(named.filter((field) => field !== 'externalId').sort()).toEqual(known.sort());
    }
  });
});

describe('a step that fails', () => {
  it('leaves nothing of itself', async () => {
    const other = openSqliteInMemory();
    const broken = {
      up: async (at: typeof db) => {
        await sql`create table half (id text)`.execute(at);
        await sql`create tabel other (id text)`.execute(at);
      },
    };
    await expect(migrate(other.write, { '0001-broken': broken })).rejects.toThrow('0001-broken');
    const { rows } = await sql`select name from sqlite_master where name = 'half'`.execute(
      other.write,
    );
    expect(rows).toEqual([]);
    await other.close();
  });
});
