/** Whatever is sent, the server answers for it: never with a failure of its own. */
import { request } from 'node:http';
import { connect } from 'node:net';
import { kinds, recordSchemas } from '@plugside/records/model';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestServer, testServer } from './test-server.ts';

let server: TestServer;
let ids: Record<string, string> = {};

beforeAll(async () => {
  server = await testServer();
  const place = { longitude: -71, latitude: 42 };
  const hydrant = await server.add('hydrants', { name: 'H-1', ...place });
  const test = { hydrantId: hydrant.id, testedOn: '2024-05-01', staticPsi: 70, residualPsi: 50 };
  ids = {
    hydrants: hydrant.id,
    'flow-tests': (await server.add('flow-tests', { ...test, statedFlowGpm: 900 })).id,
    settings: (await server.add('settings', { name: 'district', value: { name: 1 } })).id,
  };
});
afterAll(() => server.close());

interface Sent {
  method: string;
  path: string;
  headers?: Record<string, string>;
  body?: string;
}

/** The path goes out as written: fetch would tidy it first. */
function send({
  method,
  path,
  headers = {},
  body,
}: Sent): Promise<{ status: number; text: string; type: string }> {
  return new Promise((resolve, reject) => {
    const sent = request({
      host: '127.0.0.1',
      port: server.port,
      method,
      path,
      headers: {
        ...headers,
        ...(body !== undefined && { 'content-length': Buffer.byteLength(body) }),
      },
    });
    sent.on('response', (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (part: string) => {
        text += part;
      });
      answer.on('end', () =>
        resolve({
          status: answer.statusCode ?? 0,
          text,
          type: answer.headers['content-type'] ?? '',
        }),
      );
    });
    sent.on('error', reject).end(body);
  });
}

/** Below 500, and a problem document where it is refused. */
async function expectAnswer(sent: Sent): Promise<void> {
  const { status, text, type } = await send(sent);
  expect(status, `${JSON.stringify(sent)}\n${text}`).toBeLessThan(500);
  if (status < 400 || sent.method === 'HEAD') return;
  expect(type, JSON.stringify(sent)).toBe('application/problem+json');
  expect(text).not.toMatch(/node_modules|\bat \w+ \(|sqlite/i);
}

const oddText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.constantFrom(
    '',
    '\0',
    '\ud800',
    '\u202e',
    '__proto__',
    'constructor',
    '1e999',
    'NaN',
    '"',
    "'; --",
  ),
);
const oddNumber = fc.oneof(
  fc.double(),
  fc.integer(),
  fc.constantFrom(Number.MAX_VALUE, -Number.MAX_VALUE, 5e-324, -0, 2 ** 53, 1e21),
);
const oddValue = fc.oneof(fc.jsonValue({ maxDepth: 4 }), oddText, oddNumber);
const kind = fc.constantFrom(...kinds);

/** Fields of the kind, and others, with anything in them. */
const record = kind.chain((one) =>
  fc.record({
    kind: fc.constant(one),
    fields: fc.dictionary(
      fc.oneof(
        { weight: 5, arbitrary: fc.constantFrom(...Object.keys(recordSchemas[one].shape)) },
        { weight: 1, arbitrary: oddText },
      ),
      fc.oneof(oddValue, fc.constantFrom('2024-05-01', null)),
      { maxKeys: 12 },
    ),
  }),
);

const runs = (numRuns: number) => ({ numRuns, seed: 20_261_125 });
const asJson = { 'content-type': 'application/json' };
/** Node writes a header or a path only of characters that HTTP allows. */
const headerText = oddText.map((text) => text.replace(/[^\x20-\x7e]/g, '~'));
const segment = fc.oneof(
  oddText.map((text) => encodeURIComponent(text.replace(/[\ud800-\udfff]/g, '~'))),
  headerText.map((text) => text.replace(/[\s#?]/g, '')),
  fc.constantFrom(
    '..',
    '.',
    '%2e%2e',
    '..%2f..%2fetc',
    '%00',
    '%',
    '%zz',
    '%c0%ae',
    '\\..',
    '//',
    ';',
  ),
);

describe('whatever is sent', () => {
  it('in a record that is added', async () => {
    await fc.assert(
      fc.asyncProperty(record, ({ kind: one, fields }) =>
        expectAnswer({
          method: 'POST',
          path: `/api/records/${one}`,
          headers: asJson,
          body: JSON.stringify(fields),
        }),
      ),
      runs(400),
    );
  });

  it('in a change', async () => {
    await fc.assert(
      fc.asyncProperty(record, fc.oneof(headerText, fc.constant('"1"')), (one, version) =>
        expectAnswer({
          method: 'PATCH',
          path: `/api/records/${one.kind}/${ids[one.kind] ?? ids.hydrants}`,
          headers: { ...asJson, 'if-match': version },
          body: JSON.stringify(one.fields),
        }),
      ),
      runs(300),
    );
  });

  it('as a body that is no record, in any type', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('POST', 'PATCH', 'PUT', 'DELETE'),
        fc.oneof(headerText, fc.constant('application/json')),
        fc.oneof(
          oddText,
          oddValue.map((value) => JSON.stringify(value)),
        ),
        fc.constantFrom(
          '/api/records/hydrants',
          '/api/records/hydrants/x',
          '/api/elevation/places',
          '/api/elevation?name=x',
          '/api/imports/x/mapping',
          '/api/imports/x/run',
          '/api/district',
          '/api/backup',
        ),
        (method, type, body, path) =>
          expectAnswer({
            method,
            path,
            headers: { 'content-type': type, 'if-match': '"1"' },
            body: body ?? '',
          }),
      ),
      runs(300),
    );
  });

  it('as a path', async () => {
    const start = fc.constantFrom(
      '/',
      '/api/',
      '/api/records/',
      '/api/records/hydrants/',
      '/api/map/',
      '/api/export/',
      '/api/imports/',
      '/api/hydrants/',
    );
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('GET', 'HEAD', 'POST', 'DELETE', 'PATCH', 'OPTIONS'),
        start,
        fc.array(segment, { maxLength: 4 }),
        (method, from, rest) => expectAnswer({ method, path: from + rest.join('/') }),
      ),
      runs(400),
    );
  });

  it('in a query', async () => {
    const name = fc.oneof(
      segment,
      fc.constantFrom(
        'search',
        'box',
        'limit',
        'after',
        'name',
        'mainIn',
        'status',
        'origins',
        'version',
        'lon',
        'lat',
        'kind',
      ),
    );
    const path = fc.constantFrom(
      ...kinds.map((one) => `/api/records/${one}`),
      '/api/elevation',
      '/api/district',
      '/api/map/hydrants',
      '/api/export/hydrants.csv',
    );
    await fc.assert(
      fc.asyncProperty(
        path,
        fc.array(fc.tuple(name, fc.oneof(segment, oddNumber.map(String))), { maxLength: 5 }),
        (at, parts) =>
          expectAnswer({
            method: 'GET',
            path: `${at}?${parts.map(([key, value]) => `${key}=${value}`).join('&')}`,
          }),
      ),
      runs(400),
    );
  });

  it('in headers', async () => {
    const name = fc.constantFrom(
      'accept',
      'accept-encoding',
      'if-none-match',
      'if-match',
      'origin',
      'sec-fetch-site',
      'content-type',
      'range',
      'host',
    );
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('/', '/api/district', '/api/map/hydrants', '/api/records/hydrants'),
        fc.dictionary(name, headerText, { minKeys: 1 }),
        async (path, headers) => {
          const { status } = await send({ method: 'GET', path, headers });
          expect(status, JSON.stringify({ path, headers })).toBeLessThan(500);
        },
      ),
      runs(200),
    );
  });

  it('as a mapping of an import', async () => {
    const body = 'id,name,lat,lon\n1,N,42.3,-71.1\n';
    const options = { method: 'POST', body };
    const { id } = (await (
      await server.ask('/imports?name=a.csv&kind=hydrants', options)
    ).json()) as {
      id: string;
    };
    let mapping: Record<string, unknown> | null = null;
    while (!mapping) {
      const job = (await (await server.ask(`/imports/${id}`)).json()) as {
        mapping: Record<string, unknown> | null;
      };
      mapping = job.mapping;
    }
    const place = fc.dictionary(
      fc.constantFrom(
        'geometry',
        'longitude',
        'latitude',
        'point',
        'crs',
        'swapped',
        'farOff',
        'near',
      ),
      fc.oneof(
        oddValue,
        fc.constantFrom('lat', 'lon', 'EPSG:2240', 'refuse', '+proj=utm', 'GEOGCS['),
      ),
    );
    const field = fc.record(
      {
        field: fc.oneof(oddText, fc.constantFrom('name', 'mainIn', 'status', 'origins')),
        columns: fc.array(fc.constantFrom('id', 'name', 'lat', 'x'), { maxLength: 3 }),
        unit: fc.oneof(oddText, fc.constantFrom('in', 'mm')),
        words: fc.dictionary(oddText, oddValue, { maxKeys: 3 }),
      },
      { requiredKeys: ['field', 'columns'] },
    );
    const changes = fc.record(
      {
        kind: fc.oneof(oddValue, kind),
        place: fc.oneof(
          oddValue,
          place,
          place.map((one) => ({ ...(mapping?.place as object), ...one })),
        ),
        fields: fc.oneof(oddValue, fc.array(field, { maxLength: 3 })),
        sourceName: oddValue,
        only: oddValue,
      },
      { requiredKeys: [] },
    );
    await fc.assert(
      fc.asyncProperty(changes, (given) =>
        expectAnswer({
          method: 'PUT',
          path: `/api/imports/${id}/mapping`,
          headers: asJson,
          body: JSON.stringify({ ...mapping, ...given }),
        }),
      ),
      runs(300),
    );
  });

  it('as a file', async () => {
    const lines = fc.array(
      fc.array(oddText, { maxLength: 5 }).map((cells) => cells.join(',')),
      {
        maxLength: 8,
      },
    );
    const file = fc.oneof(
      oddText,
      lines.map((rows) => `id,name,lat,lon\n${rows.join('\n')}`),
      oddValue.map((value) => JSON.stringify({ type: 'FeatureCollection', features: value })),
      fc
        .uint8Array({ maxLength: 200 })
        .map((bytes) => `PK\u0003\u0004${String.fromCharCode(...bytes)}`),
    );
    await fc.assert(
      fc.asyncProperty(
        file,
        fc.constantFrom('hydrants', 'streets', 'flow-tests'),
        async (body, one) => {
          const path = `/imports?name=a.csv&kind=${one}`;
          const answer = await server.ask(path, { method: 'POST', body });
          if (body === '') {
            expect(answer.status).toBe(400);
            return;
          }
          expect(answer.status, JSON.stringify(body)).toBe(201);
          const { id } = (await answer.json()) as { id: string };
          for (;;) {
            const job = (await (await server.ask(`/imports/${id}`)).json()) as {
              state: string;
              failure: { detail: string } | null;
            };
            // A file that nobody foresaw would be told as the server's failure.
            expect(job.failure?.detail ?? '', JSON.stringify(body)).not.toContain('log says why');
            if (job.state === 'failed' || job.state === 'done') break;
            if (job.state === 'ready') await server.ask(`/imports/${id}/run`, { method: 'POST' });
          }
          await server.ask(`/imports/${id}`, { method: 'DELETE' });
        },
      ),
      runs(80),
    );
  });

  it('in bytes that are no HTTP', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ minLength: 1, maxLength: 200 }),
        (bytes) =>
          new Promise<void>((resolve) => {
            const socket = connect(server.port, '127.0.0.1', () => socket.end(bytes));
            socket.on('error', () => {}).on('close', () => resolve());
            socket.resume();
          }),
      ),
      runs(40),
    );
    expect((await server.ask('/district')).status).toBe(200);
  });
});
