import { kinds, sortFields } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestServer, testServer } from '../test-server.ts';
import { createApi } from './create-api.ts';

interface Operation {
  summary?: string;
  parameters?: { name: string; in: string; schema?: { enum?: string[] } }[];
  requestBody?: { content: Record<string, { schema: Schema }> };
  responses: Record<string, { description: string; content?: Record<string, unknown> }>;
}
interface Schema {
  properties?: Record<string, Record<string, unknown>>;
  required?: string[];
  additionalProperties?: unknown;
}
interface Document {
  openapi: string;
  info: { title: string; version: string };
  paths: Record<string, Record<string, Operation>>;
}

let server: TestServer;
let document: Document;

beforeAll(async () => {
  server = await testServer();
  document = (await (await server.ask('/openapi.json')).json()) as Document;
});
afterAll(() => server.close());

const operations = () =>
  Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ path, method, operation })),
  );

describe('the OpenAPI document', () => {
  it('is of OpenAPI 3.1', () => {
    expect(document.openapi).toBe('3.1.0');
    expect(document.info).toMatchObject({ title: 'Plugside', version: '9.9.9' });
  });

  it('holds every route that is served, and no other', () => {
    const app = createApi({ store: server.store, version: '1' });
    const served = app.routes
      .filter(({ method }) => method !== 'ALL')
      .map(({ method, path }) => `${method} ${path.replace(/:(\w+)/g, '{$1}')}`);
    const described = operations().map(({ path, method }) => `${method.toUpperCase()} ${path}`);
    expect([...new Set(described)].sort()).toEqual([...new Set(served)].sort());
    expect(served.length).toBeGreaterThan(5 * kinds.length);
  });

  it('tells what a water plan may be asked for, with each range', () => {
    const { schemas } = (document as unknown as { components: { schemas: Record<string, Schema> } })
      .components;
    expect(schemas.BuildingPlanRequest!.properties).toMatchObject({
      marginShare: { type: 'number', minimum: 0, maximum: 2 },
      fireLinePdpPsi: { type: 'number', minimum: 50, maximum: 400 },
    });
  });

  it('names every part of a path, and an answer for each route', () => {
    for (const { path, operation } of operations()) {
      const inPath = [...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);
      const named = (operation.parameters ?? []).filter((one) => one.in === 'path');
      expect(named.map(({ name }) => name)).toEqual(inPath);
      expect(operation.summary).toBeTruthy();
      expect(Object.keys(operation.responses)[0]).toMatch(/^(2\d\d|101)$/);
    }
  });

  it('describes a record as its schema has it', () => {
    const schema =
      document.paths['/api/records/hydrants']?.post?.requestBody?.content['application/json']
        ?.schema;
    expect(schema?.required?.sort()).toEqual(['latitude', 'longitude', 'name']);
    expect(schema?.properties?.latitude).toMatchObject({ minimum: -90, maximum: 90 });
    expect(schema?.properties?.status?.enum).toEqual(['in service', 'out of service']);
    expect(schema?.additionalProperties).toBe(false);
  });

  it('names the fields that each kind can be sorted by, both ways', () => {
    for (const kind of kinds) {
      const parameters = document.paths[`/api/records/${kind}`]?.get?.parameters ?? [];
      const sort = parameters.find(({ name }) => name === 'sort');
      const wanted = sortFields(kind).flatMap((field) => [field, `-${field}`]);
      expect([...(sort?.schema?.enum ?? [])].sort()).toEqual(wanted.sort());
    }
    expect(sortFields('hydrants')).toContain('name');
  });

  it('refers to nothing that it does not hold', () => {
    const text = JSON.stringify(document);
    for (const [, name] of text.matchAll(/"\$ref":"#\/components\/schemas\/([^"]+)"/g)) {
      expect(text).toContain(`"${name}":{`);
    }
  });
});
