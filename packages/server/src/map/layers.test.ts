import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestServer, testServer } from '../test-server.ts';

interface Collection {
  type: string;
  features: { geometry: { type: string }; properties: Record<string, unknown> }[];
}

let server: TestServer;

beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

const layer = async (name: string) =>
  (await (await server.ask(`/map/${name}`)).json()) as Collection;

describe('hydrants on the map', () => {
  it('carry what the newest test says, or the test that the record names', async () => {
    const place = { longitude: -71.1, latitude: 42.3 };
    const { id } = await server.add('hydrants', { name: 'H-1', ...place });
    await server.add('hydrants', { name: 'H-2', ...place, status: 'out of service' });
    // Q20 = Q·((60−20)/(60−40))^0.54 = 1,000·2^0.54 = 1,453.97, by hand; the formula from
    // "Water-supply analysis", slide 16 (http://tkolb.net/WatSup/sld001.htm).
    const test = { hydrantId: id, staticPsi: 60, residualPsi: 40, statedFlowGpm: 1000 };
    const old = await server.add('flow-tests', { ...test, testedOn: '2019-05-01' });
    await server.add('flow-tests', { ...test, testedOn: '2023-05-01', statedFlowGpm: 300 });
    const [first, second] = (await layer('hydrants')).features;
    // 300·2^0.54 = 436.2 by hand.
    expect(first?.properties).toMatchObject({ q20Gpm: 436, class: 'C', testedOn: '2023-05-01' });
    expect(second?.properties).toMatchObject({
      q20Gpm: null,
      class: null,
      status: 'out of service',
    });
    await server.ask(`/records/hydrants/${id}`, {
      method: 'PATCH',
      version: 1,
      json: { planTestId: old.id },
    });
    const [named] = (await layer('hydrants')).features;
    expect(named?.properties).toMatchObject({ q20Gpm: 1454, class: 'A', testedOn: '2019-05-01' });
    const supply = await (await server.ask(`/hydrants/${id}/supply`)).json();
    expect(supply).toMatchObject({ test: { id: old.id }, result: { class: { name: 'A' } } });
    expect((supply as { result: { q20Gpm: number } }).result.q20Gpm).toBeCloseTo(1453.97, 2);
  });

  it('have a supply curve from static to nothing', async () => {
    const id = (await layer('hydrants')).features[0]?.properties.id;
    const answer = await server.ask(`/hydrants/${id}/supply`);
    const { result } = (await answer.json()) as {
      result: { curve: { flowGpm: number; psi: number }[] };
    };
    expect(result.curve[0]).toEqual({ flowGpm: 0, psi: 60 });
    // 1,000·(60/20)^0.54 = 1,809.9 gpm takes all 60 psi, by hand.
    expect(result.curve.at(-1)?.flowGpm).toBeCloseTo(1809.9, 1);
    expect(result.curve.at(-1)?.psi).toBeCloseTo(0, 6);
  });

  it('have null for both where nothing was tested', async () => {
    const id = (await layer('hydrants')).features[1]?.properties.id;
    const answer = await server.ask(`/hydrants/${id}/supply`);
    expect(await answer.json()).toEqual({ test: null, result: null, datedAhead: [] });
    expect((await server.ask('/hydrants/none/supply')).status).toBe(404);
  });
});

describe('a layer', () => {
  it('is answered with 304 until a record in it changes, by whatever way', async () => {
    const tag = async (name: string) =>
      (await server.ask(`/map/${name}`)).headers.get('etag') ?? '';
    const status = async (name: string, sent: string) =>
      (await server.ask(`/map/${name}`, { headers: { 'if-none-match': sent } })).status;
    const [hydrants, streets] = [await tag('hydrants'), await tag('streets')];
    expect(await status('hydrants', hydrants)).toBe(304);
    expect(await status('hydrants', '"other"')).toBe(200);

    const street = { path: [[-71, 42] as [number, number], [-71, 42.1] as [number, number]] };
    const { id } = await server.store.create('streets', street);
    expect(await status('streets', streets)).toBe(200);
    expect(await status('hydrants', hydrants)).toBe(304);
    const added = await tag('streets');
    await server.store.change('streets', id, 1, { name: 'Elm' });
    const changed = await tag('streets');
    await server.store.remove('streets', id, 2);
    const removed = await tag('streets');
    expect(new Set([added, changed, removed]).size).toBe(3);
    expect((await layer('streets')).features).toEqual([]);
  });

  it('comes compressed where that is taken', async () => {
    const plain = await server.ask('/map/hydrants', { headers: { 'accept-encoding': 'identity' } });
    const packed = await server.ask('/map/hydrants', { headers: { 'accept-encoding': 'gzip' } });
    expect(plain.headers.get('content-encoding')).toBeNull();
    expect(packed.headers.get('content-encoding')).toBe('gzip');
    expect(packed.headers.get('content-type')).toBe('application/geo+json');
    expect(await packed.text()).toBe(await plain.text());
  });

  it('draws a building by its outline, else as a point', async () => {
    const ring = [
      [-71, 42],
      [-71, 42.01],
      [-71.01, 42.01],
      [-71, 42],
    ];
    const place = { longitude: -71, latitude: 42 };
    await server.add('buildings', { name: 'Mill', ...place, footprint: [ring], neededGpm: 1500 });
    await server.add('buildings', { name: 'Barn', ...place });
    const { features } = await layer('buildings');
    expect(features.map(({ geometry }) => geometry.type)).toEqual(['Polygon', 'Point']);
    expect(features[0]?.properties).toMatchObject({ name: 'Mill', neededGpm: 1500 });
  });
});

describe('the district', () => {
  it('tells its name, its bounds and how much is kept', async () => {
    await server.add('stations', { name: 'S', longitude: -72, latitude: 43 });
    const district = await (await server.ask('/district')).json();
    expect(district).toMatchObject({
      name: 'Unnamed district',
      invented: false,
      bounds: [-72, 42, -71, 43],
      engine: server.store.engine,
      counts: { hydrants: 2, 'flow-tests': 2, stations: 1, plans: 0 },
    });
  });
});
