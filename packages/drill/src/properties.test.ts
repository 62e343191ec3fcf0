import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrillAction, Submitted } from './action.ts';
import { createDrill, restoreDrill } from './drill.ts';
import { evolutions } from './evolutions/index.ts';
import { playedBy } from './played-by.ts';
import { radioPresets } from './radio.ts';
import { readAction } from './read-action.ts';
import { playedRoles, type Role, roles } from './role.ts';
import type { DrillScene } from './scene.ts';
import { postOf } from './scene-posts.ts';
import type { DrillState } from './state.ts';
import { step } from './step.ts';

const scenes = evolutions.map((one) => one.scene());

/** Any action that `readAction` lets through, on names of the scene and some that are not there. */
function anyAction(scene: DrillScene): fc.Arbitrary<Submitted> {
  const one = (names: string[]) => fc.constantFrom(...names, 'nowhere');
  const hoses = one(scene.hoses.map(({ id }) => id));
  const rigs = one(scene.pumps.map(({ rigId }) => rigId));
  const ports = one([
    ...new Set(scene.hoses.flatMap(({ from, to }) => [from.plannedPort, to.plannedPort])),
    'A1.intake2',
    'A1.discharge5',
    'B1.discharge2',
    'H1.side2',
  ]);
  const end = fc.constantFrom('from' as const, 'to' as const);
  const opening = fc.oneof(
    fc.constantFrom(0, 1, 0.004, 0.02),
    fc.double({ min: 0, max: 1, noNaN: true }),
  );
  const faults = fc.oneof(
    hoses.map((hose) => ({ kind: 'hose burst' as const, hose })),
    hoses.map((hose) => ({ kind: 'hose kinked' as const, hose, factor: 50 })),
    rigs.map((rig) => ({ kind: 'pump dies' as const, rig })),
    fc.constant({ kind: 'clapper stuck' as const, valve: 'V1' }),
    fc.constant({ kind: 'clapper stuck open' as const, valve: 'V1' }),
    one(scene.plan.nozzles.map(({ id }) => id)).map((nozzle) => ({
      kind: 'line called' as const,
      nozzle,
    })),
    fc.record({ kind: fc.constant('wrong port' as const), hose: hoses, end, port: ports }),
    fc.constant({ kind: 'hydrant weak' as const, hydrant: 'H1', share: 0.1 }),
  );
  const id = fc.constantFrom('f1', 'f2', 'f3');
  const action: fc.Arbitrary<DrillAction> = fc.oneof(
    {
      weight: 3,
      arbitrary: fc.record({ do: fc.constant('couple' as const), hose: hoses, end, port: ports }),
    },
    { weight: 2, arbitrary: fc.record({ do: fc.constant('uncouple' as const), hose: hoses, end }) },
    {
      weight: 8,
      arbitrary: fc.record({
        do: fc.constant('set valve' as const),
        valve: one(scene.valves.map((valve) => valve.id)),
        opening,
        overS: fc.double({ min: 0, max: 120, noNaN: true }),
      }),
    },
    {
      weight: 2,
      arbitrary: fc.record({
        do: fc.constant('pump in gear' as const),
        rig: rigs,
        inGear: fc.boolean(),
      }),
    },
    {
      weight: 3,
      arbitrary: fc.record({
        do: fc.constant('set governor' as const),
        rig: rigs,
        pdpPsi: fc.double({ min: 0, max: 400, noNaN: true }),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        do: fc.constant('set throttle' as const),
        rig: rigs,
        speedFraction: fc.double({ min: 0.3, max: 1.1, noNaN: true }),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.constantFrom(...radioPresets).map(
        (preset): DrillAction => ({
          do: 'radio',
          message:
            'needs' in preset
              ? { preset: preset.key, [preset.needs]: 100 }
              : { preset: preset.key },
        }),
      ),
    },
    {
      weight: 1,
      arbitrary: fc
        .tuple(faults, id)
        .map(([fault, name]): DrillAction => ({ do: 'arm fault', fault: { id: name, ...fault } })),
    },
    { weight: 1, arbitrary: id.map((fault): DrillAction => ({ do: 'lift fault', fault })) },
  );
  // Mostly by one who stands there, else by anyone.
  return fc
    .tuple(action, fc.constantFrom(...roles), fc.integer({ min: 0, max: 7 }))
    .map(([one, anyone, chance]) => ({
      role: chance === 0 ? anyone : roleFor(scene, one),
      action: one,
    }));
}

function roleFor(scene: DrillScene, action: DrillAction): Role {
  if (action.do === 'arm fault' || action.do === 'lift fault') return 'instructor';
  const named =
    'valve' in action
      ? action.valve
      : 'rig' in action
        ? action.rig
        : 'port' in action
          ? action.port
          : 'hose' in action
            ? scene.hoses.find(({ id }) => id === action.hose)?.[action.end].at
            : undefined;
  const piece = named?.split('.')[0] ?? '';
  return playedRoles.find((role) => postOf(scene, role).includes(piece)) ?? 'observer';
}

/** Every number of a state. */
function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(numbersOf);
}

function isSound(state: DrillState, scene: DrillScene): void {
  expect(numbersOf(state).every(Number.isFinite)).toBe(true);
  for (const pump of state.pumps) {
    // Vacuum at most; and no more than a pump at shut-off on top of another at 400 psi, three in a row.
    expect(pump.intakePsi).toBeGreaterThanOrEqual(-14.7);
    expect(pump.dischargePsi).toBeLessThan(1200);
    expect(pump.flowGpm).toBeGreaterThanOrEqual(0);
  }
  for (const valve of state.valves) {
    expect(valve.opening).toBeGreaterThanOrEqual(0);
    expect(valve.opening).toBeLessThanOrEqual(1);
  }
  state.hoses.forEach((hose, at) => {
    const water = hose.from.waterGal + hose.to.waterGal;
    expect(water).toBeGreaterThanOrEqual(0);
    expect(water).toBeLessThanOrEqual(scene.hoses[at]!.capacityGal + 1e-3);
    expect(hose.airPsi).toBeGreaterThanOrEqual(0);
    expect(hose.airPsi).toBeLessThan(1200);
  });
  state.tanks.forEach((tank, at) => {
    expect(tank.gal).toBeGreaterThanOrEqual(0);
    expect(tank.gal).toBeLessThanOrEqual(scene.tanks[at]!.capacityGal);
  });
}

/** Water in all hose and tanks [gal]. */
function heldGal(state: DrillState): number {
  const hose = state.hoses.reduce((sum, { from, to }) => sum + from.waterGal + to.waterGal, 0);
  return hose + state.tanks.reduce((sum, { gal }) => sum + gal, 0);
}

/** Every gallon since a state is in hose or tanks, went through nozzles, or is on the ground. */
function isBooked(state: DrillState, since: DrillState): void {
  const { sourceGal, nozzleGal, wasteGal } = state.water;
  const gained = heldGal(state) - heldGal(since);
  const through = Math.abs(sourceGal) + Math.max(0, -gained) + 1;
  expect(Math.abs(sourceGal - gained - nozzleGal - wasteGal)).toBeLessThan(0.001 * through);
}

describe('whatever is done in a drill', () => {
  it('it never throws, every number stays sound, every gallon is booked', () => {
    let acted = 0;
    let solved = 0;
    let unsolved = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...scenes).chain((scene) =>
          fc.record({
            scene: fc.constant(scene),
            acts: fc.array(fc.tuple(anyAction(scene), fc.integer({ min: 1, max: 60 })), {
              minLength: 5,
              maxLength: 25,
            }),
          }),
        ),
        ({ scene, acts }) => {
          const drill = createDrill(scene, 1);
          const before = structuredClone(drill.state);
          for (const [submitted, ticks] of acts) {
            for (let n = 0; n < ticks; n++) {
              const entries = step(drill, n === 0 ? [submitted] : []);
              solved++;
              for (const entry of entries) {
                if (entry.kind === 'action') acted++;
                if (entry.kind === 'event' && entry.event.kind === 'not solved') unsolved++;
              }
            }
            isSound(drill.state, scene);
          }
          isBooked(drill.state, before);
        },
      ),
      { numRuns: 120, seed: 20 },
    );
    // The test did its work: actions were taken, and next to nothing went unsolved.
    expect(acted).toBeGreaterThan(700);
    expect(unsolved).toBeLessThan(solved / 1000);
  });

  it('while the computer plays every role, it stays so, and goes on alike from any state written down', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...scenes).chain((scene) =>
          fc.record({
            scene: fc.constant(scene),
            acts: fc.array(fc.tuple(anyAction(scene), fc.integer({ min: 20, max: 200 })), {
              minLength: 3,
              maxLength: 10,
            }),
            breakAt: fc.integer({ min: 1, max: 600 }),
          }),
        ),
        ({ scene, acts, breakAt }) => {
          const run = (broken: boolean) => {
            let drill = createDrill(scene, 9);
            for (const [submitted, ticks] of acts) {
              for (let n = 0; n < ticks; n++) {
                if (broken && drill.state.tick === breakAt)
                  drill = restoreDrill(scene, JSON.parse(JSON.stringify(drill.state)));
                const played = playedRoles.flatMap((role) => playedBy(role, scene, drill.state));
                step(drill, n === 0 ? [...played, submitted] : played);
              }
              isSound(drill.state, scene);
            }
            return drill;
          };
          const drill = run(false);
          expect(JSON.stringify(run(true).state)).toBe(JSON.stringify(drill.state));
          isBooked(drill.state, createDrill(scene, 9).state);
        },
      ),
      { numRuns: 60, seed: 23 },
    );
  });

  it('what is refused changes nothing but the log', () => {
    fc.assert(
      fc.property(
        fc
          .constantFrom(...scenes)
          .chain((scene) =>
            fc.tuple(
              fc.constant(scene),
              fc.array(anyAction(scene), { minLength: 10, maxLength: 40 }),
            ),
          ),
        ([scene, acts]) => {
          const drill = createDrill(scene, 1);
          step(drill, [{ role: 'instructor', action: { do: 'pause' } }]);
          for (const one of acts) {
            const { seq, ...was } = structuredClone(drill.state);
            const [entry] = step(drill, [one]);
            if (entry?.kind !== 'refused') continue;
            expect(entry.problem.message).toMatch(/\S/);
            const { seq: now, ...is } = drill.state;
            expect(JSON.stringify(is)).toBe(JSON.stringify(was));
            expect(now).toBe(seq + 1);
          }
        },
      ),
      { numRuns: 60, seed: 21 },
    );
  });

  it('anything at all can be read, or is refused with field and message', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        const read = readAction(value);
        if ('problem' in read) expect(read.problem.message.length).toBeGreaterThan(5);
        else expect(readAction(read.action)).toEqual(read);
      }),
      { numRuns: 2000, seed: 22 },
    );
  });
});
