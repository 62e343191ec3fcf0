import { openStore, StoreOpenError, type StoreTarget } from '@plugside/records';
import { kinds, recordSchemas } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { type Fresh, refusal } from './trial.ts';

/** @param run a statement past the store */
export function describeSchema(
  fresh: Fresh,
  run: (target: StoreTarget, statement: string) => Promise<void>,
): void {
  describe('the tables', () => {
    it('can be opened by several at once when there is nothing yet', async () => {
      const target = await fresh();
      const stores = await Promise.all([1, 2, 3].map(() => openStore(target)));
      const [one, two] = stores;
      const { id } = await one!.create('hydrants', { name: 'H-1', longitude: 0, latitude: 0 });
      expect((await two!.get('hydrants', id))?.name).toBe('H-1');
      for (const store of stores) await store.close();
    });

    it('of an older version take in what lists are put in order by', async () => {
      const target = await fresh();
      const before = await openStore(target);
      const ids: string[] = [];
      for (const name of ['H-10', 'Élm 3', 'H-2']) {
        ids.push((await before.create('hydrants', { name, longitude: 0, latitude: 0 })).id);
      }
      for (const [at, residualPsi] of [40, 50, 60].entries()) {
        await before.create('flow-tests', {
          hydrantId: ids[at]!,
          testedOn: '2024-05-01',
          staticPsi: 60,
          residualPsi,
          flowing: [{ flowGpm: 1000 }],
        });
      }
      await before.close();
      for (const kind of kinds) {
        if (!('name' in recordSchemas[kind].shape)) continue;
        await run(target, `alter table ${kind.replace('-', '_')} drop column name_key`);
      }
      await run(target, 'alter table flow_tests drop column q20_gpm');
      await run(target, 'alter table hydrants drop column main');
      await run(target, 'alter table hydrants drop column main_fed_from');
      await run(target, 'alter table water_sources drop column lift_ft');
      await run(target, "delete from plugside_migration where name >= '0004-order'");
      const after = await openStore(target);
      const names = async (field: string) =>
        (await after.list('hydrants', { sort: { field } })).records.map(({ name }) => name);
      expect(await names('name')).toEqual(['Élm 3', 'H-2', 'H-10']);
      // At 20 psi 1000·(40/20)^0.54 and 1000·(40/10)^0.54; the third did not drop.
      expect(await names('q20Gpm')).toEqual(['H-10', 'Élm 3', 'H-2']);
      expect((await after.get('hydrants', ids[0]!))?.version).toBe(1);
      await after.close();
    });

    it('of a newer version are refused and left alone', async () => {
      const target = await fresh();
      await (await openStore(target)).close();
      const step = "insert into plugside_migration (name, timestamp) values ('9999-later', '')";
      await run(target, step);
      const error = await refusal(openStore(target));
      expect(error).toBeInstanceOf(StoreOpenError);
      expect((error as Error).message).toContain('newer version');
      expect((error as Error).message).toContain('9999-later');
    });
  });
}
