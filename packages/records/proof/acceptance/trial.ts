import { openStore, type RecordStore, type StoreTarget } from '@plugside/records';

export type Fresh = () => Promise<StoreTarget>;

/** Opens an empty store for one test, and closes it whatever comes of the test. */
export function withStore(
  fresh: Fresh,
  test: (store: RecordStore, target: StoreTarget) => Promise<void>,
): () => Promise<void> {
  return async () => {
    const target = await fresh();
    const store = await openStore(target);
    try {
      await test(store, target);
    } finally {
      await store.close();
    }
  };
}

/** What the work is refused with; a test fails where it is not refused. */
export async function refusal(work: Promise<unknown>): Promise<unknown> {
  try {
    await work;
  } catch (error) {
    return error;
  }
  throw new Error('It was not refused.');
}

export async function collect<T>(rows: AsyncIterable<T>): Promise<T[]> {
  const all: T[] = [];
  for await (const row of rows) all.push(row);
  return all;
}

export const hydrant = (name: string) => ({ name, longitude: -84.1, latitude: 33.4 });
