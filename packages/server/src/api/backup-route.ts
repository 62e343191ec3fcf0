import type { OpenAPIHono } from '@hono/zod-openapi';
import { backUp, type RecordStore } from '@plugside/records';
import type { WorkFolder } from '../work/work-folder.ts';
import { define } from './define.ts';
import { body } from './describe.ts';
import { answerFile } from './stream-answer.ts';

export function backupRoute(app: OpenAPIHono, store: RecordStore, work: WorkFolder): void {
  define(
    app,
    {
      method: 'get',
      path: '/api/backup',
      tags: ['backup'],
      summary: 'Every record in one archive',
      description:
        'A zip of JSON lines by kind with a manifest and checksums, as all records were at one ' +
        'moment. Written in full before the first byte is sent.',
      responses: body('The archive', 'application/zip'),
    },
    async (c) => {
      const path = work.newPath('.zip');
      await backUp(store, path);
      const day = new Date().toISOString().slice(0, 10);
      return answerFile(c, path, { type: 'application/zip', name: `plugside-${day}.zip` });
    },
  );
}
