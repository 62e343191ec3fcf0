/** Actions drawn at random for a scene. */
import {
  type DrillAction,
  type DrillScene,
  playedRoles,
  postOf,
  type Role,
  radioPresets,
  roles,
  type Submitted,
} from '@plugside/drill';
import fc from 'fast-check';

/** Any action that `readAction` lets through, on names of the scene and some that are not there. */
export function anyAction(scene: DrillScene): fc.Arbitrary<Submitted> {
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
    one(scene.plan.hydrants.map(({ id }) => id)).map((hydrant) => ({
      kind: 'hydrant weak' as const,
      hydrant,
      share: 0.1,
    })),
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
