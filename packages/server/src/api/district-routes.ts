/** What the district is, and what its map shows. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { kinds, type RecordStore, readDistrict } from '@plugside/records';
import type { Context } from 'hono';
import { type LayerName, layerNames, type MapLayers } from '../map/layers.ts';
import { define } from './define.ts';
import { json } from './describe.ts';
import { etagMatches } from './entity-tag.ts';

const boundsSchema = z.array(z.number()).length(4).nullable().openapi({
  description: 'West, south, east, north in degrees WGS 84; null where nothing is kept',
});

const districtSchema = z
  .object({
    name: z.string(),
    invented: z.boolean().openapi({ description: 'A made-up district, to try things on' }),
    bounds: boundsSchema,
    counts: z.record(z.enum(kinds as [string, ...string[]]), z.int()),
    engine: z.enum(['sqlite', 'postgresql']),
  })
  .openapi('District');

const collectionSchema = z
  .object({
    type: z.literal('FeatureCollection'),
    features: z.array(
      z.object({
        type: z.literal('Feature'),
        geometry: z.object({
          type: z.enum(['Point', 'LineString', 'Polygon']),
          coordinates: z.array(z.unknown()),
        }),
        properties: z.record(z.string(), z.unknown()),
      }),
    ),
  })
  .openapi('FeatureCollection', { description: 'GeoJSON, RFC 7946' });

export function districtRoutes(app: OpenAPIHono, store: RecordStore, layers: MapLayers): void {
  define(
    app,
    {
      method: 'get',
      path: '/api/district',
      tags: ['district'],
      summary: 'The district and how much is kept',
      responses: json('The district', districtSchema),
    },
    async (c) => {
      const [district, bounds] = await Promise.all([readDistrict(store), layers.bounds()]);
      const counts = await Promise.all(
        kinds.map(async (kind) => [kind, await store.count(kind)] as const),
      );
      c.header('Cache-Control', 'no-store');
      return c.json({
        ...district,
        bounds,
        counts: Object.fromEntries(counts),
        engine: store.engine,
      });
    },
  );

  for (const name of layerNames) {
    define(
      app,
      {
        method: 'get',
        path: `/api/map/${name}`,
        tags: ['map'],
        summary: `The map's ${name.replace('-', ' ')}`,
        description: layerTold[name],
        responses: {
          200: {
            description: 'ETag changes when a record in it does',
            content: { 'application/geo+json': { schema: collectionSchema } },
          },
          304: { description: 'As before (If-None-Match)' },
        },
      },
      (c) => answerLayer(c, layers, name),
    );
  }
}

const layerTold: Readonly<Record<LayerName, string>> = {
  hydrants:
    'Points with name, status, statusReason, class (AA, A, B, C of NFPA 291), q20Gpm, ratedGpm, ' +
    'staticPsi, testedOn, retestOn, mainIn, steamerIn, elevationFt; null where unknown.',
  buildings: 'Outlines, or points where no outline is kept, with what is known of the building.',
  streets: 'Lines with name, class and footOnly.',
  stations: 'Points with name.',
  'water-sources': 'Points with name, kind, usableGal, liftFt and access.',
};

async function answerLayer(c: Context, layers: MapLayers, name: LayerName): Promise<Response> {
  const layer = await layers.layer(name);
  const tag = `W/"${layer.revision}"`;
  c.header('ETag', tag);
  c.header('Cache-Control', 'no-cache');
  c.header('Vary', 'Accept-Encoding');
  if (etagMatches(c.req.header('if-none-match'), tag)) return c.body(null, 304);
  c.header('Content-Type', 'application/geo+json');
  if (!/\bgzip\b(?!\s*;\s*q=0(?:\.0*)?\s*(?:,|$))/.test(c.req.header('accept-encoding') ?? '')) {
    return c.body(layer.json);
  }
  c.header('Content-Encoding', 'gzip');
  return c.body(layer.gzipped);
}
