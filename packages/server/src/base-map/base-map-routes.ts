/** What is drawn under the district's own streets. */
import { createReadStream } from 'node:fs';
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { define } from '../api/define.ts';
import { json, problems } from '../api/describe.ts';
import { answerProblem } from '../problem.ts';
import { type BaseMaps, TILES_FILE_PATH } from './base-maps.ts';
import { describeFile, rangeIn, type TilesFile } from './tiles-file.ts';

const tags = ['map'];

const answerSchema = z
  .object({
    baseMap: z
      .union([
        z.object({
          kind: z.literal('tiles'),
          url: z.string().openapi({ description: 'With {z}, {x} and {y}' }),
          attribution: z.string(),
          tileSize: z.int(),
          minZoom: z.int(),
          maxZoom: z.int(),
        }),
        z.object({
          kind: z.literal('file'),
          url: z.string(),
          attribution: z
            .string()
            .nullable()
            .openapi({ description: 'Null: as the file itself says' }),
          tileSize: z.int(),
        }),
      ])
      .nullable(),
    problem: z
      .string()
      .nullable()
      .openapi({ description: 'Why there is none although one is named' }),
  })
  .openapi('BaseMap');

export function baseMapRoutes(app: OpenAPIHono, maps: BaseMaps, file: string | undefined): void {
  define(
    app,
    {
      method: 'get',
      path: '/api/map/base-map',
      tags,
      summary: 'Map tiles to draw under the streets',
      description: 'Null unless the setting "base map" or the server names some.',
      responses: json('The base map', answerSchema),
    },
    async (c) => {
      c.header('Cache-Control', 'no-store');
      return c.json(await maps.current());
    },
  );
  define(
    app,
    {
      method: 'get',
      path: TILES_FILE_PATH,
      tags,
      summary: "The server's file of map tiles",
      description: 'PMTiles, version 3; a single Range is answered with that part of it.',
      responses: {
        200: { description: 'The whole file' },
        206: { description: 'The part asked for' },
        416: { description: 'The part lies past the end' },
        ...problems(404),
      },
    },
    (c) => (file === undefined ? noFile(c) : answerPart(c, file)),
  );
}

async function answerPart(c: Context, path: string): Promise<Response> {
  const file = await describeFile(path).catch(() => null);
  if (!file) return noFile(c);
  const range = rangeFor(c, file);
  c.header('Accept-Ranges', 'bytes');
  c.header('ETag', file.tag);
  c.header('Content-Type', 'application/vnd.pmtiles');
  if (range === 'none') {
    c.header('Content-Range', `bytes */${file.bytes}`);
    return c.body(null, 416);
  }
  const { first, last } = range === 'all' ? { first: 0, last: file.bytes - 1 } : range;
  c.header('Content-Length', String(last - first + 1));
  if (range !== 'all') c.header('Content-Range', `bytes ${first}-${last}/${file.bytes}`);
  const part = createReadStream(path, { start: first, end: last });
  return c.body(ReadableStream.from(part) as ReadableStream, range === 'all' ? 200 : 206);
}

/** A part of another file than the asker knows would not fit to what it has: it gets the whole. */
function rangeFor(c: Context, file: TilesFile) {
  const known = c.req.header('if-range');
  if (known !== undefined && known !== file.tag) return 'all';
  return rangeIn(c.req.header('range'), file.bytes);
}

function noFile(c: Context): Response {
  return answerProblem(c, {
    status: 404,
    title: 'Not found',
    detail: 'This server has no file of map tiles. PLUGSIDE_BASE_MAP=/path/town.pmtiles names one.',
  });
}
