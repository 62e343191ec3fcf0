import { RecordIssuesError, type RecordStore, type Sort } from '@plugside/records';
import { type FieldsIn, type Kind, kinds, sortFields } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { type Fresh, hydrant, refusal, withStore } from './trial.ts';

export function describeOrder(fresh: Fresh): void {
  describe('the order of a list', () => {
    it(
      'by name counts as people do, without case, accents and zeros in front',
      withStore(fresh, async (store) => {
        const given = ['H-10', 'Élm 3', 'H-2', 'elm 20', 'h-1', 'H-100', 'Elm 0004', '7 Ash', '12'];
        for (const name of given) await store.create('hydrants', hydrant(name));
        // Put down by hand.
        const wanted = '7 Ash|12|Élm 3|Elm 0004|elm 20|h-1|H-2|H-10|H-100'.split('|');
        expect(await names(store, 'hydrants', { field: 'name' })).toEqual(wanted);
        const back = await names(store, 'hydrants', { field: 'name', descending: true });
        expect(back).toEqual([...wanted].reverse());
        const { id, version } = (await store.list('hydrants', { where: { name: '12' } }))
          .records[0]!;
        await store.change('hydrants', id, version, { name: 'H-3' });
        expect((await names(store, 'hydrants', { field: 'name' })).slice(-4)).toEqual([
          'H-2',
          'H-3',
          'H-10',
          'H-100',
        ]);
      }),
    );

    it(
      'puts records without a value last both ways, and equal ones in the order of making',
      withStore(fresh, async (store) => {
        const add = (name: string, more: Partial<FieldsIn<'hydrants'>> = {}) =>
          store.create('hydrants', { ...hydrant(name), ...more });
        await add('none');
        await add('12 in', { mainIn: 12, owner: 'town' });
        await add('6 in', { mainIn: 6, owner: 'Village' });
        await add('8 in', { mainIn: 8, owner: 'Town' });
        await add('6 in again', { mainIn: 6, owner: 'Électric' });
        const by = (field: string, descending = false) =>
          names(store, 'hydrants', { field, descending });
        expect(await by('mainIn')).toEqual(['6 in', '6 in again', '8 in', '12 in', 'none']);
        expect(await by('mainIn', true)).toEqual(['12 in', '8 in', '6 in again', '6 in', 'none']);
        // Other texts: by their letters, A to Z in either case, accented ones behind them.
        expect(await by('owner')).toEqual(['12 in', '8 in', '6 in', '6 in again', 'none']);
        await store.create('streets', {
          path: [
            [0, 0],
            [1, 1],
          ],
        });
        await store.create('streets', {
          name: 'Quarry Lane',
          path: [
            [0, 0],
            [1, 1],
          ],
        });
        expect(await names(store, 'streets', { field: 'name' })).toEqual(['Quarry Lane', '']);
        expect(await names(store, 'streets', { field: 'name', descending: true })).toEqual([
          'Quarry Lane',
          '',
        ]);
        for (const size of ['5', '3/4', 'odd', '1-3/4', '2-1/2', '1']) {
          await store.create('hose', { name: size, size, lengthFt: 50 });
        }
        const sizes = ['3/4', '1', '1-3/4', '2-1/2', '5', 'odd'];
        expect(await names(store, 'hose', { field: 'size' })).toEqual(sizes);
      }),
    );

    it(
      'goes by the name of the record that an id stands for, and by the test that plans use',
      withStore(fresh, async (store) => {
        const add = async (name: string) => (await store.create('hydrants', hydrant(name))).id;
        const [ten, two, three, four] = [
          await add('H-10'),
          await add('H-2'),
          await add('H-3'),
          await add('H-4'),
        ];
        const test = (hydrantId: string, testedOn: string, residualPsi: number, flow = 1000) =>
          store.create('flow-tests', {
            hydrantId,
            testedOn,
            staticPsi: 60,
            residualPsi,
            statedFlowGpm: flow,
          });
        // By hand, at 20 psi: 1000·(40/20)^0.54 = 1,454; ·(40/10)^0.54 = 2,114; 500·(40/30)^0.54 = 584.
        await test(ten, '2024-05-01', 40);
        const chosen = await test(two, '2020-01-01', 30, 500);
        await test(two, '2025-01-01', 50);
        await test(three, '2023-01-01', 50);
        // The pressure did not drop: plans cannot use it.
        await test(three, '2026-01-01', 60);
        const found = await store.list('flow-tests', { sort: { field: 'hydrantId' } });
        expect(found.records.map(({ hydrantId }) => hydrantId)).toEqual([
          two,
          two,
          three,
          three,
          ten,
        ]);
        const by = (field: string, descending = false) =>
          names(store, 'hydrants', { field, descending });
        expect(await by('testedOn', true)).toEqual(['H-2', 'H-10', 'H-3', 'H-4']);
        expect(await by('q20Gpm')).toEqual(['H-10', 'H-2', 'H-3', 'H-4']);
        const { version } = (await store.get('hydrants', two))!;
        await store.change('hydrants', two, version, { planTestId: chosen.id });
        expect(await by('q20Gpm')).toEqual(['H-2', 'H-10', 'H-3', 'H-4']);
        expect(await by('testedOn')).toEqual(['H-2', 'H-3', 'H-10', 'H-4']);
        expect(four).toBeDefined();
        const q20 = await store.list('flow-tests', { sort: { field: 'q20Gpm' } });
        expect(q20.records.map(({ residualPsi }) => residualPsi)).toEqual([30, 40, 50, 50, 60]);
      }),
    );

    it(
      'goes on page by page, skipping and doubling nothing, while others are made and removed',
      withStore(fresh, async (store) => {
        const mains = [8, 6, undefined, 12, 6, 6, undefined, 8, 6.000000000000001, 24];
        for (const [at, mainIn] of mains.entries()) {
          const name = `H-${(at * 7) % 10}`;
          await store.create('hydrants', { ...hydrant(name), mainIn, sideOutlets: at % 3 });
        }
        for (const field of ['name', 'mainIn', 'status', 'sideOutlets', 'createdAt']) {
          for (const descending of [false, true]) {
            const sort = { field, descending };
            const whole = (await store.list('hydrants', { sort })).records.map(({ id }) => id);
            for (const limit of [1, 3, 4]) {
              expect(await paged(store, sort, limit)).toEqual(whole);
            }
          }
        }
        // The last of a page goes away, and others come before and behind it.
        const sort = { field: 'mainIn' };
        const whole = await names(store, 'hydrants', sort);
        const first = await store.list('hydrants', { sort, limit: 4 });
        const last = first.records.at(-1)!;
        await store.remove('hydrants', last.id, last.version);
        await store.create('hydrants', { ...hydrant('before'), mainIn: 2 });
        await store.create('hydrants', { ...hydrant('behind'), mainIn: 30 });
        const rest = await store.list('hydrants', { sort, after: first.next! });
        const seen = [...first.records, ...rest.records].map(({ name }) => name);
        expect(seen.filter((name) => name !== 'behind')).toEqual(whole);
        expect(seen).toContain('behind');
      }),
    );

    it(
      'may be asked by every field told of, and by no other',
      withStore(fresh, async (store) => {
        for (const kind of kinds) {
          for (const field of sortFields(kind)) {
            expect((await store.list(kind, { sort: { field } })).records).toEqual([]);
          }
        }
        await store.create('hydrants', hydrant('a'));
        await store.create('hydrants', hydrant('b'));
        const { next } = await store.list('hydrants', { sort: { field: 'name' }, limit: 1 });
        const token = (value: unknown) => Buffer.from(JSON.stringify(value)).toString('base64url');
        const [, , id] = JSON.parse(Buffer.from(next!, 'base64url').toString());
        const wrong: [Sort | undefined, string | undefined][] = [
          [{ field: 'stem' }, undefined],
          [{ field: 'origins' }, undefined],
          [{ field: 'note' }, undefined],
          [{ field: 'name_key' }, undefined],
          [{ field: "name'; drop table hydrants; --" }, undefined],
          [undefined, next],
          [{ field: 'name', descending: true }, next],
          [{ field: 'mainIn' }, next],
          [{ field: 'name' }, id],
          [{ field: 'name' }, token(['name', null, id])],
          [{ field: 'name' }, token(['name', 7, id])],
          [{ field: 'name' }, token(['name', 'a\u0000', id])],
          [{ field: 'name' }, token(['name', 'a', 'b'])],
          [{ field: 'mainIn' }, token(['mainIn', 'wide', id])],
          [{ field: 'name' }, '%%%'],
        ];
        for (const [sort, after] of wrong) {
          const query = { ...(sort && { sort }), ...(after !== undefined && { after }) };
          const error = await refusal(store.list('hydrants', query));
          expect(error).toBeInstanceOf(RecordIssuesError);
          const [issue] = (error as RecordIssuesError).issues;
          expect(issue?.path).toBe(after === undefined ? 'sort' : 'after');
        }
        const rigs = await refusal(store.list('rigs', { sort: { field: 'q20Gpm' } }));
        expect(rigs).toBeInstanceOf(RecordIssuesError);
      }),
    );
  });

  describe('a search', () => {
    it(
      'finds what belongs to a record by that record’s name, and by no other of its words',
      withStore(fresh, async (store) => {
        const { id: elm } = await store.create('hydrants', {
          ...hydrant('Élm 7'),
          note: 'stiff stem',
        });
        const { id: other } = await store.create('hydrants', hydrant('H-12_5'));
        const test = (hydrantId: string, by: string) =>
          store.create('flow-tests', {
            hydrantId,
            testedOn: '2024-05-01',
            staticPsi: 60,
            residualPsi: 40,
            by,
          });
        const first = await test(elm, 'C shift');
        const second = await test(other, 'Elm crew');
        const found = async (kind: Kind, search: string) => {
          const page = await store.list(kind, { search });
          expect(page.total).toBe(page.records.length);
          return page.records.map(({ id }) => id);
        };
        expect(await found('flow-tests', 'elm 7')).toEqual([first.id]);
        expect(await found('flow-tests', 'ELM')).toEqual([first.id, second.id]);
        expect(await found('flow-tests', 'elm shift')).toEqual([first.id]);
        expect(await found('flow-tests', '12_5')).toEqual([second.id]);
        expect(await found('flow-tests', '12x5')).toEqual([]);
        expect(await found('flow-tests', 'stem')).toEqual([]);
        const { id: stationId } = await store.create('stations', hydrant('Mill Street'));
        const rig = await store.create('rigs', { name: 'Engine 7', stationId });
        const hose = await store.create('hose', {
          name: '5-031',
          size: '5',
          lengthFt: 100,
          rigId: rig.id,
        });
        const pump = await store.create('pump-tests', {
          rigId: rig.id,
          testedOn: '2026-05-06',
          points: [{ flowGpm: 1500, netPsi: 150 }],
        });
        const building = await store.create('buildings', hydrant('Cold store'));
        const plan = await store.create('plans', {
          name: 'First alarm',
          text: 'plugside: 1',
          buildingId: building.id,
        });
        expect(await found('rigs', 'mill')).toEqual([rig.id]);
        expect(await found('hose', 'engine 7')).toEqual([hose.id]);
        expect(await found('pump-tests', 'engine')).toEqual([pump.id]);
        expect(await found('plans', 'cold alarm')).toEqual([plan.id]);
        await store.change('hydrants', elm, 1, { name: 'Oak 7' });
        expect(await found('flow-tests', 'oak')).toEqual([first.id]);
        expect(await found('flow-tests', 'elm')).toEqual([second.id]);
      }),
    );
  });
}

async function names<K extends 'hydrants' | 'streets' | 'hose'>(
  store: RecordStore,
  kind: K,
  sort: Sort,
): Promise<string[]> {
  return (await store.list(kind, { sort })).records.map(({ name }) => name);
}

async function paged(store: RecordStore, sort: Sort, limit: number): Promise<string[]> {
  const seen: string[] = [];
  let after: string | undefined;
  do {
    const page = await store.list('hydrants', { sort, limit, ...(after && { after }) });
    seen.push(...page.records.map(({ id }) => id));
    after = page.next;
  } while (after !== undefined);
  return seen;
}
