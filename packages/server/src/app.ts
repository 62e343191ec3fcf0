import type { OpenedStore } from '@plugside/records';
import { Hono } from 'hono';
import { compress } from 'hono/compress';
import { etag } from 'hono/etag';
import { answerFailure, createApi } from './api/create-api.ts';
import { baseMaps } from './base-map/base-maps.ts';
import { whenClosing } from './closing.ts';
import { drillRooms } from './drill-rooms/drill-rooms.ts';
import type { RoomSettings } from './drill-rooms/room-settings.ts';
import { sameSite } from './guard/same-site.ts';
import { answerProblem } from './problem.ts';
import { securityHeaders } from './security-headers.ts';
import { DEFAULT_HOST } from './settings.ts';
import { appFiles, appPage, isBuilt } from './static-app.ts';
import { recordThreads } from './threads/record-threads.ts';

export interface AppOptions {
  /** Folder of the built browser app, absolute. */
  webRoot: string;
  /** Told by `/health`. */
  version: string;
  /** Served under `/api`; left out, nothing is there. */
  store?: OpenedStore;
  /** Where earlier versions kept terrain: it is taken in among the records from there. */
  terrainFile?: string;
  /** File of map tiles to draw under the streets (PMTiles), checked with `checkTilesFile`. */
  baseMapFile?: string | undefined;
  /** What drills wait for and let in, where it is not as usual. */
  drills?: Partial<RoomSettings>;
  /** Address that it will listen on: decides which names it answers to. */
  host?: string;
  /** More names that it answers to. */
  hostNames?: readonly string[];
}

/** The whole of the server: the records' API, the app's files, its page for every other address, and `/health`. */
export function createApp(options: AppOptions): Hono {
  const { webRoot, version, store, baseMapFile, host = DEFAULT_HOST, hostNames = [] } = options;
  const app = new Hono();
  app.onError(answerFailure);
  const maps = store && baseMaps(store, baseMapFile);
  app.use(securityHeaders(maps?.sources));
  app.use(sameSite({ host, names: hostNames }));
  app.use(compress());
  if (store && maps) {
    const { terrainFile } = options;
    const rooms = drillRooms(store, options.drills);
    whenClosing(app, () => rooms.close());
    const threads = recordThreads(store.target);
    whenClosing(app, () => threads.close());
    const api = { store, version, terrainFile, maps, baseMapFile, rooms, threads, host };
    app.route('/', createApi(api));
  }
  app.use(etag());

  app.use(async (c, next) => {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    c.header('Allow', 'GET, HEAD');
    return answerProblem(c, {
      status: 405,
      title: 'Method not allowed',
      detail: `${c.req.method} is not served here; use GET or HEAD.`,
    });
  });

  app.get('/health', (c) => {
    c.header('Cache-Control', 'no-store');
    const built = isBuilt(webRoot);
    return c.json({ status: built ? 'ok' : 'app not built', version }, built ? 200 : 503);
  });

  app.use(appFiles(webRoot));
  app.use(appPage(webRoot));

  app.notFound((c) =>
    answerProblem(c, {
      status: 404,
      title: 'Not found',
      detail: `Nothing is served at ${c.req.path}. The app is at /.`,
    }),
  );
  return app;
}
