/** An import does the same on either database: whole, again without doubling, or not at all. */
import { fileURLToPath } from 'node:url';
import {
  exportCsv,
  guessMapping,
  openStore,
  readSource,
  runImport,
  type StoreTarget,
} from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { findPostgresql, type PostgresqlServer, startPostgresql } from './postgresql-server.ts';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const data = (name: string) => fileURLToPath(new URL(`../test-data/${name}`, import.meta.url));

describe('an import into SQLite', () => sameOnEither(async () => ({ memory: true })));

const bin = findPostgresql();
describe.skipIf(!bin)('an import into PostgreSQL', () => {
  let server: PostgresqlServer;
  beforeAll(async () => {
    server = await startPostgresql(bin!, ['fsync=off']);
  });
  afterAll(() => server?.stop());
  sameOnEither(async () => ({ url: await server.freshDatabase() }));
});

function sameOnEither(fresh: () => Promise<StoreTarget>): void {
  it('adds every hydrant once, changes one that the list changed, and keeps the rest', async () => {
    const store = await openStore(await fresh());
    const source = await readSource(data('hydrants.geojson'));
    const mapping = guessMapping('hydrants', source);
    expect(await runImport(store, source, mapping)).toMatchObject({ added: 479, refusedCount: 0 });
    expect(await runImport(store, source, mapping)).toMatchObject({ added: 0, same: 479 });

    const otherwise = structuredClone(mapping);
    for (const field of otherwise.fields)
      if (field.field === 'type') field.words = { pillar: 'wall' };
    const changed = await runImport(store, source, otherwise);
    expect(changed.added).toBe(0);
    expect(changed.changed + changed.same).toBe(479);
    expect(await store.list('hydrants', { where: { type: 'wall' } })).toMatchObject({
      total: changed.changed,
    });
    expect(changed.changed).toBeGreaterThan(0);
    expect(await store.count('hydrants')).toBe(479);

    let lines = 0;
    for await (const text of exportCsv(store, 'hydrants')) lines += text.split('\r\n').length - 1;
    expect(lines).toBe(480);
    await store.close();
  });

  it('writes nothing when it is stopped on the way', async () => {
    const store = await openStore(await fresh());
    const source = await readSource(data('buildings.geojson'));
    const stop = new AbortController();
    const rows = source.rows;
    const slow = {
      ...source,
      async *rows() {
        let read = 0;
        for await (const row of rows()) {
          read += 1;
          if (read === 200) stop.abort(new Error('stopped'));
          yield row;
        }
      },
    };
    const mapping = guessMapping('buildings', source);
    await expect(runImport(store, slow, mapping, { signal: stop.signal })).rejects.toThrow(
      'stopped',
    );
    expect(await store.count('buildings')).toBe(0);
    await store.close();
  });
}
