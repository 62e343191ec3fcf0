/** Drills over HTTP: made, found, ended, looked at again. What happens in one goes over its WebSocket. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { isPlainText, TICKS_PER_S } from '@plugside/drill';
import type { DrillRunFacts, RecordStore } from '@plugside/records';
import type { Context } from 'hono';
import { define } from '../api/define.ts';
import { json, problems } from '../api/describe.ts';
import { jsonObject } from '../api/json-body.ts';
import { checkedBody } from '../paper/checked-body.ts';
import { ProblemError } from '../problem.ts';
import { addressOf } from '../upgrade.ts';
import type { DrillRooms } from './drill-rooms.ts';
import {
  drillFactsSchema,
  drillRunSchema,
  endedSchema,
  madeDrillSchema,
  newDrillSchema,
  replaySchema,
  runningDrillSchema,
} from './drill-schema.ts';
import { type FindRoom, findRoom } from './find-room.ts';
import { liveRoute } from './live-route.ts';
import { removeRunRoute } from './remove-run-route.ts';
import { newDrillFrom } from './scene-from-request.ts';
import { isInstructor, type Seats } from './seats.ts';

const path = '/api/drills';
const tags = ['drills'];

export function drillRoutes(app: OpenAPIHono, store: RecordStore, rooms: DrillRooms): void {
  const find = findRoom(rooms);
  makeRoutes(app, store, rooms);
  roomRoutes(app, rooms, find);
  liveRoute(app, rooms, find);
  runRoutes(app, store);
  removeRunRoute(app, store);
}

function makeRoutes(app: OpenAPIHono, store: RecordStore, rooms: DrillRooms): void {
  define(
    app,
    {
      method: 'post',
      path,
      tags,
      summary: 'Make a drill',
      description:
        'From an evolution or a plan. Its clock runs once somebody has joined. The keys to instruct and to watch are told here alone.',
      request: {
        body: { required: true, content: { 'application/json': { schema: newDrillSchema } } },
      },
      responses: {
        ...json('The drill', madeDrillSchema, 201),
        ...problems(400, 413, 415, 422, 429, 503),
      },
    },
    async (c) => {
      const asked = checkedBody(newDrillSchema, await jsonObject(c));
      const { run, keys } = await rooms.make(await newDrillFrom(store, asked), addressOf(c));
      c.header('Location', `${path}/${run.code}`);
      return c.json(
        {
          roomId: run.id,
          code: run.code,
          keys,
          live: `${path}/${run.code}/live`,
        },
        201,
      );
    },
  );
  define(
    app,
    {
      method: 'get',
      path,
      tags,
      summary: 'Drills that run',
      description: 'Without their codes: those are told by the instructor.',
      responses: json('The drills', z.object({ drills: z.array(runningDrillSchema) })),
    },
    async (c) => c.json({ drills: (await rooms.running()).map(factsOf) }),
  );
}

function roomRoutes(app: OpenAPIHono, rooms: DrillRooms, find: FindRoom): void {
  const params = z.object({ code: z.string() });
  define(
    app,
    {
      method: 'get',
      path: `${path}/{code}`,
      tags,
      summary: 'A drill by its code',
      request: { params },
      responses: { ...json('The drill', drillFactsSchema), ...problems(404, 429) },
    },
    async (c) => {
      const room = await find(c);
      const { scene, state } = room.drill;
      c.header('Cache-Control', 'no-store');
      return c.json({
        roomId: room.id,
        code: room.code,
        title: scene.title,
        ...(scene.evolution !== undefined && { evolution: scene.evolution }),
        ...(room.crew !== undefined && { crew: room.crew }),
        startedAt: room.startedAt,
        timeS: state.tick / TICKS_PER_S,
        state: room.heldBy(performance.now()) === undefined ? 'running' : 'paused',
        ...room.audience.roles,
      });
    },
  );
  define(
    app,
    {
      method: 'delete',
      path: `${path}/{code}`,
      tags,
      summary: 'End a drill',
      description: 'By the instructor’s key, as a bearer token. Its log and result are kept.',
      request: { params, headers: z.object({ authorization: z.string() }) },
      responses: { ...json('How it went', endedSchema), ...problems(401, 404, 429, 503) },
    },
    async (c) => {
      const room = await find(c);
      if (!isInstructor(room.seats, keyIn(c))) throw wrongKey();
      await rooms.end(room);
      return c.json({ roomId: room.id, result: room.result });
    },
  );
}

function runRoutes(app: OpenAPIHono, store: RecordStore): void {
  define(
    app,
    {
      method: 'get',
      path: '/api/drill-runs',
      tags,
      summary: 'Drills that ran or run, the newest first',
      request: {
        query: z.object({
          crew: z.string().max(120).optional().openapi({ description: 'A part of its name' }),
          evolution: z.string().max(80).optional(),
          limit: z.int().min(1).max(500).optional(),
          after: z.string().optional().openapi({ description: '`next` of the page before' }),
        }),
      },
      responses: {
        ...json(
          'A page of them',
          z.object({ runs: z.array(drillRunSchema), next: z.string().optional() }),
        ),
        ...problems(400),
      },
    },
    async (c) => {
      const limit = limitIn(c.req.query('limit'));
      const [crew, evolution, before] = [
        textIn(c, 'crew'),
        textIn(c, 'evolution'),
        textIn(c, 'after'),
      ];
      const runs = await store.drillRuns.list({
        limit: limit + 1,
        ...(crew !== undefined && { crew }),
        ...(evolution !== undefined && { evolution }),
        ...(before !== undefined && { before }),
      });
      const page = runs.slice(0, limit);
      const last = page.at(-1);
      const next = runs.length > limit && last ? { next: last.id } : {};
      return c.json({ runs: page.map(runOf), ...next });
    },
  );
  define(
    app,
    {
      method: 'get',
      path: `${path}/{id}/replay`,
      tags,
      summary: 'All that is needed to look at a drill again',
      description:
        'Scene, seed and log by the drill’s `roomId`. While it runs, for its instructor alone, by the key as a bearer token.',
      request: {
        params: z.object({ id: z.string() }),
        headers: z.object({ authorization: z.string().optional() }),
      },
      responses: { ...json('The drill', replaySchema), ...problems(401, 404) },
    },
    async (c) => {
      const run = await store.drillRuns.get(c.req.param('id') ?? '');
      if (!run) {
        throw new ProblemError({
          status: 404,
          title: 'Not found',
          detail: 'There is no drill with this roomId. /api/drill-runs lists them.',
        });
      }
      if (run.endedAt === undefined && !isInstructor(run.seats as Seats, keyIn(c))) {
        throw wrongKey();
      }
      const log = (await store.drillRuns.log(run.id)).map(({ entry }) => entry);
      const { id: roomId, title, crew, startedAt, scene, seed, tick, result } = run;
      return c.json({
        roomId,
        title,
        ...(crew !== undefined && { crew }),
        startedAt,
        scene,
        seed,
        tick,
        log,
        ...(result !== undefined && { result }),
      });
    },
  );
}

function factsOf({ id, title, evolution, crew, startedAt, tick }: DrillRunFacts) {
  return {
    roomId: id,
    title,
    ...(evolution !== undefined && { evolution }),
    ...(crew !== undefined && { crew }),
    startedAt,
    timeS: tick / TICKS_PER_S,
  };
}

function runOf(facts: DrillRunFacts) {
  const { endedAt, result } = facts;
  return {
    ...factsOf(facts),
    ...(endedAt !== undefined && { endedAt }),
    ...(result !== undefined && { result }),
  };
}

function keyIn(c: Context): string | undefined {
  return /^Bearer ([\w-]{1,64})$/i.exec(c.req.header('authorization') ?? '')?.[1];
}

/** A parameter that the records can be asked with. */
function textIn(c: Context, name: string): string | undefined {
  const text = c.req.query(name);
  if (text === undefined) return undefined;
  if (text.length <= 120 && isPlainText(text)) return text;
  throw badQuery(name, text, 'text of up to 120 characters');
}

function limitIn(text: string | undefined): number {
  if (text === undefined) return 100;
  const limit = Number(text);
  if (/^\d+$/.test(text) && limit >= 1 && limit <= 500) return limit;
  throw badQuery('limit', text, 'a whole number from 1 to 500');
}

function badQuery(path: string, value: string, allowed: string): ProblemError {
  const shown = value.slice(0, 40);
  const message = `${path} is "${shown}"; allowed: ${allowed}.`;
  const remedy = 'Ask with an allowed value, or leave it out.';
  return new ProblemError({
    status: 400,
    title: 'Not understood',
    detail: `${message} ${remedy}`,
    extra: { issues: [{ path, value: shown, allowed, message, remedy }] },
  });
}

function wrongKey(): ProblemError {
  return new ProblemError({
    status: 401,
    title: 'Key needed',
    detail: 'Send the key that the drill was made with: Authorization: Bearer and the key.',
    headers: { 'WWW-Authenticate': 'Bearer' },
  });
}
