import { type Box, RecordIssuesError, type RecordStore, type Where } from '@plugside/records';
import type { FieldsIn } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { collect, type Fresh, hydrant, refusal, withStore } from './trial.ts';

export function describeLists(fresh: Fresh): void {
  describe('a list', () => {
    it(
      'goes page by page through every record once, in the order of making',
      withStore(fresh, async (store) => {
        const made: string[] = [];
        for (let n = 1; n <= 23; n += 1) {
          made.push((await store.create('hydrants', hydrant(`H-${n}`))).id);
        }
        const seen: string[] = [];
        let after: string | undefined;
        let pages = 0;
        do {
          const page = await store.list('hydrants', { limit: 10, after });
          expect(page.total).toBe(23);
          seen.push(...page.records.map(({ id }) => id));
          after = page.next;
          pages += 1;
        } while (after !== undefined);
        expect(seen).toEqual(made);
        expect(pages).toBe(3);
      }),
    );

    it(
      'ends without a next page where the records fill the last one',
      withStore(fresh, async (store) => {
        for (const name of ['a', 'b']) await store.create('hydrants', hydrant(name));
        expect(await store.list('hydrants', { limit: 2 })).not.toHaveProperty('next');
      }),
    );

    it(
      'asks for equal fields, fields left out, and any of several values',
      withStore(fresh, async (store) => {
        const add = (fields: FieldsIn<'hydrants'>) => store.create('hydrants', fields);
        await add({ ...hydrant('a'), mainIn: 8, sideOutlets: 1, status: 'out of service' });
        await add({ ...hydrant('b'), mainIn: 12 });
        await add(hydrant('c'));
        const names = (where: Where<'hydrants'>) => asked(store, where);
        expect(await names({ status: 'out of service' })).toEqual(['a']);
        expect(await names({ mainIn: null })).toEqual(['c']);
        expect(await names({ mainIn: [8, 12] })).toEqual(['a', 'b']);
        expect(await names({ mainIn: [] })).toEqual([]);
        expect(await names({ mainIn: 12, sideOutlets: 2 })).toEqual(['b']);
        expect(await names({ mainIn: undefined })).toEqual(['a', 'b', 'c']);
        await store.create('rigs', { name: 'in', inService: true });
        await store.create('rigs', { name: 'out', inService: false });
        const out = await store.list('rigs', { where: { inService: false } });
        expect(out.records.map(({ name }) => name)).toEqual(['out']);
      }),
    );

    it(
      'refuses what cannot be asked for',
      withStore(fresh, async (store) => {
        const wrong: unknown[] = [
          { where: { stem: 4 } },
          { where: { origins: {} } },
          { where: { mainIn: '8' } },
          { where: { mainIn: Number.NaN } },
          { where: { sideOutlets: 1.5 } },
          { where: { sideOutlets: 1e300 } },
          { where: { name: 'a\u0000b' } },
          { where: { name: Array.from({ length: 40_000 }, String) } },
          { search: 'a\u0000b' },
          { search: 'a b '.repeat(10_000) },
          { after: 'a\u0000b' },
          { limit: 0 },
          { limit: 5001 },
          { limit: 1.5 },
          { box: [0, 1, 0, 0] },
          { box: [0, 0, 0] },
        ];
        for (const query of wrong) {
          const error = await refusal(store.list('hydrants', query as never));
          expect(error).toBeInstanceOf(RecordIssuesError);
        }
        expect(await store.get('hydrants', 'a\u0000b')).toBeUndefined();
        const box: Box = [0, 0, 1, 1];
        expect(await refusal(store.list('rigs', { box }))).toBeInstanceOf(RecordIssuesError);
      }),
    );

    it(
      'finds words in any case, without accents, and takes no sign for more than itself',
      withStore(fresh, async (store) => {
        await store.create('buildings', { ...hydrant('Cold Store'), address: '12 Église Road' });
        await store.create('buildings', { ...hydrant('Mill'), note: '100% timber_frame \\ tin' });
        const names = async (search: string) =>
          (await store.list('buildings', { search })).records.map(({ name }) => name);
        expect(await names('EGLISE cold')).toEqual(['Cold Store']);
        expect(await names('église')).toEqual(['Cold Store']);
        expect(await names('100%')).toEqual(['Mill']);
        expect(await names('timber_frame')).toEqual(['Mill']);
        expect(await names('timberxframe')).toEqual([]);
        expect(await names('%store')).toEqual([]);
        expect(await names('\\')).toEqual(['Mill']);
        expect(await names("'; drop table buildings; --")).toEqual([]);
        expect(await names('  ')).toEqual(['Cold Store', 'Mill']);
        const { id, version } = (await store.list('buildings', { search: 'mill' })).records[0]!;
        await store.change('buildings', id, version, { name: 'Sawmill', note: undefined });
        expect(await names('timber')).toEqual([]);
        expect(await names('sawmill')).toEqual(['Sawmill']);
      }),
    );

    it(
      'cuts places out by a box, its edges included, across the 180th meridian too',
      withStore(fresh, async (store) => {
        const at = (name: string, longitude: number, latitude: number) =>
          store.create('hydrants', { name, longitude, latitude });
        await at('inside', -84.1, 33.4);
        await at('edge', -84, 33.5);
        await at('north', -84.1, 34);
        await at('far east', 179.9, 0);
        await at('far west', -179.9, 0);
        const names = async (box: Box) =>
          (await store.list('hydrants', { box })).records.map(({ name }) => name);
        expect(await names([-84.2, 33.3, -84, 33.5])).toEqual(['inside', 'edge']);
        expect(await names([179, -1, -179, 1])).toEqual(['far east', 'far west']);
      }),
    );

    it(
      'cuts out the streets that may pass through a box',
      withStore(fresh, async (store) => {
        const street = (name: string, ...path: [number, number][]) =>
          store.create('streets', { name, path });
        await street('through', [-85, 33.4], [-83, 33.4]);
        await street('beside', [-85, 33.4], [-84.9, 33.4]);
        const { records } = await store.list('streets', { box: [-84.2, 33.3, -84, 33.5] });
        expect(records.map(({ name }) => name)).toEqual(['through']);
      }),
    );

    it(
      'of all streams more than any page holds, in order, and lets others be asked meanwhile',
      withStore(fresh, async (store) => {
        const rows = Array.from({ length: 1203 }, (_, n) => hydrant(`H-${n}`));
        await store.merge('hydrants', rows);
        const names: string[] = [];
        for await (const { name, id } of store.all('hydrants')) {
          if (names.length % 400 === 0) expect((await store.get('hydrants', id))?.name).toBe(name);
          names.push(name);
        }
        expect(names).toEqual(rows.map(({ name }) => name));
        expect(await collect(store.all('hydrants', { name: 'H-7' }))).toHaveLength(1);
        expect(await store.count('hydrants')).toBe(1203);
      }),
    );
  });
}

async function asked(store: RecordStore, where: Where<'hydrants'>): Promise<string[]> {
  return (await store.list('hydrants', { where })).records.map(({ name }) => name);
}
