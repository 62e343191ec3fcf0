import type { DrillAction, Submitted } from './action.ts';
import type { DrillStep } from './drill-step.ts';
import { goesByPlan, nextByPlan, plannedPsi } from './played-relay.ts';
import type { PlayedRole } from './role.ts';
import type { DrillScene } from './scene.ts';
import { postOf } from './scene-posts.ts';
import { type DrillState, TICKS_PER_S } from './state.ts';

/** How the computer plays; `by the steps` does the evolution's steps and keeps its pump out of trouble. */
export type Policy = 'by the steps';

/** It looks and acts this often [ticks]. */
const LOOKS_TICKS = TICKS_PER_S;
/** It eases a pump by this [psi] while the intake stands under this [psi], down to this [psi]. Ours. */
const EASE_PSI = 10;
const EASES_UNDER_PSI = 10;
const EASES_TO_PSI = 50;
/** It raises an eased pump by this while the intake stands over this [psi]. Ours. */
const RAISE_PSI = 5;
const RAISES_OVER_PSI = 25;

/**
 * What the computer does in a role now. Its rules, in order, once a second of the drill:
 *
 * 1. A pump of its own that cavitates, or whose hose-fed intake stands under 10 psi while it is governed
 *    above 50 psi, is eased by 10 psi.
 * 2. A pump that stands lower than the last done step, or else the start, set it is raised again by 5 psi
 *    while its intake stands over 25 psi. A relay operator's in a drill without a script: lower than the plan has it.
 * 3. The first step of its role that is not yet done, and whose forerunners all are, is done: each action
 *    of the step that does not stand already, in order, one a second. A relay operator in a drill without a
 *    script couples, takes the water in, passes it on and goes in gear as the plan has it (`nextByPlan`).
 *
 * A message that tells a gauge tells what it reads then. It keeps no memory: the same state gives the same actions, so a room may ask it on any machine.
 */
export function playedBy(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
  _policy: Policy = 'by the steps',
): Submitted[] {
  if (state.paused || state.tick % LOOKS_TICKS !== 0) return [];
  const eased = ease(role, scene, state);
  const action =
    eased ??
    raise(role, scene, state) ??
    (goesByPlan(role, scene)
      ? nextByPlan(role, scene, state)
      : nextOf(nextStep(role, scene, state), role, scene, state));
  return action ? [{ role, action, byComputer: true }] : [];
}

/** The step that a role should do now: what a guide shows. Undefined where it has to wait, or is done. */
export function nextStep(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillStep | undefined {
  const done = (id: string) => state.tally.stepTicks.some((one) => one.step === id);
  return scene.steps.find(
    (step) => step.role === role && !done(step.id) && forerunnersOf(scene, step).every(done),
  );
}

/** The steps that must come before one: those it names, else the one before it in the list. */
export function forerunnersOf(scene: DrillScene, step: DrillStep): string[] {
  if (step.after) return step.after;
  const at = scene.steps.indexOf(step);
  return at > 0 ? [scene.steps[at - 1]!.id] : [];
}

function nextOf(
  step: DrillStep | undefined,
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction | undefined {
  const action = step?.how.find((one) => !stands(one, role, state));
  return action && asRead(action, role, scene, state);
}

/** A message that tells a gauge tells what it reads now. */
function asRead(
  action: DrillAction,
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction {
  if (action.do !== 'radio' || !('preset' in action.message)) return action;
  const { preset } = action.message;
  const pump = state.pumps.find(({ rigId }) => postOf(scene, role).includes(rigId));
  if (!pump || (preset !== 'intake' && preset !== 'pressure set')) return action;
  const gauge = preset === 'intake' ? pump.intakeGaugePsi : pump.dischargeGaugePsi;
  return { do: 'radio', message: { preset, psi: Math.min(500, Math.max(0, Math.round(gauge))) } };
}

/** Whether an action would change nothing. */
function stands(action: DrillAction, role: PlayedRole, state: DrillState): boolean {
  switch (action.do) {
    case 'couple':
      return state.hoses.some((hose) => hose.id === action.hose && hose[action.end].port !== null);
    case 'uncouple':
      return state.hoses.some((hose) => hose.id === action.hose && hose[action.end].port === null);
    case 'set valve':
      return state.valves.some(
        (valve) => valve.id === action.valve && valve.target === action.opening,
      );
    case 'pump in gear':
      return state.pumps.some((pump) => pump.rigId === action.rig && pump.inGear === action.inGear);
    case 'set governor':
      return state.pumps.some(
        (pump) =>
          pump.rigId === action.rig &&
          pump.mode === 'governed' &&
          Math.abs(pump.targetPdpPsi - action.pdpPsi) < 1,
      );
    case 'radio': {
      const { message } = action;
      return (
        'preset' in message &&
        state.said.some((one) => one.role === role && one.preset === message.preset)
      );
    }
    default:
      return false;
  }
}

function ease(role: PlayedRole, scene: DrillScene, state: DrillState): DrillAction | undefined {
  for (const pump of state.pumps) {
    if (!postOf(scene, role).includes(pump.rigId) || !pump.inGear || pump.mode !== 'governed')
      continue;
    const onTank = pump.tankGpm > 1;
    const short = pump.condition === 'cavitating' || (!onTank && pump.intakePsi < EASES_UNDER_PSI);
    if (!short || pump.flowGpm < 10 || pump.targetPdpPsi <= EASES_TO_PSI) continue;
    return {
      do: 'set governor',
      rig: pump.rigId,
      pdpPsi: Math.max(EASES_TO_PSI, pump.targetPdpPsi - EASE_PSI),
    };
  }
  return undefined;
}

/** What a pump should stand at: what the last done step set it to, else what the start did [psi]. */
function wantedPsi(rig: string, scene: DrillScene, state: DrillState): number | undefined {
  const pump = scene.pumps.find((one) => one.rigId === rig);
  let wanted = pump?.inGear && pump.setting.mode === 'governed' ? pump.setting.pdpPsi : undefined;
  for (const { step } of state.tally.stepTicks) {
    const how = scene.steps.find((one) => one.id === step)?.how ?? [];
    for (const action of how)
      if (action.do === 'set governor' && action.rig === rig) wanted = action.pdpPsi;
  }
  return wanted;
}

function raise(role: PlayedRole, scene: DrillScene, state: DrillState): DrillAction | undefined {
  for (const pump of state.pumps) {
    if (!postOf(scene, role).includes(pump.rigId) || !pump.inGear || pump.mode !== 'governed')
      continue;
    const wanted = goesByPlan(role, scene)
      ? plannedPsi(scene, pump.rigId)
      : wantedPsi(pump.rigId, scene, state);
    if (wanted === undefined || pump.targetPdpPsi >= wanted) continue;
    if (pump.intakePsi <= RAISES_OVER_PSI || pump.condition === 'cavitating') continue;
    const pdpPsi = Math.min(wanted, pump.targetPdpPsi + RAISE_PSI);
    return { do: 'set governor', rig: pump.rigId, pdpPsi };
  }
  return undefined;
}

/** Whether every step of a scene has been done. */
export function allStepsDone(scene: DrillScene, state: DrillState): boolean {
  return scene.steps.every((step) => state.tally.stepTicks.some((one) => one.step === step.id));
}
