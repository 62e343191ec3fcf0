import { kinds } from '@plugside/records';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type TestServer, testServer } from '../test-server.ts';

let server: TestServer;

beforeAll(async () => {
  server = await testServer();
  await server.add('hydrants', { name: 'H, "1"', longitude: -71, latitude: 42, mainIn: 8 });
});
afterAll(() => server.close());

it('sends a table', async () => {
  const answer = await server.ask('/export/hydrants.csv');
  expect(answer.headers.get('content-disposition')).toBe('attachment; filename="hydrants.csv"');
  const text = await answer.text();
  // Quotes doubled, as RFC 4180 has it.
  expect(text).toContain('"H, ""1"""');
});

it('sends a map', async () => {
  const answer = await server.ask('/export/hydrants.geojson');
  expect(answer.headers.get('content-type')).toBe('application/geo+json');
  const { features } = (await answer.json()) as { features: object[] };
  expect(features).toMatchObject([
    { geometry: { type: 'Point', coordinates: [-71, 42] }, properties: { mainIn: 8 } },
  ]);
});

it('sends every kind, empty ones too', async () => {
  for (const kind of kinds) {
    const csv = await server.ask(`/export/${kind}.csv`);
    expect([csv.status, (await csv.text()).split('\n').length > 1]).toEqual([200, true]);
    const map = await server.ask(`/export/${kind}.geojson`);
    expect(await map.json()).toMatchObject({ type: 'FeatureCollection' });
  }
});

it('sends everything as one archive', async () => {
  const answer = await server.ask('/export.zip');
  const bytes = new Uint8Array(await answer.arrayBuffer());
  expect(Number(answer.headers.get('content-length'))).toBe(bytes.length);
  const text = new TextDecoder('latin1').decode(bytes);
  for (const kind of kinds) expect(text).toContain(`${kind}.csv`);
});
