import { RecordIssuesError } from '@plugside/records';
import type { FieldsIn } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { collect, type Fresh, hydrant, refusal, withStore } from './trial.ts';

type Row = FieldsIn<'hydrants'>;

const row = (n: number, more: Partial<Row> = {}): Row => ({
  ...hydrant(`H-${n}`),
  externalSource: 'Invented list',
  externalId: String(n),
  ...more,
});

function* rows(count: number): Iterable<Row> {
  for (let n = 1; n <= count; n += 1) yield row(n);
}

export function describeMerge(fresh: Fresh): void {
  describe('a merge', () => {
    it(
      'adds a list, and the same list again changes nothing',
      withStore(fresh, async (store) => {
        expect(await store.merge('hydrants', rows(1234))).toEqual({
          added: 1234,
          changed: 0,
          same: 0,
        });
        const before = await collect(store.all('hydrants'));
        expect(await store.merge('hydrants', rows(1234))).toEqual({
          added: 0,
          changed: 0,
          same: 1234,
        });
        expect(await collect(store.all('hydrants'))).toStrictEqual(before);
      }),
    );

    it(
      'changes what the list has changed, adds what is new, and keeps what it has no column for',
      withStore(fresh, async (store) => {
        await store.merge('hydrants', [row(1, { mainIn: 8 }), row(2, { mainIn: 8 })]);
        const [one] = await collect(store.all('hydrants', { externalId: '1' }));
        await store.change('hydrants', one!.id, 1, { note: 'Ours', sideOutlets: 1 });
        const again = [row(1, { mainIn: 12 }), row(2, { mainIn: 8 }), row(3)];
        expect(await store.merge('hydrants', again)).toEqual({ added: 1, changed: 1, same: 1 });
        expect(await store.get('hydrants', one!.id)).toMatchObject({
          id: one!.id,
          version: 3,
          createdAt: one!.createdAt,
          mainIn: 12,
          note: 'Ours',
          sideOutlets: 1,
        });
        const [two] = await collect(store.all('hydrants', { externalId: '2' }));
        expect(two!.version).toBe(1);
      }),
    );

    it(
      'clears a field given as undefined, its origin too, and joins origins by field',
      withStore(fresh, async (store) => {
        const from = (text: string) => ({ kind: 'imported' as const, text });
        const first = row(1, {
          mainIn: 8,
          owner: 'Town',
          type: 'wall',
          origins: { mainIn: from('a'), owner: from('a'), type: from('a') },
        });
        await store.merge('hydrants', [first]);
        const second = row(1, { owner: undefined, mainIn: 10, origins: { mainIn: from('b') } });
        await store.merge('hydrants', [second]);
        const [one] = await collect(store.all('hydrants'));
        expect(one).not.toHaveProperty('owner');
        expect(one?.mainIn).toBe(10);
        expect(one?.origins).toEqual({ mainIn: from('b'), type: from('a') });
      }),
    );

    it(
      'takes the later of two rows with one key, in one batch and far apart',
      withStore(fresh, async (store) => {
        const list = [row(1), row(1, { mainIn: 6 }), ...rows(1100), row(1, { mainIn: 10 })];
        const { added, changed, same } = await store.merge('hydrants', list);
        expect({ added, total: added + changed + same }).toEqual({
          added: 1100,
          total: list.length,
        });
        const [one] = await collect(store.all('hydrants', { externalId: '1' }));
        expect(one?.mainIn).toBe(10);
        expect(await store.count('hydrants')).toBe(1100);
      }),
    );

    it(
      'adds rows without a key each time',
      withStore(fresh, async (store) => {
        await store.merge('hydrants', [hydrant('a'), hydrant('a')]);
        await store.merge('hydrants', [hydrant('a')]);
        expect(await store.count('hydrants')).toBe(3);
      }),
    );

    it(
      'with one wrong row writes nothing and names the row',
      withStore(fresh, async (store) => {
        const list = [...rows(700), row(701, { latitude: 91 }), row(702)];
        const error = await refusal(store.merge('hydrants', list));
        expect(error).toBeInstanceOf(RecordIssuesError);
        expect((error as RecordIssuesError).issues).toMatchObject([
          { path: 'rows[700].latitude', value: 91 },
        ]);
        expect(await store.count('hydrants')).toBe(0);
        const lost = { hydrantId: '01ARZ3NDEKTSV4RRFFQ69G5FAV', testedOn: '2026-01-01' };
        const tests = [{ ...lost, staticPsi: 60, residualPsi: 40 }];
        const unknown = (await refusal(store.merge('flow-tests', tests))) as RecordIssuesError;
        expect(unknown.issues).toMatchObject([{ path: 'rows[0].hydrantId' }]);
      }),
    );

    it(
      'that is cancelled writes nothing',
      withStore(fresh, async (store) => {
        await store.merge('hydrants', [row(1)]);
        const cancel = new AbortController();
        const onProgress = (done: number) => {
          if (done >= 1000) cancel.abort();
        };
        const list = [row(1, { mainIn: 6 }), ...rows(3000)];
        const error = await refusal(
          store.merge('hydrants', list, { signal: cancel.signal, onProgress }),
        );
        expect(error).toMatchObject({ name: 'AbortError' });
        const left = await collect(store.all('hydrants'));
        expect(left).toMatchObject([{ externalId: '1', version: 1 }]);
        expect(left[0]).not.toHaveProperty('mainIn');
        const late = store.merge('hydrants', rows(1), { signal: cancel.signal });
        expect(await refusal(late)).toMatchObject({ name: 'AbortError' });
      }),
    );

    it(
      'whose list breaks off writes nothing',
      withStore(fresh, async (store) => {
        async function* broken(): AsyncIterable<Row> {
          yield* rows(2000);
          throw new Error('The file ends in the middle of a row.');
        }
        const error = await refusal(store.merge('hydrants', broken()));
        expect(error).toMatchObject({ message: 'The file ends in the middle of a row.' });
        expect(await store.count('hydrants')).toBe(0);
      }),
    );

    it(
      'takes 100,000 rows from a stream, tells how far it is, and lets others read meanwhile',
      withStore(fresh, async (store, target) => {
        async function* stream(): AsyncIterable<Row> {
          yield* rows(100_000);
        }
        // The same code as on a file, and minutes of a busy machine.
        if ('memory' in target) return;
        const told: number[] = [];
        const merging = store.merge('hydrants', stream(), {
          onProgress: (done) => told.push(done),
        });
        expect(await store.count('hydrants')).toBe(0);
        expect(told.at(-1) ?? 0).toBeLessThan(100_000);
        expect(await merging).toEqual({ added: 100_000, changed: 0, same: 0 });
        expect(told.at(-1)).toBe(100_000);
        expect(told).toEqual([...told].sort((a, b) => a - b));
        expect(await store.count('hydrants')).toBe(100_000);
      }),
      120_000,
    );
  });
}
