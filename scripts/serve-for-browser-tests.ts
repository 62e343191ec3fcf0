import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createApp, listen, openRecords } from '@plugside/server';
import type {} from 'vitest';
import type { TestProject } from 'vitest/node';
import { onePictureFile, onePng } from '../packages/web/browser-tests/test-tiles.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served, ending in a slash. */
    appUrl: string;
    /** The same over the same records, with a file of map tiles (PMTiles) of one colour. */
    tiledAppUrl: string;
    /** Another server's map tiles, of one colour: `${tilesUrl}{z}/{x}/{y}.png`. */
    tilesUrl: string;
  }
}

/** Of every test tile; of nothing that the app draws. */
const TILE_COLOUR = [200, 0, 200] as const;

/** Serves the built app for the length of the browser tests, by the server that people use, over records of their own. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const webRoot = fileURLToPath(new URL('../packages/web/dist', import.meta.url));
  const folder = await mkdtemp(join(tmpdir(), 'plugside-browser-tests-'));
  const target = { file: join(folder, 'records.sqlite') };
  const { store } = await openRecords({ target, isDefault: false, demo: true });
  const app = createApp({ webRoot, version: 'test', store });
  const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
  project.provide('appUrl', server.url);

  const picture = onePng(TILE_COLOUR);
  const baseMapFile = join(folder, 'tiles.pmtiles');
  await writeFile(baseMapFile, onePictureFile(picture, { attribution: '<b>Test</b> survey' }));
  const tiledApp = createApp({ webRoot, version: 'test', store, baseMapFile });
  const tiledServer = await listen(tiledApp, { host: '127.0.0.1', port: 0, portGiven: true });
  project.provide('tiledAppUrl', tiledServer.url);

  const tiles = createServer((_, answer) => {
    answer.writeHead(200, { 'content-type': 'image/png', 'access-control-allow-origin': '*' });
    answer.end(picture);
  });
  await new Promise<void>((ready) => tiles.listen(0, '127.0.0.1', ready));
  project.provide('tilesUrl', `http://127.0.0.1:${(tiles.address() as AddressInfo).port}/`);

  return async () => {
    tiles.close();
    tiles.closeAllConnections();
    await tiledServer.close();
    await server.close();
    await store.close();
    await rm(folder, { recursive: true });
  };
}
