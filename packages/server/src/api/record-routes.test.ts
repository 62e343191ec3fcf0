import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problemIn, type TestServer, testServer } from '../test-server.ts';

const HYDRANT = { name: 'H-1', longitude: -71.1, latitude: 42.3 };
let server: TestServer;

beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

describe('adding and reading', () => {
  it('answers with the record, its place and its version', async () => {
    const answer = await server.ask('/records/hydrants', { json: HYDRANT });
    expect(answer.status).toBe(201);
    const record = (await answer.json()) as { id: string };
    expect(record).toMatchObject({ ...HYDRANT, version: 1, sideOutlets: 2 });
    expect(answer.headers.get('etag')).toBe('"1"');
    expect(answer.headers.get('location')).toBe(`/api/records/hydrants/${record.id}`);
    const again = await server.ask(`/records/hydrants/${record.id}`);
    expect(again.headers.get('etag')).toBe('"1"');
    expect(await again.json()).toEqual(record);
  });

  it('tells each fault with its path, value, what is allowed and what to do', async () => {
    const json = { name: '', longitude: 200, latitude: 'north', colour: 'red' };
    const answer = await server.ask('/records/hydrants', { json });
    expect(answer.status).toBe(422);
    const { issues = [] } = await problemIn(answer);
    expect(issues.map(({ path }) => path).sort()).toEqual([
      'colour',
      'latitude',
      'longitude',
      'name',
    ]);
    const far = issues.find(({ path }) => path === 'longitude');
    expect(far).toMatchObject({ value: 200, allowed: 'a number, -180 to 180' });
    for (const { message, remedy } of issues) expect(message && remedy).toBeTruthy();
    expect(await server.store.count('hydrants')).toBe(1);
  });

  it('refuses a reference to nothing', async () => {
    const json = {
      hydrantId: '01ARZ3NDEKTSV4RRFFQ69G5FAV',
      testedOn: '2024-05-01',
      staticPsi: 70,
      residualPsi: 50,
    };
    const answer = await server.ask('/records/flow-tests', { json });
    expect(answer.status).toBe(422);
    expect((await problemIn(answer)).issues?.[0]?.path).toBe('hydrantId');
  });

  it.each([
    ['/records/hydrants/01ARZ3NDEKTSV4RRFFQ69G5FAV', 'hydrant'],
    ['/records/hydrants/..%2f..%2fetc', 'hydrant'],
    ['/records/dragons', '/api/records/dragons'],
    ['/none', '/api/openapi.json'],
  ])('answers 404 at %s', async (path, told) => {
    const answer = await server.ask(path, { headers: { accept: 'text/html' } });
    expect(answer.status).toBe(404);
    expect((await problemIn(answer)).detail).toContain(told);
  });

  it('answers 405 with what is served', async () => {
    const answer = await server.ask('/records/hydrants', { method: 'PUT' });
    expect(answer.status).toBe(405);
    expect(answer.headers.get('allow')).toBe('GET, HEAD, POST');
    await problemIn(answer);
  });
});

describe('listing', () => {
  it('pages, searches, and asks for equal fields and a box', async () => {
    const { id } = await server.add('hydrants', { ...HYDRANT, name: 'Élm 7', longitude: -70 });
    await server.add('hydrants', { ...HYDRANT, name: 'H-3', status: 'out of service' });
    const list = async (query: string) =>
      (await (await server.ask(`/records/hydrants?${query}`)).json()) as {
        records: { id: string; name: string }[];
        total: number;
        next?: string;
      };
    const names = async (query: string) => (await list(query)).records.map(({ name }) => name);
    const first = await list('limit=2');
    expect([first.records.length, first.total]).toEqual([2, 3]);
    expect(await names(`limit=2&after=${first.next}`)).toEqual(['H-3']);
    expect(await names('search=elm')).toEqual(['Élm 7']);
    expect(await names('box=-71.2,42,-71,43')).toEqual(['H-1', 'H-3']);
    expect(await names('status=out%20of%20service')).toEqual(['H-3']);
    expect(await names('name=H-1&name=H-3')).toEqual(['H-1', 'H-3']);
    expect(await names('sideOutlets=2&sideOutletIn=2.5')).toHaveLength(3);
    expect(await names('mainIn=-3')).toEqual([]);
    const engine = await server.add('rigs', { name: '7', tankGal: 500 });
    const other = await server.add('rigs', { name: '8', inService: false });
    const rigs = async (query: string) =>
      ((await (await server.ask(`/records/rigs?${query}`)).json()) as { records: { id: string }[] })
        .records;
    expect(await rigs('name=7&inService=true')).toMatchObject([{ id: engine.id }]);
    expect(await rigs('inService=false')).toMatchObject([{ id: other.id }]);
    expect(await list(`id=${id}`)).toMatchObject({ total: 1 });
  });

  it.each([
    ['limit=0', 'limit'],
    ['limit=5001', 'limit'],
    ['limit=ten', 'limit'],
    ['box=1,2,3', 'box'],
    ['box=1,5,3,2', 'box'],
    ['sort=colour', 'sort'],
    ['sort=', 'sort'],
    ['sort=--name', 'sort'],
    ['sort=origins', 'sort'],
    ['sort=name&after=01ARZ3NDEKTSV4RRFFQ69G5FAV', 'after'],
    ['colour=red', 'where.colour'],
    ['mainIn=wide', 'where.mainIn'],
    ['origins=x', 'where.origins'],
  ])('refuses %s by name', async (query, path) => {
    const answer = await server.ask(`/records/hydrants?${query}`);
    expect([400, 422]).toContain(answer.status);
    expect((await problemIn(answer)).issues?.[0]?.path).toBe(path);
  });
});

describe('sorting', () => {
  it('goes by a field, both ways and page by page, and finds a test by its hydrant’s name', async () => {
    const { id } = await server.add('hydrants', { ...HYDRANT, name: 'S-10', mainIn: 6 });
    await server.add('hydrants', { ...HYDRANT, name: 'S-2', mainIn: 12 });
    await server.add('hydrants', { ...HYDRANT, name: 'S-1' });
    const list = async (query: string) =>
      (await (await server.ask(`/records/hydrants?search=S-&${query}`)).json()) as {
        records: { name: string }[];
        next?: string;
      };
    const names = async (query: string) => (await list(query)).records.map(({ name }) => name);
    expect(await names('sort=name')).toEqual(['S-1', 'S-2', 'S-10']);
    expect(await names('sort=-name')).toEqual(['S-10', 'S-2', 'S-1']);
    expect(await names('sort=-mainIn')).toEqual(['S-2', 'S-10', 'S-1']);
    const { next } = await list('sort=-mainIn&limit=1');
    expect(await names(`sort=-mainIn&limit=1&after=${next}`)).toEqual(['S-10']);
    const test = await server.add('flow-tests', {
      hydrantId: id,
      testedOn: '2024-05-01',
      staticPsi: 70,
      residualPsi: 50,
    });
    const found = await (await server.ask('/records/flow-tests?search=s-10')).json();
    expect(found).toMatchObject({ total: 1, records: [{ id: test.id }] });
  });
});

describe('changing', () => {
  it('writes what is given, clears what is null, leaves the rest', async () => {
    const hydrant = await server.add('hydrants', { ...HYDRANT, note: 'a', mainIn: 8 });
    const answer = await server.ask(`/records/hydrants/${hydrant.id}`, {
      method: 'PATCH',
      version: 1,
      json: { note: null, steamerIn: 4.5 },
    });
    expect(answer.status).toBe(200);
    expect(answer.headers.get('etag')).toBe('"2"');
    const record = (await answer.json()) as Record<string, unknown>;
    expect(record).toMatchObject({ version: 2, mainIn: 8, steamerIn: 4.5 });
    expect(record).not.toHaveProperty('note');
    expect(await server.store.get('hydrants', hydrant.id)).toEqual(record);
  });

  it('keeps null where null is a value', async () => {
    const setting = await server.add('settings', { name: 'x', value: 1 });
    const answer = await server.ask(`/records/settings/${setting.id}`, {
      method: 'PATCH',
      version: 1,
      json: { value: null },
    });
    expect(await answer.json()).toMatchObject({ value: null, version: 2 });
  });

  it('refuses a stale change and shows both sides', async () => {
    const { id } = await server.add('hydrants', HYDRANT);
    const patch = (json: object) =>
      server.ask(`/records/hydrants/${id}`, { method: 'PATCH', version: 1, json });
    const theirs = await patch({ note: 'theirs' });
    const answer = await patch({ note: 'ours', mainIn: null });
    expect(answer.status).toBe(409);
    const problem = await problemIn(answer);
    expect(problem.current).toEqual(await theirs.json());
    expect(problem.yours).toEqual({ version: 1, note: 'ours', mainIn: null });
    expect((await server.store.get('hydrants', id))?.note).toBe('theirs');
  });

  it('lets one of two changes through that come at once', async () => {
    const { id } = await server.add('hydrants', HYDRANT);
    const answers = await Promise.all(
      Array.from({ length: 8 }, (_, turn) =>
        server.ask(`/records/hydrants/${id}`, {
          method: 'PATCH',
          version: 1,
          json: { note: `turn ${turn}` },
        }),
      ),
    );
    const statuses = answers.map(({ status }) => status).sort();
    expect(statuses).toEqual([200, ...Array.from({ length: 7 }, () => 409)]);
  });

  it.each([
    [undefined, 428],
    ['1', 400],
    ['"one"', 400],
    ['*', 400],
    ['"1", "2"', 400],
    ['W/"1"', 200],
  ])('takes If-Match %s as %i', async (ifMatch, status) => {
    const { id } = await server.add('hydrants', HYDRANT);
    const headers: Record<string, string> = ifMatch === undefined ? {} : { 'if-match': ifMatch };
    const options = { method: 'PATCH', json: { note: 'x' }, headers };
    expect((await server.ask(`/records/hydrants/${id}`, options)).status).toBe(status);
  });
});

describe('removing', () => {
  it('removes at the version that was read, and only then', async () => {
    const { id } = await server.add('stations', { ...HYDRANT, name: 'S' });
    const at = `/records/stations/${id}`;
    expect((await server.ask(at, { method: 'DELETE' })).status).toBe(428);
    expect((await server.ask(at, { method: 'DELETE', version: 2 })).status).toBe(409);
    const answer = await server.ask(at, { method: 'DELETE', version: 1 });
    expect([answer.status, await answer.text()]).toEqual([204, '']);
    expect((await server.ask(at)).status).toBe(404);
    expect((await server.ask(at, { method: 'DELETE', version: 1 })).status).toBe(404);
  });

  it('says who refers to it', async () => {
    const hydrant = await server.add('hydrants', HYDRANT);
    const test = await server.add('flow-tests', {
      hydrantId: hydrant.id,
      testedOn: '2024-05-01',
      staticPsi: 70,
      residualPsi: 50,
    });
    const answer = await server.ask(`/records/hydrants/${hydrant.id}`, {
      method: 'DELETE',
      version: 1,
    });
    expect(answer.status).toBe(409);
    expect((await problemIn(answer)).by).toEqual([
      { kind: 'flow-tests', field: 'hydrantId', count: 1, ids: [test.id] },
    ]);
  });
});

describe('bodies', () => {
  it.each([
    ['text', 'text/plain', '{}', 415],
    ['no JSON', 'application/json', '{"name":', 400],
    ['nothing', 'application/json', '', 400],
    ['a list', 'application/json; charset=utf-8', '[]', 400],
    ['null', 'application/json', 'null', 400],
    ['deep nesting', 'application/json', `{"a":${'['.repeat(5000)}${']'.repeat(5000)}}`, 400],
    ['too much', 'application/json', `{"note":"${'x'.repeat(1_048_576)}"}`, 413],
    ['a merge patch', 'application/merge-patch+json', '{}', 422],
  ])('refuses %s', async (_what, type, body, status) => {
    const headers = { 'content-type': type };
    const answer = await server.ask('/records/hydrants', { method: 'POST', headers, body });
    expect(answer.status).toBe(status);
    await problemIn(answer);
  });

  it('refuses bytes that are no UTF-8', async () => {
    const body = new Uint8Array([0x7b, 0x22, 0xff, 0x22, 0x3a, 0x31, 0x7d]);
    const headers = { 'content-type': 'application/json' };
    const answer = await server.ask('/records/hydrants', { method: 'POST', headers, body });
    expect(answer.status).toBe(400);
  });

  it('stops reading at the byte too many when no length is announced', async () => {
    const chunk = new TextEncoder().encode(' '.repeat(65_536));
    let sent = 0;
    const body = new ReadableStream<Uint8Array>({
      pull(controller) {
        sent += 1;
        if (sent > 200) controller.close();
        else controller.enqueue(chunk);
      },
    });
    const answer = await fetch(new URL('/api/records/hydrants', server.url), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
      duplex: 'half',
    } as RequestInit);
    expect(answer.status).toBe(413);
    expect(sent).toBeLessThan(200);
  });
});

describe('a flow test', () => {
  const test = async (more: object) => {
    const made = await server.ask('/records/hydrants', { json: { ...HYDRANT, name: 'H-test' } });
    const { id: hydrantId } = (await made.json()) as { id: string };
    const json = { hydrantId, testedOn: '2026-05-06', staticPsi: 60, residualPsi: 40, ...more };
    return server.ask('/records/flow-tests', { json });
  };

  it('that plans cannot use is kept, and its answer says why', async () => {
    const swapped = await test({ residualPsi: 70, statedFlowGpm: 900 });
    expect(swapped.status).toBe(201);
    const { id, remarks } = (await swapped.json()) as { id: string; remarks: string[] };
    expect(remarks.join(' ')).toContain('above static');
    const again = await server.ask(`/records/flow-tests/${id}`);
    expect(await again.json()).not.toHaveProperty('remarks');
    const dry = (await (await test({})).json()) as { remarks: string[] };
    expect(dry.remarks).toHaveLength(1);
    const sound = (await (await test({ statedFlowGpm: 900 })).json()) as object;
    expect(sound).not.toHaveProperty('remarks');
  });

  it('dated after today is refused with what is allowed', async () => {
    const answer = await test({ testedOn: '2130-05-06', statedFlowGpm: 900 });
    expect(answer.status).toBe(422);
    const [issue] = (await problemIn(answer)).issues ?? [];
    expect(issue).toMatchObject({ path: 'testedOn', value: '2130-05-06' });
    expect(issue?.allowed).toContain('up to');
  });
});
