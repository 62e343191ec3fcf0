/** What there is to work with at a building, ready for choosing its supply. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { fieldRanges, formatNumber } from '@plugside/fireground';
import { type RecordStore, situationAt } from '@plugside/records';
import { define } from '../api/define.ts';
import { json, problems } from '../api/describe.ts';
import type { DistrictTerrain } from '../elevation/district-terrain.ts';
import { ProblemError } from '../problem.ts';

const HYDRANTS = { least: 1, greatest: 40 };
const { demand: DEMAND } = fieldRanges;

export function situationRoute(
  app: OpenAPIHono,
  store: RecordStore,
  terrain: DistrictTerrain,
): void {
  define(
    app,
    {
      method: 'get',
      path: '/api/buildings/{id}/situation',
      tags: ['buildings'],
      summary: 'Demand, water within reach and rigs in order of arrival at a building',
      description:
        'Hydrants and open water by hose length along the streets; rigs by the travel time from their stations. `recordIds` tells whose the short ids are, `paths` the way from the water to the building, `streets` the street that it takes there.',
      request: {
        params: z.object({ id: z.string() }),
        query: z.object({
          demandGpm: z.number().min(DEMAND.least).max(DEMAND.greatest).optional(),
          hydrants: z.int().min(HYDRANTS.least).max(HYDRANTS.greatest).optional(),
        }),
      },
      responses: {
        ...json(
          'The situation; null where a notice says what is missing',
          z
            .object({
              building: z.record(z.string(), z.unknown()),
              situation: z.record(z.string(), z.unknown()).nullable(),
              recordIds: z.record(z.string(), z.string()),
              paths: z.record(z.string(), z.array(z.tuple([z.number(), z.number()]))),
              streets: z.record(z.string(), z.string()),
              notices: z.array(z.record(z.string(), z.unknown())),
            })
            .openapi('BuildingSituation'),
        ),
        ...problems(400, 404),
      },
    },
    async (c) => {
      const demandGpm = numberIn(c.req.query('demandGpm'), 'demandGpm', {
        ...DEMAND,
        unit: ' gpm',
        whole: false,
      });
      const hydrants = numberIn(c.req.query('hydrants'), 'hydrants', {
        ...HYDRANTS,
        unit: '',
        whole: true,
      });
      const { situation = null, ...rest } = await situationAt(store, c.req.param('id') ?? '', {
        demandGpm,
        hydrants,
        terrain: await terrain.current(),
      });
      return c.json({ situation, ...rest });
    },
  );
}

function numberIn(
  text: string | undefined,
  path: string,
  range: { least: number; greatest: number; unit: string; whole: boolean },
): number | undefined {
  if (text === undefined) return undefined;
  const { least, greatest, unit, whole } = range;
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (value >= least && value <= greatest && (!whole || Number.isInteger(value))) return value;
  const shown = text.slice(0, 40);
  const allowed = `${whole ? 'a whole number' : 'a number'} from ${least} to ${formatNumber(greatest, 0)}${unit}`;
  const message = `${path} is "${shown}"; allowed: ${allowed}.`;
  const remedy = `Ask with ${allowed}, or leave ${path} out.`;
  throw new ProblemError({
    status: 400,
    title: 'Not understood',
    detail: `${message} ${remedy}`,
    extra: { issues: [{ path, value: shown, allowed, message, remedy }] },
  });
}
