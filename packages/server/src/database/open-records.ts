import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { fillDemo, kinds, type OpenedStore, openStore, type RecordStore } from '@plugside/records';
import type { DatabaseSettings } from './database-settings.ts';

export interface OpenedRecords {
  store: OpenedStore;
  /** For the person who started the server; left out where there is nothing to say. */
  notice?: string;
}

/** Puts the demo district into an empty store. */
export type Fill = (store: RecordStore) => Promise<unknown>;

/**
 * Opens the records to be served. The default database is made where it is missing, with the demo
 * district in it; one that somebody named is made empty, and filled only on request.
 * @throws StoreOpenError
 */
export async function openRecords(
  settings: Omit<DatabaseSettings, 'terrainFile'>,
  fill: Fill = fillDemo,
): Promise<OpenedRecords> {
  const { target, isDefault, demo } = settings;
  if (isDefault && 'file' in target && !existsSync(target.file)) {
    await makeFilled(target.file, fill);
    const notice = `New records in ${target.file}, with an invented district to try things on.`;
    return { store: await openStore(target), notice };
  }
  const store = await openStore(target);
  if (!demo || isDefault) return { store };
  if (!(await isEmpty(store))) {
    return { store, notice: 'PLUGSIDE_DEMO is 1, but the database holds records: left as it is.' };
  }
  await fill(store);
  return { store, notice: 'The empty database was filled with an invented district.' };
}

/** Under another name until it is whole, so that a start that is cut short leaves no half of it. */
async function makeFilled(file: string, fill: Fill): Promise<void> {
  mkdirSync(dirname(file), { recursive: true });
  const unfinished = `${file}.new-${process.pid}`;
  try {
    const store = await openStore({ file: unfinished });
    try {
      await fill(store);
    } finally {
      await store.close();
    }
    renameSync(unfinished, file);
  } finally {
    for (const end of ['', '-wal', '-shm']) rmSync(unfinished + end, { force: true });
  }
}

async function isEmpty(store: RecordStore): Promise<boolean> {
  const counts = await Promise.all(kinds.map((kind) => store.count(kind)));
  return counts.every((count) => count === 0);
}
