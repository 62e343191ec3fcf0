import type { Kind, Stored } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import { inTurns } from './in-turns.ts';

/** Every record of a kind in one list, with other work let in now and then while it is read. */
export async function everyRecord<K extends Kind>(
  store: Pick<RecordStore, 'all'>,
  kind: K,
): Promise<Stored<K>[]> {
  const found: Stored<K>[] = [];
  for await (const record of inTurns(store.all(kind))) found.push(record);
  return found;
}
