/** Drills on what the department has on record: a hydrant, and the hose for a spare line. */
import { boostedAtHydrant, writePlan } from '@plugside/fireground';
import type { Stored } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { joined, makeDrill, type RoomServer, roomServer } from './test-room.ts';

let server: RoomServer;
const place = { longitude: -90.5, latitude: 40.5 };

beforeAll(async () => {
  server = await roomServer();
});
afterAll(() => server.close());

const hydrantOf = (fields: object) =>
  server.store.create('hydrants', {
    name: 'Mill Lane 4',
    ...place,
    steamerIn: 4.5,
    sideOutlets: 2,
    main: 'Mill Lane, 12 in',
    ...fields,
  });

/** 72 psi static, 58 residual while a neighbour flows 1,400 gpm. */
async function tested(hydrant: Stored<'hydrants'>): Promise<Stored<'hydrants'>> {
  await server.store.create('flow-tests', {
    hydrantId: hydrant.id,
    testedOn: '2026-05-06',
    staticPsi: 72,
    residualPsi: 58,
    flowing: [{ outletIn: 2.5, coefficient: 0.9, flowGpm: 1400 }],
  });
  return hydrant;
}

async function sceneOf(asked: object) {
  const { code, keys } = await makeDrill(server.url, asked);
  const leader = await joined(server.url, code, { role: 'instructor', key: keys.instructor });
  leader.drop();
  return leader.scene!;
}

async function refusalOf(asked: object) {
  const answer = await server.ask('/drills', { json: asked });
  const { issues, detail } = (await answer.json()) as {
    issues: { path: string; remedy: string }[];
    detail: string;
  };
  return { status: answer.status, path: issues[0]!.path, detail };
}

const evolution = 'boost through valve';

describe('an evolution on a hydrant of the records', () => {
  it('has that hydrant’s curve, main and name, and the evolution’s steps', async () => {
    const { id } = await tested(await hydrantOf({}));
    const own = await sceneOf({ evolution });
    const scene = await sceneOf({ evolution, hydrantId: id });
    expect(scene.plan.hydrants[0]).toMatchObject({
      id: own.plan.hydrants[0]!.id,
      name: 'Mill Lane 4',
      main: 'Mill Lane, 12 in',
      staticPsi: 72,
      residualPsi: 58,
      testGpm: 1400,
      sideOutlets: 2,
    });
    expect(scene.title).toBe(`${own.title}: Mill Lane 4`);
    expect(scene.evolution).toBe(evolution);
    expect(scene.steps).toEqual(own.steps);
  });

  it('is refused where the hydrant has no test, no large outlet, or not the outlets used', async () => {
    const untested = await hydrantOf({ name: 'Untested' });
    expect(await refusalOf({ evolution, hydrantId: untested.id })).toMatchObject({
      status: 422,
      path: 'hydrantId',
      detail: expect.stringMatching(/Untested has no flow test on record\. Enter one, or pick/),
    });
    const { steamerIn: _, ...small } = { steamerIn: 4.5, name: 'Small', ...place, sideOutlets: 2 };
    const narrow = await tested(await server.store.create('hydrants', small));
    expect((await refusalOf({ evolution, hydrantId: narrow.id })).detail).toMatch(/large outlet/);
    const single = await tested(await hydrantOf({ name: 'Single', sideOutlets: 0 }));
    expect(
      (await refusalOf({ evolution: 'side suction lines', hydrantId: single.id })).detail,
    ).toMatch(/Single has no side outlet 1/);
    expect(await refusalOf({ evolution, hydrantId: 'nobody' })).toMatchObject({
      status: 422,
      path: 'hydrantId',
    });
  });

  it('stands beside no plan', async () => {
    const plan = writePlan(boostedAtHydrant({}));
    expect(await refusalOf({ plan, hydrantId: 'any' })).toMatchObject({ path: 'hydrantId' });
  });
});

describe('a drill from a plan', () => {
  const laid = boostedAtHydrant({ title: 'Plan', attackLines: [{}, {}] });
  const named = (name: string) =>
    writePlan({
      ...laid,
      rigs: laid.rigs.map((rig) => (rig.id === laid.scene ? { ...rig, name } : rig)),
    });
  const hose = (lengthFt: number) => [{ size: '1-3/4', lengthFt }];

  it('has a spare line to be called, where the engine has the hose for one', async () => {
    await server.store.create('rigs', { name: 'Engine 61', hose: hose(600) });
    await server.store.create('rigs', { name: 'Engine 62', hose: hose(400) });
    const spare = await sceneOf({ plan: named('Engine 61') });
    expect(spare.spareNozzle).toBeDefined();
    expect(spare.plan.lines).toHaveLength(laid.lines.length + 1);
    // Both its lines of 200 ft are in the plan.
    expect((await sceneOf({ plan: named('Engine 62') })).spareNozzle).toBeUndefined();
    // Not on record: its hose is not known, and taken to be enough.
    expect((await sceneOf({ plan: named('Engine 63') })).spareNozzle).toBeDefined();
  });
});
