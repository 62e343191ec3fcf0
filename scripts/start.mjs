/** `npm start`: installs and builds what is missing or stale, then serves the app. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildStale } from './build.mjs';
import { installMissing, requireNode } from './install.mjs';
import { root } from './tools.mjs';

requireNode();
await installMissing();
if (!(await buildStale())) {
  console.error('The build failed; the lines above say where.');
  process.exit(1);
}

// Built just now, so it cannot be imported at the top.
const {
  addressesOf,
  checkTilesFile,
  createApp,
  isLoopback,
  listen,
  openRecords,
  readBaseMapFile,
  readDatabaseSettings,
  readHostNames,
  readSettings,
} = await import('@plugside/server');
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

try {
  const settings = readSettings(process.env);
  const database = readDatabaseSettings(process.env, root);
  const baseMapFile = readBaseMapFile(process.env);
  if (baseMapFile) await checkTilesFile(baseMapFile);
  const { store, notice } = await openRecords(database);
  if (notice) console.log(notice);
  const app = createApp({
    webRoot: join(root, 'packages', 'web', 'dist'),
    version,
    store,
    terrainFile: database.terrainFile,
    baseMapFile,
    host: settings.host,
    hostNames: readHostNames(process.env),
  });
  const server = await listen(app, settings);
  if (!settings.portGiven && server.port !== settings.port) {
    console.log(
      `Port ${settings.port} is taken; using ${server.port}. PORT=4700 npm start chooses.`,
    );
  }
  if (!isLoopback(settings.host)) {
    console.log(
      `HOST is ${settings.host}: other machines can reach Plugside, which has no sign-in.`,
    );
  }
  console.log(`Plugside is at ${server.url} (Ctrl-C stops it)`);
  const others = addressesOf(settings.host, server.port);
  console.log(
    others.length > 0
      ? `Tablets and other machines reach it at ${others.join(' or ')}`
      : 'Only this machine reaches it. For tablets, on a network that you trust: HOST=0.0.0.0 npm start',
  );
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, async () => {
      await server.close();
      await store.close();
      process.exit(0);
    });
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
