/** Reading and changing records: the same five routes for each kind. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import {
  type Fields,
  type FieldsIn,
  type Kind,
  kindLabels,
  kinds,
  NotFoundError,
  type RecordStore,
  recordSchemas,
  StaleRecordError,
  type Stored,
  sortFields,
} from '@plugside/records';
import type { Context } from 'hono';
import { ProblemError } from '../problem.ts';
import { define } from './define.ts';
import { json, problems } from './describe.ts';
import { problemOf } from './failure.ts';
import { jsonObject } from './json-body.ts';
import { listQuery, type listParameters as parameterNames } from './list-query.ts';
import {
  changesSchema,
  fieldsSchema,
  pageSchema,
  storedSchema,
  writtenSchema,
} from './record-schemas.ts';
import { withRemarks } from './remarks.ts';
import { requiredVersion, versionTag } from './version-tag.ts';

const idParameter = z.object({ id: z.string() });
const ifMatch = z.object({
  'if-match': z
    .string()
    .openapi({ description: 'The version that was read, in quotes', example: '"3"' }),
});

export function recordRoutes(app: OpenAPIHono, store: RecordStore): void {
  for (const kind of kinds) routesOf(app, store, kind);
}

function routesOf(app: OpenAPIHono, store: RecordStore, kind: Kind): void {
  const [one, many] = kindLabels[kind];
  const path = `/api/records/${kind}`;
  const tags = [kind];

  define(
    app,
    {
      method: 'get',
      path,
      tags,
      summary: `List ${many}`,
      description:
        'In the order in which they were made, or by `sort`. A field’s name as a parameter asks for records ' +
        'where it has that value; given several times, any of them.',
      request: { query: listParameters(kind) },
      responses: { ...json(`A page of ${many}`, pageSchema(kind)), ...problems(400, 422) },
    },
    async (c) => c.json(await store.list(kind, listQuery(kind, c.req.url))),
  );
  define(
    app,
    {
      method: 'post',
      path,
      tags,
      summary: `Add a ${one}`,
      request: {
        body: { required: true, content: { 'application/json': { schema: fieldsSchema(kind) } } },
      },
      responses: {
        ...json(
          'As written; Location and ETag tell where and which version',
          writtenSchema(kind),
          201,
        ),
        ...problems(400, 409, 413, 415, 422),
      },
    },
    async (c) => {
      const fields = (await jsonObject(c)) as FieldsIn<Kind>;
      const record = await store.create(kind, fields);
      c.header('Location', `${path}/${record.id}`);
      return answerRecord(c, withRemarks(kind, record), 201);
    },
  );
  define(
    app,
    {
      method: 'get',
      path: `${path}/{id}`,
      tags,
      summary: `Read a ${one}`,
      request: { params: idParameter },
      responses: { ...json('ETag is its version', storedSchema(kind)), ...problems(404) },
    },
    async (c) => {
      const id = idOf(c);
      const record = await store.get(kind, id);
      if (!record) throw new NotFoundError(kind, shortened(id));
      return answerRecord(c, record);
    },
  );
  define(
    app,
    {
      method: 'patch',
      path: `${path}/{id}`,
      tags,
      summary: `Change a ${one}`,
      description:
        'Fields given are written, null clears a field, fields left out stay (RFC 7396). A value ' +
        'that changes is the department’s own and loses its origin, unless `origins` gives another ' +
        'for it. Importing a list again leaves such values, and fields cleared so, as they are.',
      request: {
        params: idParameter,
        headers: ifMatch,
        body: { required: true, content: { 'application/json': { schema: changesSchema(kind) } } },
      },
      responses: {
        ...json('As it is now', writtenSchema(kind)),
        ...problems(400, 404, 409, 413, 415, 422, 428),
      },
    },
    async (c) => {
      const version = requiredVersion(c);
      const changes = cleared(kind, await jsonObject(c));
      const record = await changeRecord(store, kind, idOf(c), version, changes);
      return answerRecord(c, withRemarks(kind, record));
    },
  );
  define(
    app,
    {
      method: 'delete',
      path: `${path}/{id}`,
      tags,
      summary: `Remove a ${one}`,
      description: 'Refused while other records refer to it.',
      request: { params: idParameter, headers: ifMatch },
      responses: { 204: { description: 'Removed' }, ...problems(400, 404, 409, 428) },
    },
    async (c) => {
      await store.remove(kind, idOf(c), requiredVersion(c));
      return c.body(null, 204);
    },
  );
}

/** A field as it is, or with a minus in front: the other way round. */
function sortParameter(kind: Kind): z.ZodType {
  const fields = sortFields(kind);
  return z
    .enum([...fields, ...fields.map((field) => `-${field}`)])
    .optional()
    .openapi({
      description:
        'A field to sort by; a minus in front turns it round. Names go as people count (H-2 before ' +
        'H-10), other texts by their letters, ids by the name of the record that they stand for, and ' +
        'records without a value last. Keep it the same from page to page.',
      example: `-${fields[0]}`,
    });
}

function listParameters(kind: Kind) {
  return z.object({
    search: z.string().optional().openapi({
      description: 'Words in names and notes, or in the name of a record that it belongs to',
    }),
    box: z.string().optional().openapi({
      description: 'west,south,east,north in degrees WGS 84',
      example: '-71.20,42.30,-71.10,42.40',
    }),
    sort: sortParameter(kind),
    limit: z.int().min(1).max(5000).default(100).optional(),
    after: z.string().optional().openapi({ description: '`next` of the page before' }),
  } satisfies Record<(typeof parameterNames)[number], z.ZodType>);
}

function answerRecord(c: Context, record: Stored<Kind>, status: 200 | 201 = 200): Response {
  c.header('ETag', versionTag(record.version));
  // Compressing would weaken the tag, and a record is short.
  c.header('Cache-Control', 'no-cache, no-transform');
  return c.json(record, status);
}

async function changeRecord(
  store: RecordStore,
  kind: Kind,
  id: string,
  version: number,
  changes: Partial<FieldsIn<Kind>>,
) {
  try {
    return await store.change(kind, id, version, changes);
  } catch (error) {
    const problem = problemOf(error);
    if (!(error instanceof StaleRecordError) || !problem) throw error;
    // The two stand side by side for whoever has to choose.
    throw new ProblemError({
      ...problem,
      extra: { ...problem.extra, yours: { ...withNulls(changes), version } },
    });
  }
}

/** Null clears a field, unless null is a value that the field may hold; in `origins` it takes one away. */
function cleared(kind: Kind, changes: Record<string, unknown>): Partial<Fields<Kind>> {
  const shape = recordSchemas[kind].shape as unknown as Record<string, z.ZodType | undefined>;
  return Object.fromEntries(
    Object.entries(changes).map(([field, value]) => {
      const schema = Object.hasOwn(shape, field) ? shape[field] : undefined;
      const clears = value === null && !schema?.safeParse(null).success;
      if (field === 'origins' && isObject(value)) return [field, nullsCleared(value)];
      return [field, clears ? undefined : value];
    }),
  );
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function nullsCleared(values: object): object {
  return Object.fromEntries(
    Object.entries(values).map(([field, value]) => [field, value === null ? undefined : value]),
  );
}

function withNulls(changes: object): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(changes).map(([field, value]) => [field, value === undefined ? null : value]),
  );
}

function idOf(c: Context): string {
  return c.req.param('id') ?? '';
}

function shortened(id: string): string {
  return id.length > 40 ? `${id.slice(0, 37)}...` : id;
}
