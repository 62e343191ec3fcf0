import { existsSync } from 'node:fs';
import type { District, RecordStore, StoreTarget } from '@plugside/records';
import { CommandFailure } from '../failure.ts';
import { withRecords } from './records.ts';

type Records = Parameters<Parameters<typeof withRecords>[0]>[0];

/**
 * Work on the records of a database that is there: a slip in a file's name would otherwise make an
 * empty one.
 * @throws CommandFailure
 */
export async function withDistrict<T>(
  target: StoreTarget,
  work: (store: RecordStore, district: District, records: Records) => Promise<T>,
): Promise<T> {
  if ('file' in target && !existsSync(target.file)) {
    throw new CommandFailure(`There is no file ${target.file}. Name the records' file with --db.`);
  }
  return withRecords(async (records) => {
    const store = await records.openStore(target);
    try {
      return await work(store, await records.readDistrict(store), records);
    } finally {
      await store.close();
    }
  });
}
