import type { Situation } from '@plugside/fireground';
import { fillDemo } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ProblemBody, type TestServer, testServer } from '../test-server.ts';

let server: TestServer;
let id: string;

beforeAll(async () => {
  server = await testServer();
  await fillDemo(server.store);
  const { records } = await server.store.list('buildings', { limit: 1 });
  id = records[0]!.id;
}, 60_000);
afterAll(() => server.close());

describe('the situation at a building', () => {
  it('is told with the demand asked for', async () => {
    const answer = await server.ask(`/buildings/${id}/situation?demandGpm=900&hydrants=4`);
    expect(answer.status).toBe(200);
    const told = (await answer.json()) as {
      situation: Situation;
      recordIds: Record<string, string>;
      paths: Record<string, [number, number][]>;
    };
    expect(told.situation.demandGpm).toBe(900);
    expect(told.situation.invented).toBe(true);
    const [first] = told.situation.hydrants;
    const record = await server.store.get('hydrants', told.recordIds[first!.hydrant.id]!);
    // The way begins at the hydrant.
    expect(told.paths[first!.hydrant.id]![0]).toEqual([record!.longitude, record!.latitude]);
  });

  it.each([
    ['demandGpm', '-5'],
    ['demandGpm', '0.5'],
    ['demandGpm', '20001'],
    ['demandGpm', 'lots'],
    ['hydrants', '2.5'],
    ['hydrants', '41'],
  ])('refuses %s=%s and says what is allowed', async (name, value) => {
    const answer = await server.ask(`/buildings/${id}/situation?${name}=${value}`);
    expect(answer.status).toBe(400);
    const problem = (await answer.json()) as ProblemBody;
    expect(problem.issues![0]).toMatchObject({ path: name, value });
    const range =
      name === 'demandGpm' ? 'a number from 1 to 20,000 gpm' : 'a whole number from 1 to 40';
    expect(problem.detail).toBe(
      `${name} is "${value}"; allowed: ${range}. Ask with ${range}, or leave ${name} out.`,
    );
  });

  it('is not there for a building that is not', async () => {
    const answer = await server.ask('/buildings/01HV00000000000000000000B0/situation');
    expect(answer.status).toBe(404);
  });
});
