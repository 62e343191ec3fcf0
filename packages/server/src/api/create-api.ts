import { OpenAPIHono } from '@hono/zod-openapi';
import type { OpenedStore } from '@plugside/records';
import { baseMapRoutes } from '../base-map/base-map-routes.ts';
import { type BaseMaps, baseMaps } from '../base-map/base-maps.ts';
import { type DrillRooms, drillRooms } from '../drill-rooms/drill-rooms.ts';
import { drillRoutes } from '../drill-rooms/drill-routes.ts';
import { districtTerrain } from '../elevation/district-terrain.ts';
import { elevationRoutes } from '../elevation/elevation-routes.ts';
import { importRoutes } from '../imports/import-routes.ts';
import { mapLayers } from '../map/layers.ts';
import { drillReportRoute } from '../paper/drill-report-route.ts';
import { paperRoutes } from '../paper/paper-routes.ts';
import { planRoutes } from '../paper/plan-routes.ts';
import { answerProblem } from '../problem.ts';
import { DEFAULT_HOST } from '../settings.ts';
import { situationRoute } from '../supply/situation-route.ts';
import { type RecordThreads, recordThreads } from '../threads/record-threads.ts';
import { workFolder } from '../work/work-folder.ts';
import { addressesRoute } from './addresses-route.ts';
import { backupRoute } from './backup-route.ts';
import { refuseOtherMethods } from './define.ts';
import { districtRoutes } from './district-routes.ts';
import { exportRoutes } from './export-routes.ts';
import { problemOf } from './failure.ts';
import { openApiRoute } from './openapi-route.ts';
import { recordRoutes } from './record-routes.ts';
import { supplyRoutes } from './supply-routes.ts';

export interface ApiOptions {
  store: OpenedStore;
  /** Told by the OpenAPI document. */
  version: string;
  /** Where earlier versions kept terrain: it is taken in among the records from there. */
  terrainFile?: string | undefined;
  /** File of map tiles on this server's disk. */
  baseMapFile?: string | undefined;
  /** Made from the store and the file where left out. */
  maps?: BaseMaps;
  /** Made over the store where left out. */
  rooms?: DrillRooms;
  /** Made for the store where left out. */
  threads?: RecordThreads;
  /** Address listened on. */
  host?: string;
}

/** The API over the records: everything under `/api`. */
export function createApi(options: ApiOptions): OpenAPIHono {
  const { store, version, terrainFile, baseMapFile } = options;
  const maps = options.maps ?? baseMaps(store, baseMapFile);
  const app = new OpenAPIHono();
  app.use('/api/*', async (c, next) => {
    await next();
    // Records change at any time: nothing is kept without asking again.
    if (!c.res.headers.has('Cache-Control')) c.res.headers.set('Cache-Control', 'no-cache');
  });
  recordRoutes(app, store);
  const layers = mapLayers(store);
  const work = workFolder();
  districtRoutes(app, store, layers);
  baseMapRoutes(app, maps, baseMapFile);
  supplyRoutes(app, store);
  importRoutes(app, store, work, layers);
  const terrain = districtTerrain(store, terrainFile);
  elevationRoutes(app, terrain, work);
  situationRoute(app, store, terrain);
  exportRoutes(app, store, work);
  const threads = options.threads ?? recordThreads(store.target);
  paperRoutes(app, threads, work);
  planRoutes(app, threads, terrain);
  drillReportRoute(app, threads);
  const rooms = options.rooms ?? drillRooms(store);
  drillRoutes(app, store, rooms);
  backupRoute(app, store, work);
  addressesRoute(app, options.host ?? DEFAULT_HOST);
  openApiRoute(app, version);
  refuseOtherMethods(app);
  app.all('/api/*', (c) =>
    answerProblem(c, {
      status: 404,
      title: 'Not found',
      detail: `Nothing is served at ${c.req.path}. What is, is told at /api/openapi.json.`,
    }),
  );
  return app;
}

/** Answers a failure; the log alone hears of one that nobody foresaw. */
export function answerFailure(error: Error, c: Parameters<typeof answerProblem>[0]): Response {
  const problem = problemOf(error);
  if (problem) return answerProblem(c, problem);
  console.error(error);
  return answerProblem(c, {
    status: 500,
    title: 'Server error',
    detail: 'The server failed on this request; its log says why.',
  });
}
