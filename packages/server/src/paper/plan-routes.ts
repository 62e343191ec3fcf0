/** Documents made from a plan, or from everything on record around a building. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import {
  adjusted,
  type Choice,
  chooseSupply,
  NetworkError,
  type Plan,
  rankingOf,
  readPlan,
} from '@plugside/fireground';
import {
  buildingPlanFor,
  drillSheetFor,
  renderBuildingPlan,
  renderDrillSheet,
} from '@plugside/paper';
import { everyRecord, type RecordStore, readDistrict, situationAt } from '@plugside/records';
import { define } from '../api/define.ts';
import { body, problems } from '../api/describe.ts';
import { jsonObject } from '../api/json-body.ts';
import { answerBytes } from '../api/stream-answer.ts';
import type { DistrictTerrain } from '../elevation/district-terrain.ts';
import { ProblemError } from '../problem.ts';
import { checkedBody } from './checked-body.ts';
import { paperSchema, unitsSchema } from './paper-query.ts';

const tags = ['paper'];
const type = 'application/pdf';

const drillSchema = z
  .strictObject({
    plan: z
      .string()
      .min(1)
      .max(500_000)
      .openapi({ description: 'The plan as a plan file, YAML or JSON' }),
    benchmarks: z
      .array(
        z.strictObject({
          text: z.string().min(1).max(120),
          target: z.string().max(20).optional(),
        }),
      )
      .max(20)
      .optional()
      .openapi({ description: 'The department’s own; usual ones with blanks where left out' }),
    paper: paperSchema.default('letter'),
    units: unitsSchema.default('us'),
  })
  .openapi('DrillSheetRequest');

const buildingSchema = z
  .strictObject({
    buildingId: z.string().max(40),
    demandGpm: z
      .number()
      .min(1)
      .max(50_000)
      .optional()
      .openapi({ description: 'The needed fire flow on record where left out' }),
    demandMethod: z
      .string()
      .min(1)
      .max(120)
      .optional()
      .openapi({ description: 'Printed beside the demand: where it comes from' }),
    way: z
      .string()
      .max(400)
      .optional()
      .openapi({ description: 'Id of the way to print; the best where left out' }),
    away: z
      .array(z.string().max(40))
      .max(100)
      .default([])
      .openapi({ description: 'Rigs that do not come, by the ids of the situation' }),
    arrivesMin: z
      .record(z.string().max(40), z.number().min(0).max(240))
      .default({})
      .openapi({ description: 'Arrivals that differ from the situation’s' }),
    first: z
      .enum(['time to water', 'rigs used', 'hose', 'margin'])
      .default('time to water')
      .openapi({ description: 'Weighed first among ways that bring enough' }),
    paper: paperSchema.default('letter'),
    units: unitsSchema.default('us'),
  })
  .openapi('BuildingPlanRequest');

export function planRoutes(app: OpenAPIHono, store: RecordStore, terrain: DistrictTerrain): void {
  define(
    app,
    {
      method: 'post',
      path: '/api/paper/drill-sheet',
      tags,
      summary: 'A plan as a drill sheet',
      description: 'The evolution drawn, each crew’s steps in order, benchmarks and evaluation.',
      request: {
        body: { required: true, content: { 'application/json': { schema: drillSchema } } },
      },
      responses: { ...body('The sheet', type), ...problems(400, 413, 415, 422) },
    },
    async (c) => {
      const {
        plan: text,
        paper,
        units,
        benchmarks,
      } = checkedBody(drillSchema, await jsonObject(c));
      const plan = planIn(text);
      const drill = solved(() => drillSheetFor({ plan, units, ...(benchmarks && { benchmarks }) }));
      const { name: department } = await readDistrict(store);
      const printed = { printedAt: new Date(), paper, units, department };
      return answerBytes(c, renderDrillSheet(drill, printed), { type, name: 'drill-sheet.pdf' });
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
        'Chosen from everything on record, solved, on one page with a map. Choosing takes some seconds.',
      request: {
        body: { required: true, content: { 'application/json': { schema: buildingSchema } } },
      },
      responses: { ...body('The plan', type), ...problems(400, 404, 413, 415, 422) },
    },
    async (c) => {
      const asked = checkedBody(buildingSchema, await jsonObject(c));
      const { paper, units, way, demandGpm, demandMethod } = asked;
      const situation = await situationAt(store, asked.buildingId, {
        demandGpm,
        terrain: await terrain.current(),
      });
      if (!situation.situation) {
        const why = situation.notices.filter(({ level }) => level === 'error');
        throw refused(why.map(({ text }) => text).join(' '));
      }
      const { away, arrivesMin, first } = asked;
      const changes = { demandGpm: null, away, arrivesMin };
      const coming = { ...situation, situation: adjusted(situation.situation, changes) };
      const plan = await solvedLater(async () => {
        const ranking = rankingOf({ first });
        const choice = chooseSupply(coming.situation, { units, ranking });
        return buildingPlanFor({
          building: situation.building,
          situation: coming,
          choice,
          way: placeOf(choice, way),
          streets: await everyRecord(store, 'streets'),
          hydrants: await everyRecord(store, 'hydrants'),
          waters: await everyRecord(store, 'water-sources'),
          units,
          ...(demandMethod !== undefined && { demandMethod }),
          ...(demandMethod === undefined &&
            demandGpm !== undefined && { demandMethod: 'as asked for' }),
        });
      });
      const { name: department } = await readDistrict(store);
      const printed = { printedAt: new Date(), paper, units, department };
      return answerBytes(c, renderBuildingPlan(plan, printed), { type, name: 'water-plan.pdf' });
    },
  );
}

/** Place of the way that is named; the first where none is. @throws ProblemError 422 */
function placeOf({ ways }: Choice, id: string | undefined): number {
  if (id === undefined) return 0;
  const place = ways.findIndex((way) => way.id === id);
  if (place >= 0) return place;
  throw refused('No such way is among those chosen from now. Choose anew, then print.');
}

/** @throws ProblemError 422 with every fault of the plan */
function planIn(text: string): Plan {
  const read = readPlan(text);
  if (read.ok) return read.plan;
  const issues = read.issues.slice(0, 50).map(({ path, line, message }) => ({
    path: `plan.${path}`,
    value: `line ${line}`,
    allowed: 'see the message',
    message,
    remedy: 'Mend the plan and send it again.',
  }));
  throw new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: issues.map(({ message }) => message).join(' '),
    extra: { issues },
  });
}

function solved<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw told(error);
  }
}

async function solvedLater<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw told(error);
  }
}

/** What the questions refuse is the sender's to mend. */
function told(error: unknown): unknown {
  if (error instanceof NetworkError) return refused(`The plan cannot be solved. ${error.message}`);
  return error instanceof RangeError ? refused(error.message) : error;
}

function refused(detail: string): ProblemError {
  return new ProblemError({ status: 422, title: 'Not accepted', detail });
}
