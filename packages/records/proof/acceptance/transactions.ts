import { DuplicateKeyError, StaleRecordError } from '@plugside/records';
import { describe, expect, it } from 'vitest';
import { collect, type Fresh, hydrant, refusal, withStore } from './trial.ts';

export function describeTransactions(fresh: Fresh): void {
  describe('a transaction', () => {
    it(
      'writes all of its work, and sees it while at it',
      withStore(fresh, async (store) => {
        const id = await store.transaction(async (inner) => {
          const one = await inner.create('hydrants', hydrant('H-1'));
          expect(await inner.get('hydrants', one.id)).toStrictEqual(one);
          expect(await inner.count('hydrants')).toBe(1);
          expect(await collect(inner.all('hydrants'))).toHaveLength(1);
          await inner.change('hydrants', one.id, 1, { mainIn: 8 });
          await inner.merge('hydrants', [hydrant('H-2')]);
          return one.id;
        });
        expect((await store.get('hydrants', id))?.version).toBe(2);
        expect(await store.count('hydrants')).toBe(2);
      }),
    );

    it(
      'that throws writes none of it',
      withStore(fresh, async (store) => {
        const work = store.transaction(async (inner) => {
          await inner.create('hydrants', hydrant('H-1'));
          await inner.merge('hydrants', [hydrant('H-2')]);
          throw new Error('Second thoughts.');
        });
        expect(await refusal(work)).toMatchObject({ message: 'Second thoughts.' });
        expect(await store.count('hydrants')).toBe(0);
      }),
    );

    it(
      'goes on after a refusal inside it, and takes an inner one back by itself',
      withStore(fresh, async (store) => {
        await store.transaction(async (inner) => {
          const key = { externalSource: 'list', externalId: '1' };
          const { id } = await inner.create('hydrants', { ...hydrant('H-1'), ...key });
          const twice = inner.create('hydrants', { ...hydrant('H-2'), ...key });
          expect(await refusal(twice)).toBeInstanceOf(DuplicateKeyError);
          const stale = inner.change('hydrants', id, 7, {});
          expect(await refusal(stale)).toBeInstanceOf(StaleRecordError);
          const undone = inner.transaction(async (innermost) => {
            await innermost.create('hydrants', hydrant('H-3'));
            throw new Error('Not this one.');
          });
          expect(await refusal(undone)).toMatchObject({ message: 'Not this one.' });
          await inner.create('hydrants', hydrant('H-4'));
        });
        const names = (await collect(store.all('hydrants'))).map(({ name }) => name);
        expect(names).toEqual(['H-1', 'H-4']);
      }),
    );

    it(
      'does work that is begun all at once',
      withStore(fresh, async (store) => {
        await store.transaction(async (inner) => {
          const key = { externalSource: 'list', externalId: '1' };
          const tries = Array.from({ length: 6 }, (_, n) =>
            inner.create('hydrants', { ...hydrant(`H-${n}`), ...(n % 2 ? key : {}) }),
          );
          const outcomes = await Promise.allSettled(tries);
          expect(outcomes.map(({ status }) => status === 'fulfilled')).toEqual([
            true,
            true,
            true,
            false,
            true,
            false,
          ]);
        });
        expect(await store.count('hydrants')).toBe(4);
      }),
    );

    it(
      'of many at once: each is whole',
      withStore(fresh, async (store) => {
        const { id } = await store.create('rigs', { name: 'Engine 1', tankGal: 0 });
        const addOne = () =>
          store.transaction(async (inner) => {
            const { version, tankGal = 0 } = (await inner.get('rigs', id))!;
            await inner.change('rigs', id, version, { tankGal: tankGal + 1 });
          });
        let left = 20;
        const untilDone = async () => {
          while (left > 0) {
            left -= 1;
            await addOne().catch((error) => {
              if (!(error instanceof StaleRecordError)) throw error;
              left += 1;
            });
          }
        };
        await Promise.all([untilDone(), untilDone(), untilDone(), untilDone()]);
        expect((await store.get('rigs', id))?.tankGal).toBe(20);
      }),
    );

    it(
      'of two that change records which refer to each other: both go through',
      withStore(fresh, async (store) => {
        const { id } = await store.create('hydrants', hydrant('H-1'));
        const test = await store.create('flow-tests', {
          hydrantId: id,
          testedOn: '2026-01-01',
          staticPsi: 60,
          residualPsi: 40,
        });
        await store.change('hydrants', id, 1, { planTestId: test.id });
        for (let round = 1; round <= 15; round += 1) {
          const changes = await Promise.all([
            store.change('hydrants', id, round + 1, { note: `round ${round}` }),
            store.change('flow-tests', test.id, round, { note: `round ${round}` }),
          ]);
          expect(changes.map(({ version }) => version)).toEqual([round + 2, round + 1]);
        }
      }),
    );
  });
}
