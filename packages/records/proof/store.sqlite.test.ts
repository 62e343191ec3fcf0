import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { StoreTarget } from '@plugside/records';
import Database from 'better-sqlite3';
import { afterAll, describe } from 'vitest';
import { describeSchema } from './acceptance/schema.ts';
import { storeAcceptance } from './store-acceptance.ts';

const folder = mkdtempSync(join(tmpdir(), 'plugside-sqlite-'));
let files = 0;

afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function fresh(): Promise<StoreTarget> {
  files += 1;
  return { file: join(folder, `district-${files}.db`) };
}

describe('records in a SQLite file', () => {
  storeAcceptance(fresh);
  describeSchema(fresh, async (target, statement) => {
    past(target, (database) => database.exec(statement));
  });
});

describe('records in memory', () => {
  storeAcceptance(async () => ({ memory: true }));
});

function past<T>(target: StoreTarget, work: (database: Database.Database) => T): T {
  const database = new Database((target as { file: string }).file);
  try {
    return work(database);
  } finally {
    database.close();
  }
}
