/** Drills that have run, for reports of them. */
import {
  createDrill,
  type DrillAction,
  type DrillScene,
  evolutionOf,
  playedBy,
  playedRoles,
  type Role,
  type Submitted,
  step,
  TICKS_PER_S,
} from '@plugside/drill';
import type { DrillReportRequest } from '@plugside/paper';

export interface Scripted {
  atS: number;
  role: Role;
  action: DrillAction;
}

/** A scene played by the computer, with what else is done at a time [s]. */
export function played(
  scene: DrillScene,
  { seed, lastS, script = [] }: { seed: number; lastS: number; script?: readonly Scripted[] },
): DrillReportRequest {
  const drill = createDrill(scene, seed);
  const waiting = [...script].sort((a, b) => a.atS - b.atS);
  while (drill.state.tick < lastS * TICKS_PER_S) {
    const now: Submitted[] = playedRoles.flatMap((role) => playedBy(role, scene, drill.state));
    while (waiting[0] && waiting[0].atS * TICKS_PER_S <= drill.state.tick) {
      const { role, action } = waiting.shift()!;
      now.push({ role, action });
    }
    step(drill, now);
  }
  return {
    title: scene.title,
    crew: 'B shift, Engine 7',
    startedAt: '2026-11-25T14:05:30.000Z',
    scene,
    seed,
    log: drill.log,
    tick: drill.state.tick,
  };
}

const evolution = () => evolutionOf('boost through valve')!.scene();

/** Three minutes of a boost, with a kinked supply line and an engine that dies. */
export function shortRun(): DrillReportRequest {
  const scene = evolution();
  return played(scene, {
    seed: 7,
    lastS: 180,
    script: [
      { atS: 70, role: 'instructor', action: { do: 'say', text: 'Watch the intake at 20 psi.' } },
      {
        atS: 80,
        role: 'instructor',
        action: {
          do: 'arm fault',
          fault: { id: 'kink', kind: 'hose kinked', hose: 'lay', factor: 60 },
        },
      },
      { atS: 110, role: 'instructor', action: { do: 'lift fault', fault: 'kink' } },
      {
        atS: 130,
        role: 'instructor',
        action: { do: 'arm fault', fault: { id: 'dies', kind: 'pump dies', rig: 'B1' } },
      },
      {
        atS: 140,
        role: 'attack operator',
        action: { do: 'radio', message: { preset: 'intake', psi: 12 } },
      },
      {
        atS: 150,
        role: 'nozzle crew',
        action: { do: 'set governor', rig: 'A1', pdpPsi: 150 },
      },
    ],
  });
}

const LONG =
  'Rescue Engine of the Wholesale Market and River Quarter Station, the second one there is';

/** Half an hour in which everybody does and says something every few seconds, with the longest names. */
export function longRun(): DrillReportRequest {
  const scene = evolution();
  const name = <T extends object>(one: T): T => ({ ...one, name: LONG });
  const { plan } = scene;
  const named: DrillScene = {
    ...scene,
    title: `${LONG} ${LONG}`.slice(0, 120),
    benchmarks: { ...scene.benchmarks, boostWithinS: 90 },
    plan: {
      ...plan,
      hydrants: plan.hydrants.map(name),
      rigs: plan.rigs.map(name),
      nozzles: plan.nozzles.map(name),
      appliances: plan.appliances.map(name),
    },
    pumps: scene.pumps.map((one) => ({ ...one, label: LONG })),
    hoses: scene.hoses.map((one) => ({ ...one, label: `${LONG} to ${LONG}` })),
  };
  const bale = scene.valves.find(({ kind }) => kind === 'nozzle bale')!.id;
  const script: Scripted[] = [];
  for (let atS = 100; atS < 1790; atS += 5) {
    const turn = Math.round(atS / 5);
    const opening = (turn % 3) / 2;
    script.push({ atS, role: 'nozzle crew', action: { do: 'set valve', valve: bale, opening } });
    const pdpPsi = 100 + ((turn * 37) % 120);
    if (turn % 2 === 0) {
      script.push({
        atS: atS + 1,
        role: 'attack operator',
        action: { do: 'set governor', rig: 'A1', pdpPsi },
      });
    }
    if (turn % 3 === 0) {
      const text = `Word ${turn}: ${LONG.repeat(3)}`.slice(0, 200);
      script.push({
        atS: atS + 2,
        role: 'hydrant operator',
        action: { do: 'radio', message: { text } },
      });
    }
    if (turn % 40 === 0) {
      script.push({
        atS: atS + 3,
        role: 'instructor',
        action: {
          do: 'arm fault',
          fault: { id: `weak-${turn}`, kind: 'hydrant weak', hydrant: 'H1', share: 0.3 },
        },
      });
      script.push({
        atS: atS + 40,
        role: 'instructor',
        action: { do: 'lift fault', fault: `weak-${turn}` },
      });
    }
  }
  return {
    ...played(named, { seed: 4_294_967_295, lastS: 1800, script }),
    crew: `B shift of ${LONG}, with ${LONG}`.slice(0, 120),
  };
}
