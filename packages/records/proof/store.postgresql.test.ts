import type { StoreTarget } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeSchema } from './acceptance/schema.ts';
import {
  ask,
  findPostgresql,
  type PostgresqlServer,
  startPostgresql,
} from './postgresql-server.ts';
import { storeAcceptance } from './store-acceptance.ts';

const bin = findPostgresql();

if (!bin) {
  const reason = 'PostgreSQL was NOT tested: no server programs under /usr/lib/postgresql';
  console.warn(`${reason}. To test it: apt-get install postgresql`);
  it.skip(reason, () => {});
} else {
  describe('records in PostgreSQL', () => {
    let server: PostgresqlServer;
    const fresh = async () => ({ url: await server.freshDatabase() });
    beforeAll(async () => {
      server = await startPostgresql(bin);
    }, 60_000);
    afterAll(() => server?.stop(), 60_000);

    storeAcceptance(fresh);
    describeSchema(fresh, async (target, statement) => {
      await ask(urlOf(target), statement);
    });

    it('the server puts each commit on the disk before it answers', async () => {
      const { url } = await fresh();
      for (const setting of ['fsync', 'synchronous_commit', 'full_page_writes']) {
        const { rows } = await ask(url, `show ${setting}`);
        expect(rows[0]).toEqual({ [setting]: 'on' });
      }
    });
  });
}

function urlOf(target: StoreTarget): string {
  return (target as { url: string }).url;
}
