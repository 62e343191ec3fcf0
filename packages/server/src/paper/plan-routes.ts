/** Documents made from a plan, or from everything on record around a building. */
import type { OpenAPIHono } from '@hono/zod-openapi';
import { define } from '../api/define.ts';
import { body, problems } from '../api/describe.ts';
import { jsonObject } from '../api/json-body.ts';
import type { DistrictTerrain } from '../elevation/district-terrain.ts';
import type { RecordThreads } from '../threads/record-threads.ts';
import { answerPdf, PDF } from './answer-pdf.ts';
import { checkedBody } from './checked-body.ts';
import { buildingPlanSchema, drillSheetSchema } from './plan-requests.ts';

const tags = ['paper'];

export function planRoutes(
  app: OpenAPIHono,
  threads: RecordThreads,
  terrain: DistrictTerrain,
): void {
  define(
    app,
    {
      method: 'post',
      path: '/api/paper/drill-sheet',
      tags,
      summary: 'A plan as a drill sheet',
      description: 'The evolution drawn, each crew’s steps in order, benchmarks and evaluation.',
      request: {
        body: { required: true, content: { 'application/json': { schema: drillSheetSchema } } },
      },
      responses: { ...body('The sheet', PDF), ...problems(400, 413, 415, 422, 503) },
    },
    async (c) => {
      const asked = checkedBody(drillSheetSchema, await jsonObject(c));
      return answerPdf(c, 'drill-sheet.pdf', (signal) =>
        threads.run('print a drill sheet', asked, { signal }),
      );
    },
  );
  define(
    app,
    {
      method: 'post',
      path: '/api/paper/building-plan',
      tags,
      summary: 'A building’s water plan',
      description:
        'Chosen from everything on record, solved, with a map. Choosing takes some seconds.',
      request: {
        body: { required: true, content: { 'application/json': { schema: buildingPlanSchema } } },
      },
      responses: { ...body('The plan', PDF), ...problems(400, 404, 413, 415, 422, 503) },
    },
    async (c) => {
      const asked = checkedBody(buildingPlanSchema, await jsonObject(c));
      await terrain.takenIn();
      return answerPdf(c, 'water-plan.pdf', (signal) =>
        threads.run('print a building plan', asked, { signal }),
      );
    },
  );
}
