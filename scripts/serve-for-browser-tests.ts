import { fileURLToPath } from 'node:url';
import { createApp, listen } from '@plugside/server';
import type {} from 'vitest';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served, ending in a slash. */
    appUrl: string;
  }
}

/** Serves the built app for the length of the browser tests, by the server that people use. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const webRoot = fileURLToPath(new URL('../packages/web/dist', import.meta.url));
  const app = createApp({ webRoot, version: 'test' });
  const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
  project.provide('appUrl', server.url);
  return () => server.close();
}
