import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createApp, listen, openRecords } from '@plugside/server';
import type {} from 'vitest';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served, ending in a slash. */
    appUrl: string;
  }
}

/** Serves the built app for the length of the browser tests, by the server that people use, over records of their own. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const webRoot = fileURLToPath(new URL('../packages/web/dist', import.meta.url));
  const folder = await mkdtemp(join(tmpdir(), 'plugside-browser-tests-'));
  const target = { file: join(folder, 'records.sqlite') };
  const { store } = await openRecords({ target, isDefault: false, demo: true });
  const app = createApp({ webRoot, version: 'test', store });
  const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
  project.provide('appUrl', server.url);
  return async () => {
    await server.close();
    await store.close();
    await rm(folder, { recursive: true });
  };
}
