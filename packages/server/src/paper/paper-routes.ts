/** Documents that crews carry, as PDF. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { define } from '../api/define.ts';
import { body, json, problems } from '../api/describe.ts';
import { jsonObject } from '../api/json-body.ts';
import { answerKeptFile } from '../api/stream-answer.ts';
import type { RecordThreads } from '../threads/record-threads.ts';
import type { WorkFolder } from '../work/work-folder.ts';
import { answerPdf, PDF } from './answer-pdf.ts';
import { cardsJobs } from './cards-jobs.ts';
import { cardsRequestSchema } from './cards-request.ts';
import { checkedBody } from './checked-body.ts';
import { paperQuery, pdfIdIn, printedAs } from './paper-query.ts';

const tags = ['paper'];

const cardsSchema = z
  .object({
    id: z.string(),
    state: z.enum(['running', 'done', 'cancelled', 'failed']),
    progress: z.object({ done: z.int(), total: z.int() }),
    file: z.string().nullable().openapi({ description: 'Where the PDF is, when it is done' }),
    failure: z.object({ detail: z.string(), remedy: z.string() }).nullable(),
  })
  .openapi('HydrantCards');

export function paperRoutes(app: OpenAPIHono, threads: RecordThreads, work: WorkFolder): void {
  define(
    app,
    {
      method: 'get',
      path: '/api/paper/pump-chart/{id}.pdf',
      tags,
      summary: 'A rig’s pump chart',
      description: 'Discharge pressures by line, length, flow and floor, each solved.',
      request: { params: z.object({ id: z.string() }), query: paperQuery },
      responses: { ...body('The chart', PDF), ...problems(400, 404, 503) },
    },
    async (c) => {
      const given = { rigId: pdfIdIn(c), printed: printedAs(c) };
      return answerPdf(c, 'pump-chart.pdf', (signal) =>
        threads.run('print a pump chart', given, { signal }),
      );
    },
  );
  define(
    app,
    {
      method: 'get',
      path: '/api/paper/hydrant-card/{id}.pdf',
      tags,
      summary: 'A hydrant’s card',
      description: 'What it gives, and what reaches an engine over each length of hose.',
      request: { params: z.object({ id: z.string() }), query: paperQuery },
      responses: { ...body('The card', PDF), ...problems(400, 404, 503) },
    },
    async (c) => {
      const given = { hydrantId: pdfIdIn(c), printed: printedAs(c) };
      return answerPdf(c, 'hydrant-card.pdf', (signal) =>
        threads.run('print a hydrant card', given, { signal }),
      );
    },
  );
  cardsRoutes(app, threads, work);
}

function cardsRoutes(app: OpenAPIHono, threads: RecordThreads, work: WorkFolder): void {
  const path = '/api/paper/hydrant-cards';
  const params = z.object({ id: z.string() });
  const jobs = cardsJobs(threads, work);
  const jobOf = (c: Context) => jobs.get(c.req.param('id') ?? '');

  define(
    app,
    {
      method: 'post',
      path,
      tags,
      summary: 'Print cards of many hydrants into one file',
      description: 'In the background; the answer tells where to see how far it is.',
      request: {
        body: { required: true, content: { 'application/json': { schema: cardsRequestSchema } } },
      },
      responses: {
        ...json('The cards, running', cardsSchema, 202),
        ...problems(400, 404, 413, 415, 422, 503),
      },
    },
    async (c) => {
      const asked = checkedBody(cardsRequestSchema, await jsonObject(c));
      const job = await jobs.add(asked);
      c.header('Location', `${path}/${job.id}`);
      return c.json(job.view, 202);
    },
  );
  define(
    app,
    {
      method: 'get',
      path: `${path}/{id}`,
      tags,
      summary: 'How the cards stand',
      request: { params },
      responses: { ...json('The cards', cardsSchema), ...problems(404) },
    },
    (c) => {
      c.header('Cache-Control', 'no-store');
      return c.json(jobOf(c).view);
    },
  );
  define(
    app,
    {
      method: 'get',
      path: `${path}/{id}/file.pdf`,
      tags,
      summary: 'The cards’ file',
      request: { params },
      responses: { ...body('All cards', PDF), ...problems(404, 409) },
    },
    (c) => answerKeptFile(c, jobOf(c).file, { type: PDF, name: 'hydrant-cards.pdf' }),
  );
  define(
    app,
    {
      method: 'delete',
      path: `${path}/{id}`,
      tags,
      summary: 'Cancel or forget cards',
      description: 'While they run no file is left; those that have ended are forgotten.',
      request: { params },
      responses: {
        ...json('The cards as they ended', cardsSchema),
        204: { description: 'Forgotten' },
        ...problems(404),
      },
    },
    async (c) => {
      const job = jobOf(c);
      if (!job.isRunning) {
        await jobs.forget(job.id);
        return c.body(null, 204);
      }
      await job.cancel();
      return c.json(job.view);
    },
  );
}
