/** Whose a value is, once somebody has changed it. */
import { describe, expect, it } from 'vitest';
import { collect, type Fresh, hydrant, withStore } from './trial.ts';

const listed = (text: string) => ({ kind: 'imported' as const, text });
const fromList = {
  ...hydrant('H-1'),
  mainIn: 6,
  owner: 'Town',
  status: 'out of service' as const,
  externalSource: 'Invented list',
  externalId: '1',
  origins: {
    mainIn: listed('list.csv, main'),
    owner: listed('list.csv, owner'),
    status: listed('list.csv, status'),
  },
};

export function describeOrigins(fresh: Fresh): void {
  describe('the origin of a value', () => {
    it(
      'goes when the value is changed by hand, and stays with the values beside it',
      withStore(fresh, async (store) => {
        const { id } = await store.create('hydrants', fromList);
        const after = await store.change('hydrants', id, 1, { mainIn: 8, owner: 'Town' });
        expect(after.origins).toEqual({
          owner: fromList.origins.owner,
          status: fromList.origins.status,
        });
        expect(await store.get('hydrants', id)).toStrictEqual(after);
      }),
    );

    it(
      'is the one that is given with the value; one sent back as it was read is none',
      withStore(fresh, async (store) => {
        const { id } = await store.create('hydrants', fromList);
        const measured = { kind: 'measured' as const, text: 'calipers' };
        const first = await store.change('hydrants', id, 1, {
          mainIn: 8,
          origins: { mainIn: measured },
        });
        expect(first.origins).toEqual({ ...fromList.origins, mainIn: measured });
        const echoed = await store.change('hydrants', id, 2, {
          mainIn: 10,
          origins: first.origins,
        });
        expect(echoed.origins).not.toHaveProperty('mainIn');
        expect(echoed.origins.owner).toEqual(fromList.origins.owner);
      }),
    );

    it(
      'can be taken away alone, by field or all at once',
      withStore(fresh, async (store) => {
        const { id } = await store.create('hydrants', fromList);
        const owner = { owner: undefined } as never;
        const after = await store.change('hydrants', id, 1, { origins: owner });
        expect(after).toMatchObject({ version: 2, owner: 'Town', mainIn: 6 });
        expect(Object.keys(after.origins).sort()).toEqual(['mainIn', 'status']);
        const bare = await store.change('hydrants', id, 2, { origins: undefined });
        expect(bare.origins).toEqual({});
      }),
    );

    it(
      'says that a person was there where the value alone would not: cleared, or as filled in',
      withStore(fresh, async (store) => {
        const { id } = await store.create('hydrants', fromList);
        const after = await store.change('hydrants', id, 1, {
          mainIn: undefined,
          status: 'in service',
        });
        expect(after).not.toHaveProperty('mainIn');
        const today = new Date().toISOString().slice(0, 10);
        expect(after.origins).toEqual({
          owner: fromList.origins.owner,
          mainIn: { kind: 'department', text: 'cleared by hand', date: today },
          status: { kind: 'department', text: 'entered by hand', date: today },
        });
        const typed = await store.change('hydrants', id, 2, { mainIn: 8 });
        expect(typed.origins).not.toHaveProperty('mainIn');
      }),
    );

    it(
      'that a list does not give for the value it changes is gone too',
      withStore(fresh, async (store) => {
        await store.merge('hydrants', [fromList]);
        const row = { ...hydrant('H-1'), externalSource: 'Invented list', externalId: '1' };
        await store.merge('hydrants', [{ ...row, mainIn: 12, owner: undefined, origins: {} }]);
        const [one] = await collect(store.all('hydrants'));
        expect(one).toMatchObject({ mainIn: 12, origins: { status: fromList.origins.status } });
        expect(Object.keys(one!.origins)).toEqual(['status']);
        await store.merge('hydrants', [
          { ...row, mainIn: 14, origins: { mainIn: listed('list.csv, main') } },
        ]);
        await store.merge('hydrants', [
          { ...row, mainIn: 16, origins: { mainIn: listed('list.csv, main') } },
        ]);
        const [again] = await collect(store.all('hydrants'));
        expect(again?.origins.mainIn).toEqual(listed('list.csv, main'));
      }),
    );
  });
}
