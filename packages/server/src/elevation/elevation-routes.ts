/** Height of the ground, from a terrain file loaded for the district. */
import { rm } from 'node:fs/promises';
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { SourceRefusedError, type Terrain } from '@plugside/records';
import { define } from '../api/define.ts';
import { json, problems } from '../api/describe.ts';
import { jsonObject } from '../api/json-body.ts';
import { receiveUpload, uploadName } from '../imports/upload.ts';
import { ProblemError } from '../problem.ts';
import type { WorkFolder } from '../work/work-folder.ts';
import type { DistrictTerrain } from './district-terrain.ts';

const path = '/api/elevation';
const tags = ['elevation'];

/** Places that may be asked for at once. */
const MOST_PLACES = 5000;

const terrainSchema = z
  .object({
    name: z.string().nullable().openapi({ description: 'Null where no terrain was loaded' }),
    bounds: z.array(z.number()).length(4).nullable(),
    cellFt: z.number().nullable(),
  })
  .openapi('Terrain');

const heightSchema = z.object({
  elevationFt: z.number().nullable().openapi({ description: 'Null where it is not known' }),
  name: z.string().nullable(),
});

const placeSchema = z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]);

export function elevationRoutes(
  app: OpenAPIHono,
  terrain: DistrictTerrain,
  work: WorkFolder,
): void {
  define(
    app,
    {
      method: 'get',
      path,
      tags,
      summary: 'Height of the ground at a place, or which terrain is loaded',
      description: 'With `lon` and `lat` the height there; without them what is loaded.',
      request: {
        query: z.object({
          lon: z.number().min(-180).max(180).optional(),
          lat: z.number().min(-90).max(90).optional(),
        }),
      },
      responses: {
        ...json('The height, or the terrain', z.union([heightSchema, terrainSchema])),
        ...problems(400),
      },
    },
    async (c) => {
      const [lon, lat] = [c.req.query('lon'), c.req.query('lat')];
      const current = await terrain.current();
      if (lon === undefined && lat === undefined) return c.json(toldOf(current));
      const place = placeIn(lon, lat);
      return c.json({
        elevationFt: current?.elevationFt(...place) ?? null,
        name: current?.name ?? null,
      });
    },
  );
  define(
    app,
    {
      method: 'post',
      path: `${path}/places`,
      tags,
      summary: 'Heights of the ground at many places',
      request: {
        body: {
          required: true,
          content: {
            'application/json': {
              schema: z.object({
                places: z
                  .array(placeSchema)
                  .max(MOST_PLACES)
                  .openapi({ description: '[longitude, latitude] each' }),
              }),
            },
          },
        },
      },
      responses: {
        ...json(
          'In the same order; null where one is not known',
          z.object({ elevationFt: z.array(z.number().nullable()), name: z.string().nullable() }),
        ),
        ...problems(400, 413, 415, 422),
      },
    },
    async (c) => {
      const { places } = await jsonObject(c);
      const read = z.array(placeSchema).max(MOST_PLACES).safeParse(places);
      if (!read.success) throw noPlaces();
      const current = await terrain.current();
      return c.json({
        elevationFt: read.data.map((place) => current?.elevationFt(...place) ?? null),
        name: current?.name ?? null,
      });
    },
  );
  define(
    app,
    {
      method: 'post',
      path,
      tags,
      summary: 'Load terrain for the district',
      description:
        'A GeoTIFF up to 200 MB as the body, in place of what was loaded. Heights are metres ' +
        'unless the file or `unit` says otherwise.',
      request: {
        query: z.object({ name: z.string(), unit: z.enum(['m', 'ft']).optional() }),
        body: {
          required: true,
          content: { 'image/tiff': { schema: z.string().openapi({ format: 'binary' }) } },
        },
      },
      responses: { ...json('What was loaded', terrainSchema, 201), ...problems(400, 413, 422) },
    },
    async (c) => {
      const name = uploadName(c);
      const unit = unitIn(c.req.query('unit'));
      const upload = work.newPath('.tif');
      await receiveUpload(c, upload);
      try {
        return c.json(toldOf(await terrain.load(upload, { name, unit })), 201);
      } catch (error) {
        if (!(error instanceof SourceRefusedError)) throw error;
        throw new ProblemError({ status: 422, title: 'Not accepted', detail: error.message });
      } finally {
        await rm(upload, { force: true });
      }
    },
  );
  define(
    app,
    {
      method: 'delete',
      path,
      tags,
      summary: 'Take the loaded terrain away',
      responses: { 204: { description: 'None is loaded now' } },
    },
    async (c) => {
      await terrain.remove();
      return c.body(null, 204);
    },
  );
}

function toldOf(terrain: Terrain | undefined) {
  return {
    name: terrain?.name ?? null,
    bounds: terrain?.bounds ?? null,
    cellFt: terrain?.cellFt ?? null,
  };
}

function placeIn(lon: string | undefined, lat: string | undefined): [number, number] {
  const numbers = [lon, lat].map((text) => (text?.trim() ? Number(text) : Number.NaN));
  const read = placeSchema.safeParse(numbers);
  if (read.success) return read.data;
  throw new ProblemError({
    status: 400,
    title: 'No place',
    detail:
      `lon is ${JSON.stringify(lon ?? null).slice(0, 80)} and lat is ` +
      `${JSON.stringify(lat ?? null).slice(0, 80)}; give degrees, lon from -180 to 180 and lat from -90 to 90.`,
  });
}

function unitIn(unit: string | undefined): 'm' | 'ft' | undefined {
  if (unit === undefined || unit === 'm' || unit === 'ft') return unit;
  throw new ProblemError({
    status: 400,
    title: 'No such unit',
    detail: `unit is "${unit.slice(0, 80)}"; give m or ft, or leave it out.`,
  });
}

function noPlaces(): ProblemError {
  return new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: `places must be a list of up to ${MOST_PLACES} [longitude, latitude] in degrees.`,
  });
}
