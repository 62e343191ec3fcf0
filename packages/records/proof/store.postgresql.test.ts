import type { StoreTarget } from '@plugside/records';
import { afterAll, beforeAll, describe, it } from 'vitest';
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
      // What a power cut leaves is looked at elsewhere; here it only takes time.
      server = await startPostgresql(bin, ['fsync=off']);
    }, 60_000);
    afterAll(() => server?.stop(), 60_000);

    storeAcceptance(fresh);
    describeSchema(fresh, async (target, statement) => {
      await ask(urlOf(target), statement);
    });
  });
}

function urlOf(target: StoreTarget): string {
  return (target as { url: string }).url;
}
