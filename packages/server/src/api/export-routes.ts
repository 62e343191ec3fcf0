/** Records as files for other programs. */
import type { OpenAPIHono } from '@hono/zod-openapi';
import {
  exportAll,
  exportCsv,
  exportGeoJson,
  kindLabels,
  kinds,
  type RecordStore,
} from '@plugside/records';
import type { WorkFolder } from '../work/work-folder.ts';
import { define } from './define.ts';
import { body } from './describe.ts';
import { answerFile, answerText } from './stream-answer.ts';

const tags = ['export'];

export function exportRoutes(app: OpenAPIHono, store: RecordStore, work: WorkFolder): void {
  for (const kind of kinds) {
    const [, many] = kindLabels[kind];
    define(
      app,
      {
        method: 'get',
        path: `/api/export/${kind}.csv`,
        tags,
        summary: `All ${many} as a table`,
        responses: body('CSV in UTF-8, which can be imported again', 'text/csv'),
      },
      (c) =>
        answerText(c, exportCsv(store, kind), {
          type: 'text/csv; charset=utf-8',
          name: `${kind}.csv`,
        }),
    );
    define(
      app,
      {
        method: 'get',
        path: `/api/export/${kind}.geojson`,
        tags,
        summary: `All ${many} as GeoJSON`,
        responses: body('A feature collection (RFC 7946)', 'application/geo+json'),
      },
      (c) =>
        answerText(c, exportGeoJson(store, kind), {
          type: 'application/geo+json',
          name: `${kind}.geojson`,
        }),
    );
  }
  define(
    app,
    {
      method: 'get',
      path: '/api/export.zip',
      tags,
      summary: 'Every kind as CSV and GeoJSON in one archive',
      description: 'All as it was at one moment. To move to another database, take the backup.',
      responses: body('The archive', 'application/zip'),
    },
    async (c) => {
      const path = work.newPath('.zip');
      await exportAll(store, path);
      return answerFile(c, path, { type: 'application/zip', name: 'plugside-export.zip' });
    },
  );
}
