import {
  adjusted,
  asTheyCome,
  boostedAtHydrant,
  chooseSupply,
  writePlan,
} from '@plugside/fireground';
import { fillDemo, type Stored, situationAt } from '@plugside/records';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problemIn, type TestServer, testServer } from '../test-server.ts';
import type { CardsView } from './cards-job.ts';

let server: TestServer;
let rig: Stored<'rigs'>;
let hydrants: Stored<'hydrants'>[];

beforeAll(async () => {
  server = await testServer();
  await fillDemo(server.store);
  rig = (await server.store.list('rigs')).records[0]!;
  hydrants = (await server.store.list('hydrants', { limit: 40 })).records;
}, 120_000);
afterAll(() => server.close());

/** The bytes of a PDF that is whole; fails the test where the answer is none. */
async function pdfIn(answer: Response): Promise<string> {
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('application/pdf');
  const text = Buffer.from(await answer.arrayBuffer()).toString('latin1');
  expect(text.startsWith('%PDF-1.')).toBe(true);
  expect(text.trimEnd().endsWith('%%EOF')).toBe(true);
  return text;
}

/** All that is written in a PDF, as another program reads it. */
async function textIn(data: Uint8Array): Promise<string> {
  const task = getDocument({ data, verbosity: 0 });
  const read = await task.promise;
  const words: string[] = [];
  for (let number = 1; number <= read.numPages; number += 1) {
    const { items } = await (await read.getPage(number)).getTextContent();
    words.push(...items.map((item) => ('str' in item ? item.str : '')));
  }
  await task.destroy();
  return words.join(' ').replace(/\s+/g, ' ');
}

const pagesIn = (pdf: string) => (pdf.match(/\/Type \/Page\b/g) ?? []).length;

const viewIn = async (answer: Response) => (await answer.json()) as CardsView;

async function ended(id: string): Promise<CardsView> {
  for (;;) {
    const view = await viewIn(await server.ask(`/paper/hydrant-cards/${id}`));
    if (view.state !== 'running') return view;
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

describe('a document of one record', () => {
  it('is a pump chart in either paper and units', async () => {
    const letter = await pdfIn(await server.ask(`/paper/pump-chart/${rig.id}.pdf`));
    expect(letter).toContain('/MediaBox [0 0 612 792]');
    const a4 = await pdfIn(await server.ask(`/paper/pump-chart/${rig.id}.pdf?paper=a4&units=si`));
    expect(a4).toContain('/MediaBox [0 0 595.28 841.89]');
  });

  it('is a hydrant’s card', async () => {
    const card = await pdfIn(await server.ask(`/paper/hydrant-card/${hydrants[0]!.id}.pdf`));
    expect(pagesIn(card)).toBe(1);
  });

  it.each(['pump-chart', 'hydrant-card'])('%s of no such record is 404', async (kind) => {
    const answer = await server.ask(`/paper/${kind}/01JZ0000000000000000000000.pdf`);
    expect(answer.status).toBe(404);
    expect((await problemIn(answer)).title).toBe('Not found');
  });

  it('on paper that there is not is refused by name', async () => {
    const answer = await server.ask(`/paper/pump-chart/${rig.id}.pdf?paper=a5`);
    expect(answer.status).toBe(400);
    expect((await problemIn(answer)).issues?.[0]).toMatchObject({
      path: 'paper',
      value: 'a5',
      allowed: 'letter or a4',
    });
  });
});

describe('a document of a plan', () => {
  const plan = writePlan({ ...boostedAtHydrant({ attackLines: [{}] }), demandGpm: 900 });

  it('is a drill sheet', async () => {
    const benchmarks = [{ text: 'Water at the intake', target: '4 min' }];
    const answer = await server.ask('/paper/drill-sheet', { json: { plan, benchmarks } });
    expect(pagesIn(await pdfIn(answer))).toBeGreaterThanOrEqual(2);
  });

  it.each([
    ['a plan that is none', { plan: 'title: 3' }],
    ['a plan that needs no water', { plan: writePlan(boostedAtHydrant({})) }],
    ['no plan', {}],
    ['a field that there is not', { plan, colour: 'red' }],
  ])('refuses %s', async (_what, json) => {
    const answer = await server.ask('/paper/drill-sheet', { json });
    expect(answer.status).toBe(422);
    expect((await problemIn(answer)).detail.length).toBeGreaterThan(10);
  });

  it('is a building’s water plan, on the paper asked for', async () => {
    const { records } = await server.store.list('buildings', { limit: 200 });
    const { id } = records.find(({ neededGpm }) => (neededGpm ?? 0) > 500)!;
    const json = { buildingId: id, paper: 'a4', units: 'si' };
    const answer = await server.ask('/paper/building-plan', { json });
    expect(await pdfIn(answer)).toContain('/MediaBox [0 0 595.28 841.89]');
    const beyond = await server.ask('/paper/building-plan', { json: { ...json, way: 'no such' } });
    expect(beyond.status).toBe(422);
    expect((await problemIn(beyond)).detail).toContain('No such way is among those chosen from');
  });

  it('refuses flow to spare and pressure for lines that cannot be, by name and range', async () => {
    const { records } = await server.store.list('buildings', { limit: 1 });
    const buildingId = records[0]!.id;
    const json = { buildingId, marginShare: 3, fireLinePdpPsi: 20 };
    const answer = await server.ask('/paper/building-plan', { json });
    expect(answer.status).toBe(422);
    const { issues = [] } = await problemIn(answer);
    expect(issues).toMatchObject([
      { path: 'marginShare', value: 3 },
      { path: 'fireLinePdpPsi', value: 20 },
    ]);
    expect(issues[0]!.message).toContain('0 to 2.');
    expect(issues[1]!.message).toContain('50 to 400 psi');
  });

  it('is chosen with the flow to spare and the pressure that were asked for, and says so', async () => {
    const { records } = await server.store.list('buildings', { limit: 200 });
    const { id } = records.find(({ neededGpm }) => (neededGpm ?? 0) > 500)!;
    const found = await situationAt(server.store, id);
    const changes = { ...asTheyCome, marginShare: 0.25, fireLinePdpPsi: 190 };
    const { ways } = chooseSupply(adjusted(found.situation!, changes));
    const json = { buildingId: id, marginShare: 0.25, fireLinePdpPsi: 190 };
    const answer = await server.ask('/paper/building-plan', { json });
    expect(answer.status).toBe(200);
    const text = await textIn(new Uint8Array(await answer.arrayBuffer()));
    // A heading begins with a capital letter.
    expect(text.toLowerCase()).toContain(ways[0]!.title.toLowerCase());
    expect(text).toMatch(/25 % of the demand .* is wanted to spare: as given/);
    expect(text).toMatch(/need 190 psi at the discharge of their pump: as given/);
    const usual = await server.ask('/paper/building-plan', { json: { buildingId: id } });
    expect(await textIn(new Uint8Array(await usual.arrayBuffer()))).toMatch(
      /10 % of the demand .* is wanted to spare: the default.* 150 psi .*: the default/,
    );
  });

  it('of no such building is 404', async () => {
    const json = { buildingId: '01JZ0000000000000000000000' };
    expect((await server.ask('/paper/building-plan', { json })).status).toBe(404);
  });
});

describe('a stack of cards', () => {
  it('is printed in the background, told as it goes, and sent as often as it is asked for', async () => {
    const hydrantIds = hydrants.slice(0, 6).map(({ id }) => id);
    const begun = await server.ask('/paper/hydrant-cards', { json: { hydrantIds, paper: 'a4' } });
    expect(begun.status).toBe(202);
    const { id } = await viewIn(begun);
    expect(begun.headers.get('location')).toBe(`/api/paper/hydrant-cards/${id}`);
    const view = await ended(id);
    expect(view).toMatchObject({ state: 'done', progress: { done: 6, total: 6 }, failure: null });
    for (let time = 0; time < 2; time += 1) {
      const answer = await server.ask(`/paper/hydrant-cards/${id}/file.pdf`);
      expect(pagesIn(await pdfIn(answer))).toBe(6);
    }
    expect((await server.ask(`/paper/hydrant-cards/${id}`, { method: 'DELETE' })).status).toBe(204);
    expect((await server.ask(`/paper/hydrant-cards/${id}`)).status).toBe(404);
  });

  it('that is cancelled has no file', async () => {
    const { id } = await viewIn(await server.ask('/paper/hydrant-cards', { json: {} }));
    const early = await server.ask(`/paper/hydrant-cards/${id}/file.pdf`);
    expect(early.status).toBe(409);
    const stopped = await server.ask(`/paper/hydrant-cards/${id}`, { method: 'DELETE' });
    expect(await stopped.json()).toMatchObject({ state: 'cancelled', file: null });
    expect((await server.ask(`/paper/hydrant-cards/${id}/file.pdf`)).status).toBe(409);
  });

  it.each([
    ['paper', { paper: 'a5' }, 422],
    ['hydrantIds', { hydrantIds: [] }, 422],
    ['hydrantIds', { hydrantIds: Array.from({ length: 5001 }, () => 'x') }, 422],
    ['hydrants', { hydrantIds: ['01JZ0000000000000000000000'] }, 404],
    ['rigs', { boosterId: '01JZ0000000000000000000000' }, 404],
  ])('with a wrong %s is refused', async (what, json, status) => {
    const answer = await server.ask('/paper/hydrant-cards', { json });
    expect(answer.status).toBe(status);
    const problem = await problemIn(answer);
    if (status === 422) expect(problem.issues?.[0]?.path).toBe(what);
  });
});
