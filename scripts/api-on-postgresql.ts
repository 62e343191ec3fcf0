/** For the API's tests on PostgreSQL: one server for all of them, and an empty database for whoever asks. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { TestProject } from 'vitest/node';
import { findPostgresql, startPostgresql } from '../packages/records/proof/postgresql-server.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where to ask for an empty database's address. */
    freshPostgresqlDatabase: string;
  }
}

/** Runs once, before the first of these tests; what it returns runs after the last. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const bin = findPostgresql();
  if (!bin) throw new Error('PostgreSQL has no server programs on this machine.');
  // What a power cut leaves is looked at elsewhere; here it only takes time.
  const postgresql = await startPostgresql(bin, ['fsync=off']);
  const desk = createServer((_asked, answer) => {
    postgresql.freshDatabase().then(
      (url) => answer.end(url),
      (error) => answer.writeHead(500).end(String(error)),
    );
  });
  await new Promise<void>((resolve) => desk.listen(0, '127.0.0.1', resolve));
  const { port } = desk.address() as AddressInfo;
  project.provide('freshPostgresqlDatabase', `http://127.0.0.1:${port}/`);
  return async () => {
    desk.closeAllConnections();
    desk.close();
    await postgresql.stop();
  };
}
