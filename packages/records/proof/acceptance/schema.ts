import { openStore, StoreOpenError, type StoreTarget } from '@plugside/records';
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
