/** What a hydrant supplies, by its flow test. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { flowTestResult } from '@plugside/fireground';
import { flowTestsAhead, NotFoundError, planTest, type RecordStore } from '@plugside/records';
import { define } from './define.ts';
import { json, problems } from './describe.ts';
import { storedSchema } from './record-schemas.ts';

/** Points of the supply curve that are sent: enough to draw it. */
const CURVE_POINTS = 41;

const resultSchema = z
  .object({
    flowGpm: z.number().nullable(),
    flowFrom: z.unknown(),
    outlets: z.array(z.unknown()),
    dropPercent: z.number().nullable(),
    q20Gpm: z.number().nullable(),
    rating: z.object({ residualPsi: z.number(), flowGpm: z.number() }).nullable(),
    class: z.object({ name: z.string(), colour: z.string(), leastGpm: z.number() }).nullable(),
    curve: z
      .array(z.object({ flowGpm: z.number(), psi: z.number() }))
      .nullable()
      .openapi({
        description: 'Pressure left in the main by flow, from none to where none is left',
      }),
    retestOn: z.string().nullable(),
    notices: z.array(z.unknown()),
  })
  .openapi('FlowTestResult');

export function supplyRoutes(app: OpenAPIHono, store: RecordStore): void {
  define(
    app,
    {
      method: 'get',
      path: '/api/hydrants/{id}/supply',
      tags: ['hydrants'],
      summary: 'What a hydrant supplies',
      description:
        'By the test that its record names for plans where it can be used, else the newest that can, else the newest.',
      request: { params: z.object({ id: z.string() }) },
      responses: {
        ...json(
          'Test and result, null for both where it was never tested; days of tests dated ahead of today, which count for nothing',
          z.object({
            test: storedSchema('flow-tests').nullable(),
            result: resultSchema.nullable(),
            datedAhead: z.array(z.string()),
          }),
        ),
        ...problems(404),
      },
    },
    async (c) => {
      const id = c.req.param('id') ?? '';
      const hydrant = await store.get('hydrants', id);
      if (!hydrant) throw new NotFoundError('hydrants', id.slice(0, 40));
      const test = await planTest(store, hydrant);
      const ahead = (await flowTestsAhead(store, id)).get(id) ?? [];
      const datedAhead = ahead.map(({ testedOn }) => testedOn).sort();
      if (!test) return c.json({ test: null, result: null, datedAhead });
      const today = new Date().toISOString().slice(0, 10);
      const { curve, ...result } = flowTestResult(test, { today });
      return c.json({
        test,
        result: { ...result, curve: curve && curvePoints(curve) },
        datedAhead,
      });
    },
  );
}

/** From no flow to the flow at which nothing is left, in equal steps of flow. */
function curvePoints(curve: (flowGpm: number) => number): { flowGpm: number; psi: number }[] {
  let greatest = 1;
  while (curve(greatest) > 0 && greatest < 1e6) greatest *= 2;
  let [low, high] = [0, greatest];
  for (let halved = 0; halved < 40; halved += 1) {
    const middle = (low + high) / 2;
    if (curve(middle) > 0) low = middle;
    else high = middle;
  }
  return Array.from({ length: CURVE_POINTS }, (_, step) => {
    const flowGpm = (low * step) / (CURVE_POINTS - 1);
    return { flowGpm, psi: curve(flowGpm) };
  });
}
