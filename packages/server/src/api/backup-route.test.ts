import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { openStore, restore } from '@plugside/records';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type TestServer, testServer } from '../test-server.ts';

let server: TestServer;

beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

it('sends an archive that restores to the same records', async () => {
  const hydrant = await server.add('hydrants', { name: 'H-1', longitude: -71, latitude: 42 });
  const setting = await server.add('settings', { name: 'district', value: { name: 'Ours' } });
  const answer = await server.ask('/backup');
  expect(answer.headers.get('content-type')).toBe('application/zip');
  expect(answer.headers.get('content-disposition')).toMatch(
    /^attachment; filename="[\w.-]+\.zip"$/,
  );
  const archive = join(server.folder, 'archive.zip');
  await writeFile(archive, new Uint8Array(await answer.arrayBuffer()));
  const target = { file: join(server.folder, 'restored.sqlite') };
  await restore(archive, target);
  const restored = await openStore(target);
  try {
    expect(await restored.get('hydrants', hydrant.id)).toEqual(hydrant);
    expect(await restored.get('settings', setting.id)).toEqual(setting);
  } finally {
    await restored.close();
  }
});
