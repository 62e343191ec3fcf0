import { splitPortRef } from '@plugside/fireground';
import type { DrillAction } from './action.ts';
import { type PlayedRole, relayRoles } from './role.ts';
import type { DrillScene } from './scene.ts';
import { postOf } from './scene-posts.ts';
import type { DrillState } from './state.ts';

/** Water that stands in a hose under less than this is no supply yet [psi]; ours. */
const SUPPLIED_PSI = 5;
/** Seconds for a bleeder, an intake and a discharge into an empty hose; as in the relay evolution. Ours. */
const BLEEDER_S = 1;
const INTAKE_S = 6;
const DISCHARGE_S = 12;

/** Whether the computer goes by what the plan says: a relay operator in a drill without a script. */
export function goesByPlan(role: PlayedRole, scene: DrillScene): boolean {
  return (relayRoles as readonly PlayedRole[]).includes(role) && scene.steps.length === 0;
}

/**
 * What an engine between source and scene should be set to by the plan [psi]; undefined where the plan
 * has it idle, or by its throttle.
 */
export function plannedPsi({ plan }: DrillScene, rig: string): number | undefined {
  const setting = plan.rigs.find(({ id }) => id === rig)?.setting;
  return setting?.mode === 'governed' ? setting.pdpPsi : undefined;
}

/**
 * What the computer does next as a relay operator without a script, engine by engine, in this order:
 * couples what lies loose beside it where the plan has it; opens the bleeder in front of an intake that
 * is still shut until its hose is full and under pressure, shuts it and opens the intake; says that water
 * is coming and opens its discharges; goes in gear once the hose beyond is full, where the plan has it
 * pump. The pressure is raised by the rule for every pump of the computer.
 */
export function nextByPlan(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction | undefined {
  for (const rig of postOf(scene, role)) {
    const action =
      couplesLoose(rig, scene, state) ??
      takesWater(rig, state) ??
      passesOn(rig, role, scene, state);
    if (action) return action;
  }
  return undefined;
}

const isOf = (rig: string, port: string | null, kind: 'intake' | 'discharge'): port is string =>
  port?.startsWith(`${rig}.${kind}`) === true;

const valveOf = (state: DrillState, id: string) => state.valves.find((one) => one.id === id);

function couplesLoose(rig: string, scene: DrillScene, state: DrillState): DrillAction | undefined {
  const taken = new Set(state.hoses.flatMap(({ from, to }) => [from.port, to.port]));
  for (const { id, from, to } of scene.hoses) {
    const now = state.hoses.find((one) => one.id === id)!;
    for (const [end, { plannedPort: port }] of [
      ['from', from],
      ['to', to],
    ] as const) {
      if (now[end].port !== null || now[end].at !== rig || taken.has(port)) continue;
      if (splitPortRef(port).pieceId === rig) return { do: 'couple', hose: id, end, port };
    }
  }
  return undefined;
}

function takesWater(rig: string, state: DrillState): DrillAction | undefined {
  for (const { to, phase } of state.hoses) {
    if (!isOf(rig, to.port, 'intake')) continue;
    const intake = valveOf(state, to.port);
    const bleeder = valveOf(state, `${to.port}.bleeder`);
    if (!intake || intake.target > 0) continue;
    const isSupplied = phase === 'full' && to.psi > SUPPLIED_PSI;
    if (bleeder && bleeder.target > 0 === isSupplied) {
      const opening = isSupplied ? 0 : 1;
      return { do: 'set valve', valve: bleeder.id, opening, overS: BLEEDER_S };
    }
    if (isSupplied) return { do: 'set valve', valve: intake.id, opening: 1, overS: INTAKE_S };
  }
  return undefined;
}

function passesOn(
  rig: string,
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction | undefined {
  const isFed = state.hoses.some(
    ({ to }) => isOf(rig, to.port, 'intake') && (valveOf(state, to.port)?.opening ?? 0) > 0.99,
  );
  if (!isFed) return undefined;
  const beyond = state.hoses.filter(({ from }) => isOf(rig, from.port, 'discharge'));
  const shut = beyond.find(({ from }) => valveOf(state, from.port!)?.target === 0);
  if (shut) {
    const told = state.said.some((one) => one.role === role && one.preset === 'water coming');
    if (!told) return { do: 'radio', message: { preset: 'water coming' } };
    return { do: 'set valve', valve: shut.from.port!, opening: 1, overS: DISCHARGE_S };
  }
  const pump = state.pumps.find((one) => one.rigId === rig);
  const isThrough = beyond.length > 0 && beyond.every(({ phase }) => phase === 'full');
  if (!pump || pump.inGear || !pump.primed || !isThrough || plannedPsi(scene, rig) === undefined)
    return undefined;
  return { do: 'pump in gear', rig, inGear: true };
}
