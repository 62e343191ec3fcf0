/**
 * No acknowledged write is lost, at whatever moment the writer dies. The writer is a process of
 * its own, killed with SIGKILL; for PostgreSQL the server is crashed as well.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore, type StoreTarget } from '@plugside/records';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  ask,
  findPostgresql,
  type PostgresqlServer,
  startPostgresql,
} from '../postgresql-server.ts';
import { type Acknowledged, halfDone, lostFrom } from './acknowledged.ts';
import { buildWriter } from './build-writer.ts';
import { killWriter } from './kill-writer.ts';

/** Longest time that a writer is left to write [ms]. */
const LONGEST_MS = 250;

let built: string;
beforeAll(async () => {
  built = await buildWriter();
}, 60_000);
afterAll(() => rmSync(built, { recursive: true, force: true }));

describe('a writer killed at a random moment', () => {
  const folder = mkdtempSync(join(tmpdir(), 'plugside-crash-'));
  const file = join(folder, 'district.db');
  const all: Acknowledged[] = [];
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(Array.from({ length: 20 }, (_, round) => round))(
    'SQLite, round %i: everything acknowledged is there, in this round and all before',
    async (round) => {
      const acknowledged = await killWriter(built, { file }, round, Math.random() * LONGEST_MS);
      expect(acknowledged.length).toBeGreaterThan(0);
      all.push(...acknowledged);
      await checkStore({ file }, all);
      const database = new Database(file, { readonly: true });
      expect(database.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
      expect(database.pragma('foreign_key_check')).toEqual([]);
      database.close();
    },
    60_000,
  );

  it('SQLite: the rounds wrote in every way there is', () => {
    expect(new Set(all.map(({ did }) => did))).toEqual(
      new Set(['create', 'change', 'remove', 'pair', 'merge']),
    );
  });
});

const bin = findPostgresql();
describe.skipIf(!bin)('PostgreSQL', () => {
  let server: PostgresqlServer;
  let url: string;
  const all: Acknowledged[] = [];
  beforeAll(async () => {
    server = await startPostgresql(bin!);
    url = await server.freshDatabase();
  }, 60_000);
  afterAll(() => server?.stop(), 60_000);

  it('puts each commit on the disk before it answers', async () => {
    for (const setting of ['fsync', 'synchronous_commit', 'full_page_writes']) {
      expect((await ask(url, `show ${setting}`)).rows).toEqual([{ [setting]: 'on' }]);
    }
  });

  it.each([
    ['the writer killed', 0],
    ['the server crashed', 1],
    ['the writer killed again', 2],
  ])(
    'with %s at a random moment: everything acknowledged is there',
    async (what, round) => {
      const crash = what === 'the server crashed' ? () => server.crashAndStart() : undefined;
      const acknowledged = await killWriter(built, { url }, round, Math.random() * 1000, crash);
      expect(acknowledged.length).toBeGreaterThan(0);
      all.push(...acknowledged);
      await checkStore({ url }, all);
    },
    60_000,
  );
});

async function checkStore(target: StoreTarget, all: readonly Acknowledged[]): Promise<void> {
  const store = await openStore(target);
  expect(await lostFrom(store, all)).toEqual([]);
  expect(await halfDone(store)).toEqual([]);
  await store.close();
}
