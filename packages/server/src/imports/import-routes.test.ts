import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problemIn, type TestServer, testServer } from '../test-server.ts';
import type { ImportView, RefusedRow } from './import-view.ts';

const LIST = [
  'Hydrant No,Lat,Long,Main size,Status',
  'A-1,42.3001,-71.1001,8 in,in service',
  'A-2,42.3002,-71.1002,DN 100,in service',
  'A-3,,,8 in,in service',
  '',
].join('\n');

let server: TestServer;

beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

async function upload(body: string, query = 'name=list.csv&kind=hydrants'): Promise<ImportView> {
  const answer = await server.ask(`/imports?${query}`, { method: 'POST', body });
  expect(answer.status).toBe(201);
  const job = (await answer.json()) as ImportView;
  expect(answer.headers.get('location')).toBe(`/api/imports/${job.id}`);
  return job;
}

const view = async (id: string) =>
  (await (await server.ask(`/imports/${id}`)).json()) as ImportView;

/** Polls, as the app does, until the import leaves the states given. */
async function settled(id: string): Promise<ImportView> {
  for (;;) {
    const job = await view(id);
    if (job.state !== 'reading' && job.state !== 'running') return job;
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}

const run = (id: string, query = '') =>
  server.ask(`/imports/${id}/run${query}`, { method: 'POST' });

const manyRows = (count: number) =>
  [
    'id,name,lat,lon',
    ...Array.from({ length: count }, (_, n) => `${n},H-${n},42.${30000 + (n % 999)},-71.1`),
  ].join('\n');

describe('an import', () => {
  it('is read, mapped, counted, run, reported, and the same again changes nothing', async () => {
    const { id } = await upload(LIST);
    const ready = await settled(id);
    expect(ready).toMatchObject({ state: 'ready', format: 'csv', delimiter: 'comma' });
    expect(ready.columns).toEqual(['Hydrant No', 'Lat', 'Long', 'Main size', 'Status']);
    expect(ready.progress.total).toBe(3);
    expect(ready.mapping?.fields.map(({ field }) => field)).toContain('mainIn');
    expect(ready.sample.map(({ understood }) => understood.is)).toEqual([
      'record',
      'record',
      'refused',
    ]);

    expect((await run(id, '?dryRun=true')).status).toBe(202);
    const counted = await settled(id);
    expect(counted).toMatchObject({ state: 'ready', report: { dryRun: true, added: 2 } });
    expect(await server.store.count('hydrants')).toBe(0);

    expect((await run(id)).status).toBe(202);
    const done = await settled(id);
    expect(done).toMatchObject({
      state: 'done',
      progress: { done: 3, total: 3 },
      report: { dryRun: false, rows: 3, added: 2, changed: 0, refusedCount: 1 },
      hasRefusedFile: true,
    });
    expect(await server.store.count('hydrants')).toBe(2);
    const refused = await server.ask(`/imports/${id}/refused.csv`);
    expect(refused.headers.get('content-type')).toContain('text/csv');
    expect(await refused.text()).toContain('A-3');

    const again = await upload(LIST);
    await settled(again.id);
    await run(again.id);
    expect((await settled(again.id)).report).toMatchObject({ added: 0, changed: 0, same: 2 });
    expect(await server.store.count('hydrants')).toBe(2);
    const map = await (await server.ask('/map/hydrants')).json();
    expect((map as { features: unknown[] }).features).toHaveLength(2);
  });

  it('that comes again leaves what was changed and cleared by hand, and tells of it', async () => {
    const list = 'Id,Name,Lat,Long,Main size,Owner\nk1,K-1,42.31,-71.11,6 in,Town\n';
    const bring = async () => {
      const { id } = await upload(list, 'name=kept.csv&kind=hydrants');
      await settled(id);
      await run(id);
      return (await settled(id)).report;
    };
    expect(await bring()).toMatchObject({ added: 1 });
    const at = async () =>
      (await server.store.list('hydrants', { where: { externalId: 'k1' } })).records[0]!;
    const { id, version } = await at();
    const patched = await server.ask(`/records/hydrants/${id}`, {
      method: 'PATCH',
      version,
      json: { mainIn: 8, owner: null },
    });
    expect(patched.status).toBe(200);
    const report = await bring();
    expect(report).toMatchObject({ added: 0, changed: 0, same: 1, keptCount: 2 });
    expect(report?.kept.map(({ field, ours, theirs }) => [field, ours, theirs]).sort()).toEqual([
      ['mainIn', '8', '6'],
      ['owner', 'cleared', 'Town'],
    ]);
    const kept = await at();
    expect(kept).toMatchObject({ mainIn: 8, version: version + 1 });
    expect(kept).not.toHaveProperty('owner');

    // Taking the note of the clearing away hands the field back to the list.
    await server.ask(`/records/hydrants/${id}`, {
      method: 'PATCH',
      version: kept.version,
      json: { origins: { owner: null } },
    });
    expect(await bring()).toMatchObject({ changed: 1, keptCount: 1 });
    expect(await at()).toMatchObject({ mainIn: 8, owner: 'Town' });
  });

  it('takes another mapping, and shows what it makes of the rows', async () => {
    const { id } = await upload('id,name,lat,lon,w\n1,N,42.3,-71.1,200\n');
    const { mapping } = await settled(id);
    const put = (json: unknown) => server.ask(`/imports/${id}/mapping`, { method: 'PUT', json });
    const field = { field: 'mainIn', columns: ['w'], unit: 'mm' };
    const others = mapping?.fields.filter((one) => !one.columns.includes('w')) ?? [];
    const answer = await put({ ...mapping, fields: [...others, field] });
    expect(answer.status).toBe(200);
    const { sample } = (await answer.json()) as ImportView;
    const first = sample[0]?.understood;
    // 200 mm is 200/25.4 = 7.874 in, by the definition of the inch.
    expect(first?.is === 'record' && 'mainIn' in first.fields && first.fields.mainIn).toBeCloseTo(
      7.874,
      3,
    );

    const buildings = (await (await put({ kind: 'buildings' })).json()) as ImportView;
    expect(buildings.mapping?.kind).toBe('buildings');

    const wrong = await put({
      ...mapping,
      idColumn: 'none',
      place: { ...mapping?.place, crs: 'EPSG:999999' },
      fields: [
        { field: 'colour', columns: ['w'] },
        { field: 'mainIn', columns: ['x'], unit: 'furlong' },
      ],
    });
    expect(wrong.status).toBe(422);
    const { issues = [] } = await problemIn(wrong);
    expect(issues.map(({ path }) => path).sort()).toEqual([
      'fields[0].field',
      'fields[1].columns[0]',
      'fields[1].unit',
      'idColumn',
      'place.crs',
    ]);
    expect((await put({ kind: 'dragons' })).status).toBe(400);
    expect((await put({ fields: 3 })).status).toBe(422);
    expect((await view(id)).mapping?.kind).toBe('buildings');
  });

  it('fails with what to do where the file cannot be read', async () => {
    const { id } = await upload('PK\u0003\u0004 this is no archive');
    const job = await settled(id);
    expect(job.state).toBe('failed');
    expect(job.failure?.remedy).toBeTruthy();
    expect((await run(id)).status).toBe(409);
  });

  it('cancelled while it runs leaves nothing written', async () => {
    const before = await server.store.count('hydrants');
    const { id } = await upload(manyRows(30_000));
    await settled(id);
    await run(id);
    while ((await view(id)).progress.done === 0) await new Promise((go) => setTimeout(go, 5));
    const answer = await server.ask(`/imports/${id}`, { method: 'DELETE' });
    expect(answer.status).toBe(200);
    expect(await answer.json()).toMatchObject({ state: 'cancelled', report: null });
    expect(await server.store.count('hydrants')).toBe(before);
    expect((await server.ask(`/imports/${id}/refused.csv`)).status).toBe(404);

    expect((await server.ask(`/imports/${id}`, { method: 'DELETE' })).status).toBe(204);
    expect((await server.ask(`/imports/${id}`)).status).toBe(404);
  });

  it('can be cancelled while it is read', async () => {
    const { id, state } = await upload(manyRows(300_000), 'name=long.csv&kind=hydrants');
    expect(state).toBe('reading');
    const answer = await server.ask(`/imports/${id}`, { method: 'DELETE' });
    expect(await answer.json()).toMatchObject({ state: 'cancelled', columns: [] });
  });

  it('can be cancelled before it runs, and not run after', async () => {
    const { id } = await upload(LIST);
    await settled(id);
    await server.ask(`/imports/${id}`, { method: 'DELETE' });
    expect((await view(id)).state).toBe('cancelled');
    expect((await run(id)).status).toBe(409);
  });

  it('makes room for another by forgetting the oldest', async () => {
    const first = await upload(LIST);
    await settled(first.id);
    for (let n = 0; n < 20; n += 1) await settled((await upload(LIST)).id);
    expect((await server.ask(`/imports/${first.id}`)).status).toBe(404);
  });
});

describe('an import that is mended', () => {
  const BAD = [
    'Hydrant No,Lat,Long,Main size',
    'M-1,42.4001,-71.2001,8 in',
    'M-2,42.4002,,8 in',
    'M-3,42.4003,-71.2003,eight and a bit',
    'M-1,42.4004,-71.2004,8 in',
    '',
  ].join('\n');

  const refusedOf = async (id: string) =>
    (await (await server.ask(`/imports/${id}/refused`)).json()) as {
      total: number;
      rows: RefusedRow[];
    };
  const mend = (id: string, rows: unknown) =>
    server.ask(`/imports/${id}/mend`, { method: 'POST', json: { rows } });

  it('tells refused rows with their cells, takes new ones, and adds those alone', async () => {
    const before = await server.store.count('hydrants');
    const { id } = await upload(BAD, 'name=mend.csv&kind=hydrants');
    // The second row of an id is shown as refused before anything is run.
    expect((await settled(id)).sample.map(({ understood }) => understood.is)).toEqual([
      'record',
      'refused',
      'refused',
      'refused',
    ]);
    await run(id);
    expect((await settled(id)).report).toMatchObject({ added: 1, refusedCount: 3 });
    const { total, rows } = await refusedOf(id);
    expect(total).toBe(3);
    expect(rows.map(({ row, refusal }) => [row, refusal.code, refusal.column])).toEqual([
      [3, 'no place', 'Long'],
      [4, 'value not understood', 'Main size'],
      [5, 'duplicate key', 'Hydrant No'],
    ]);
    expect(rows[0]?.values).toMatchObject({ 'Hydrant No': 'M-2', Lat: '42.4002', Long: '' });

    const mended = await mend(id, [{ row: 3, values: { Long: '-71.2002' } }]);
    expect(await mended.json()).toMatchObject({ state: 'done', mendedCount: 1 });
    await run(id);
    // The row that was brought in stays as it is, and the one with its id is still found out.
    expect((await settled(id)).report).toMatchObject({
      added: 1,
      changed: 0,
      same: 1,
      refusedCount: 2,
    });
    await mend(id, [
      { row: 4, values: { 'Main size': '8 in' } },
      { row: 5, values: { 'Hydrant No': 'M-4' } },
    ]);
    await run(id);
    expect((await settled(id)).report).toMatchObject({ added: 2, same: 2, refusedCount: 0 });
    expect(await server.store.count('hydrants')).toBe(before + 4);

    // The same file again, as it came: nothing is doubled.
    const again = await upload(BAD, 'name=mend.csv&kind=hydrants');
    await settled(again.id);
    await run(again.id);
    expect((await settled(again.id)).report).toMatchObject({ added: 0, same: 1, refusedCount: 3 });
    expect(await server.store.count('hydrants')).toBe(before + 4);
  });

  it('takes the file of refused rows, mended, as the same list', async () => {
    const { id } = await upload(BAD, 'name=sheet.csv&kind=hydrants');
    await settled(id);
    await run(id);
    await settled(id);
    const file = await server.ask(`/imports/${id}/refused.csv`);
    expect(file.headers.get('content-disposition')).toContain('"sheet-refused.csv"');
    const text = await file.text();
    const before = await server.store.count('hydrants');
    const sheet = text.replace('eight and a bit', '8 in');
    const next = await upload(sheet, 'name=sheet-refused.csv&kind=hydrants');
    expect((await settled(next.id)).mapping?.sourceName).toBe('sheet');
    await run(next.id);
    // The second row with the id M-1 still has it: it must not write over the first.
    expect((await settled(next.id)).report).toMatchObject({
      added: 1,
      changed: 0,
      refusedCount: 2,
      refused: [{ code: 'no place' }, { code: 'duplicate key', key: 'M-1' }],
    });
    expect(await server.store.count('hydrants')).toBe(before + 1);

    const third = await (await server.ask(`/imports/${next.id}/refused.csv`)).text();
    const last = await upload(
      third.replace(/^M-1,/m, 'M-9,'),
      'name=sheet-refused.csv&kind=hydrants',
    );
    await settled(last.id);
    await run(last.id);
    expect((await settled(last.id)).report).toMatchObject({ added: 1, refusedCount: 1 });
  });

  it('takes a place for a row that the file gives one as a geometry alone', async () => {
    const feature = (name: string, geometry: object | null) => ({
      type: 'Feature',
      properties: { name },
      geometry,
    });
    const point = (...coordinates: number[]) => ({ type: 'Point', coordinates });
    const file = JSON.stringify({
      type: 'FeatureCollection',
      features: [
        feature('G-1', point(-71.21, 42.41)),
        feature('G-2', null),
        feature('G-3', point(-71.23, 442.43)),
        feature('G-4', point(-71.24, 42.44)),
      ],
    });
    const { id } = await upload(file, 'name=points.geojson&kind=hydrants');
    await settled(id);
    await run(id);
    expect((await settled(id)).report).toMatchObject({ added: 2, refusedCount: 2 });
    const refused = (await refusedOf(id)).rows;
    expect(refused.map(({ row, refusal }) => [row, refusal.code])).toEqual([
      [2, 'no place'],
      [3, 'place out of range'],
    ]);

    const place = (longitude: string, latitude: string) => ({ longitude, latitude });
    await mend(id, [
      { row: 2, place: place("71°13.2'W", '42.42') },
      { row: 3, place: place('-71.23', 'north') },
    ]);
    await run(id);
    // 71°13.2' is 71 + 13.2/60 = 71.22 degrees.
    expect((await settled(id)).report).toMatchObject({
      added: 1,
      same: 2,
      refused: [{ row: 3, code: 'value not understood', value: 'north' }],
    });
    const { records } = await server.store.list('hydrants', { where: { name: 'G-2' } });
    expect(records[0]?.longitude).toBeCloseTo(-71.22, 9);
    expect(records[0]?.latitude).toBe(42.42);
    expect(records[0]?.origins.longitude?.text).toContain('place entered by hand');

    for (const [longitude, latitude, code] of [
      ['-71.23', '', 'no place'],
      ['-71.23', '142.43', 'place swapped'],
      ['200', '42.43', 'place out of range'],
      ['', ' ', 'place out of range'],
    ] as const) {
      await mend(id, [{ row: 3, place: place(longitude, latitude) }]);
      await run(id);
      expect((await settled(id)).report?.refused).toMatchObject([{ row: 3, code }]);
    }
    await mend(id, [{ row: 3, place: place('-71.23', '42.43') }]);
    await run(id);
    expect((await settled(id)).report).toMatchObject({ added: 1, same: 3, refusedCount: 0 });
  });

  it('takes no place for what is at no one point', async () => {
    const { id } = await upload('name\nElm\n', 'name=streets.csv&kind=streets');
    await settled(id);
    const place = { longitude: '-71.2', latitude: '42.4' };
    const wrong = await mend(id, [{ row: 2, place }]);
    expect(wrong.status).toBe(422);
    expect((await problemIn(wrong)).issues?.[0]?.path).toBe('rows.0.place');
  });

  it('refuses columns that the file has not, and other shapes', async () => {
    const { id } = await upload(BAD);
    await settled(id);
    const wrong = await mend(id, [{ row: 3, values: { Colour: 'red' } }]);
    expect(wrong.status).toBe(422);
    expect((await problemIn(wrong)).detail).toContain('"Colour", which the file has not');
    for (const rows of [[], [{ row: 0, values: {} }], [{ row: 2, values: { Lat: 4 } }], 'all']) {
      expect((await mend(id, rows)).status, JSON.stringify(rows)).toBe(422);
    }
  });

  it('can be mapped anew and run again when done', async () => {
    const { id } = await upload(
      'id,name,lat,lon,w\nW-1,W,42.3,-71.1,200\n',
      'name=w.csv&kind=hydrants',
    );
    const { mapping } = await settled(id);
    await run(id);
    expect((await settled(id)).report).toMatchObject({ added: 1 });
    const fields = [...(mapping?.fields ?? []), { field: 'mainIn', columns: ['w'], unit: 'mm' }];
    await server.ask(`/imports/${id}/mapping`, { method: 'PUT', json: { ...mapping, fields } });
    await run(id);
    expect((await settled(id)).report).toMatchObject({ added: 0, changed: 1 });
  });
});

describe('a run that is stopped', () => {
  it('leaves nothing written and the import ready, and can be run to its end', async () => {
    const before = await server.store.count('hydrants');
    const { id } = await upload(manyRows(30_000), 'name=stopped.csv&kind=hydrants');
    await settled(id);
    expect((await server.ask(`/imports/${id}/stop`, { method: 'POST' })).status).toBe(409);
    await run(id);
    while ((await view(id)).progress.done === 0) await new Promise((go) => setTimeout(go, 5));
    const answer = await server.ask(`/imports/${id}/stop`, { method: 'POST' });
    expect(await answer.json()).toMatchObject({ state: 'ready', report: null });
    expect(await server.store.count('hydrants')).toBe(before);
    await run(id, '?dryRun=true');
    expect((await settled(id)).report).toMatchObject({ added: 30_000, dryRun: true });
    expect((await view(id)).elapsedMs).toBeGreaterThan(0);
  });
});

describe('an upload', () => {
  it('without a kind is taken for what its columns tell, and another kind is offered', async () => {
    const body =
      'Hydrant No,Test Date,Static,Residual,Pitot 1\nH-1,2026-05-01,60,40,20\nH-2,2026-05-02,62,44,18\n';
    const { id } = await upload(body, 'name=ft.csv');
    expect(await settled(id)).toMatchObject({ kind: 'flow-tests', likelyKind: null });
    const asked = await upload(body, 'name=ft.csv&kind=hydrants');
    expect(await settled(asked.id)).toMatchObject({ kind: 'hydrants', likelyKind: 'flow-tests' });
  });

  it.each([
    ['kind=hydrants', 'name'],
    ['name=%00.csv&kind=hydrants', 'name'],
    ['name=a.csv&kind=plans', 'kind'],
  ])('is refused with ?%s', async (query, told) => {
    const answer = await server.ask(`/imports?${query}`, { method: 'POST', body: LIST });
    expect(answer.status).toBe(400);
    expect((await problemIn(answer)).detail).toContain(told);
  });

  it('keeps only the last part of a name that looks like a path', async () => {
    const job = await upload(LIST, 'name=..%2f..%2fetc%5cpasswd&kind=hydrants');
    expect(job.name).toBe('passwd');
    await settled(job.id);
  });

  it('is refused when empty', async () => {
    const answer = await server.ask('/imports?name=a.csv&kind=hydrants', { method: 'POST' });
    expect(answer.status).toBe(400);
  });

  it('is refused by its announced length before it is sent', async () => {
    const length = 201 * 1_048_576;
    const { status, text } = await announce(server.port, length);
    expect(status).toBe(413);
    expect(text).toContain('200 MB');
  });
});

/** Sends the headers of an upload and none of its body. */
function announce(port: number, length: number) {
  return new Promise<{ status: number; text: string }>((resolve, reject) => {
    const sent = request({
      host: '127.0.0.1',
      port,
      method: 'POST',
      path: '/api/imports?name=a.csv&kind=hydrants',
      headers: { 'content-length': String(length) },
    });
    sent.on('response', (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (part: string) => {
        text += part;
      });
      answer.on('end', () => {
        resolve({ status: answer.statusCode ?? 0, text });
        sent.destroy();
      });
    });
    sent.on('error', reject);
    sent.flushHeaders();
  });
}
