/** Files into records over HTTP: upload, look, map, run, report. */
import { createReadStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { type ImportKind, importKinds, type RecordStore } from '@plugside/records';
import type { Context } from 'hono';
import { define } from '../api/define.ts';
import { body, json, problems } from '../api/describe.ts';
import { jsonObject } from '../api/json-body.ts';
import { answerText } from '../api/stream-answer.ts';
import type { MapLayers } from '../map/layers.ts';
import { ProblemError } from '../problem.ts';
import type { WorkFolder } from '../work/work-folder.ts';
import { checkedMapping } from './check-mapping.ts';
import { checkedMended } from './check-mended.ts';
import { importJobs } from './import-jobs.ts';
import { importSchema, mendSchema, refusedRowsSchema } from './import-schema.ts';
import { mappingSchema } from './mapping-schema.ts';
import { receiveUpload, uploadName } from './upload.ts';

const path = '/api/imports';
const tags = ['imports'];
const params = z.object({ id: z.string() });

export function importRoutes(
  app: OpenAPIHono,
  store: RecordStore,
  work: WorkFolder,
  layers: MapLayers,
): void {
  const jobs = importJobs(store, work);
  const jobOf = (c: Context) => jobs.get(c.req.param('id') ?? '');

  define(
    app,
    {
      method: 'post',
      path,
      tags,
      summary: 'Upload a file to import',
      description:
        'CSV, GeoJSON or a zipped shapefile, up to 200 MB, as the body. It is read at once; the ' +
        'import is ready when its columns are mapped, and nothing is written before it is run.',
      request: {
        query: z.object({
          name: z.string(),
          kind: z
            .enum(kindNames)
            .optional()
            .openapi({ description: 'Left out: the columns tell it' }),
        }),
        body: {
          required: true,
          content: {
            'application/octet-stream': { schema: z.string().openapi({ format: 'binary' }) },
          },
        },
      },
      responses: { ...json('The import', importSchema, 201), ...problems(400, 413, 503) },
    },
    async (c) => {
      const name = uploadName(c);
      const asked = c.req.query('kind');
      const kind = asked === undefined ? undefined : kindIn(asked);
      const upload = work.newPath();
      await receiveUpload(c, upload);
      try {
        const job = await jobs.add(name, kind, upload, (await layers.bounds()) ?? undefined);
        c.header('Location', `${path}/${job.id}`);
        return c.json(job.view, 201);
      } catch (error) {
        await rm(upload, { force: true });
        throw error;
      }
    },
  );
  define(
    app,
    {
      method: 'get',
      path: `${path}/{id}`,
      tags,
      summary: 'How an import stands',
      request: { params },
      responses: { ...json('The import', importSchema), ...problems(404) },
    },
    (c) => {
      c.header('Cache-Control', 'no-store');
      return c.json(jobOf(c).view);
    },
  );
  define(
    app,
    {
      method: 'put',
      path: `${path}/{id}/mapping`,
      tags,
      summary: 'Say which column means what',
      description:
        'With `kind` (and `sourceName`) alone, the mapping is guessed anew for that kind.',
      request: {
        params,
        body: { required: true, content: { 'application/json': { schema: mappingSchema } } },
      },
      responses: {
        ...json('The import, its sample understood anew', importSchema),
        ...problems(400, 404, 409, 413, 415, 422),
      },
    },
    async (c) => {
      const job = jobOf(c);
      const given = await jsonObject(c);
      const { kind, sourceName, ...rest } = given;
      if (kind !== undefined && Object.keys(rest).length === 0) {
        const named = typeof sourceName === 'string' && sourceName.trim() !== '';
        await job.guess(kindIn(String(kind)), named ? sourceName.trim().slice(0, 200) : undefined);
      } else {
        await job.setMapping((source) => checkedMapping(given, source));
      }
      return c.json(job.view);
    },
  );
  define(
    app,
    {
      method: 'post',
      path: `${path}/{id}/run`,
      tags,
      summary: 'Run an import',
      description:
        'In one transaction: all rows that were understood, or nothing. With `dryRun=true` it is ' +
        'counted and not written, and the import is ready again. One that is done can be run again ' +
        'after its mapping or its rows were mended: what it brought in stays as it is.',
      request: { params, query: z.object({ dryRun: z.enum(['true', 'false']).optional() }) },
      responses: { ...json('The import, running', importSchema, 202), ...problems(404, 409) },
    },
    (c) => {
      const job = jobOf(c);
      job.run(c.req.query('dryRun') === 'true');
      return c.json(job.view, 202);
    },
  );
  define(
    app,
    {
      method: 'post',
      path: `${path}/{id}/stop`,
      tags,
      summary: 'Stop a run',
      description:
        'It ends with nothing written, and the import is ready again. One that was written in the ' +
        'meantime is done.',
      request: { params },
      responses: { ...json('The import', importSchema), ...problems(404, 409) },
    },
    async (c) => {
      const job = jobOf(c);
      await job.stop();
      return c.json(job.view);
    },
  );
  define(
    app,
    {
      method: 'get',
      path: `${path}/{id}/refused`,
      tags,
      summary: 'Refused rows of the last run, with their cells',
      request: { params },
      responses: { ...json('The rows', refusedRowsSchema), ...problems(404) },
    },
    (c) => {
      const job = jobOf(c);
      c.header('Cache-Control', 'no-store');
      return c.json({ total: job.view.report?.refusedCount ?? 0, rows: [...job.refusedRows] });
    },
  );
  define(
    app,
    {
      method: 'post',
      path: `${path}/{id}/mend`,
      tags,
      summary: 'Write cells of refused rows anew',
      description:
        'Each row by its number in the file; a place may be given where the file has it as a geometry. The next run reads the whole file with them: what it ' +
        'has brought in before stays as it is, and the mended rows are added.',
      request: {
        params,
        body: { required: true, content: { 'application/json': { schema: mendSchema } } },
      },
      responses: {
        ...json('The import, its sample understood anew', importSchema),
        ...problems(400, 404, 409, 413, 415, 422),
      },
    },
    async (c) => {
      const job = jobOf(c);
      const given = await jsonObject(c);
      await job.mend((source) => checkedMended(given, source, job.view.kind));
      return c.json(job.view);
    },
  );
  define(
    app,
    {
      method: 'delete',
      path: `${path}/{id}`,
      tags,
      summary: 'Cancel or forget an import',
      description:
        'One that is under way ends with nothing written; one that has ended is forgotten with ' +
        'its files.',
      request: { params },
      responses: {
        ...json('The import as it ended', importSchema),
        204: { description: 'Forgotten' },
        ...problems(404),
      },
    },
    async (c) => {
      const job = jobOf(c);
      if (job.isFinished) {
        await jobs.forget(job.id);
        return c.body(null, 204);
      }
      await job.cancel();
      return c.json(job.view);
    },
  );
  define(
    app,
    {
      method: 'get',
      path: `${path}/{id}/refused.csv`,
      tags,
      summary: 'Rows that were refused, to mend and import again',
      request: { params },
      responses: { ...body('The rows, with why and what to do', 'text/csv'), ...problems(404) },
    },
    (c) => {
      const job = jobOf(c);
      const file = job.refusedFile;
      if (file === undefined) {
        throw new ProblemError({
          status: 404,
          title: 'Not found',
          detail: 'No row was refused, or the import has not been run.',
        });
      }
      const text = createReadStream(file, { encoding: 'utf8' });
      return answerText(c, text, { type: 'text/csv; charset=utf-8', name: refusedName(job.name) });
    },
  );
}

/** After the file that the rows are from, in what any system takes as a name. */
function refusedName(name: string): string {
  const stem = name
    .replace(/\.[^.]*$/, '')
    .replace(/[^\w.-]+/g, '-')
    .replace(/-refused$/, '');
  return `${stem === '' ? 'rows' : stem}-refused.csv`;
}

const kindNames = [...importKinds] as [ImportKind, ...ImportKind[]];

function kindIn(text: string | undefined): ImportKind {
  const kind = importKinds.find((one) => one === text);
  if (kind) return kind;
  throw new ProblemError({
    status: 400,
    title: 'No such kind',
    detail: `kind is "${(text ?? '').slice(0, 80)}"; give one of: ${importKinds.join(', ')}.`,
  });
}
