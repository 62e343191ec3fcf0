import type { DrillAction, Submitted } from './action.ts';
import { withPsiAsked } from './asked-pressure.ts';
import type { DrillStep } from './drill-step.ts';
import { areEqualPorts } from './equal-ports.ts';
import { asCoupled } from './guided-step.ts';
import { liftsMost } from './intake-judged.ts';
import { livePort, pours } from './live-ports.ts';
import { easedTo, openLines, playsLoss, shedStands, waitsForMore } from './played-loss.ts';
import { goesByPlan, nextByPlan, plannedPsi } from './played-relay.ts';
import type { PlayedRole } from './role.ts';
import type { DrillScene } from './scene.ts';
import { postOf } from './scene-posts.ts';
import { type DrillState, TICKS_PER_S } from './state.ts';
import { nextStep } from './steps-standing.ts';

/** How the computer plays; `by the steps` does the evolution's steps and keeps its pump out of trouble. */
export type Policy = 'by the steps';

/** It looks and acts this often [ticks]. */
const LOOKS_TICKS = TICKS_PER_S;
/** It eases a pump by this [psi], and one that starves outright down to this [psi]. Ours. */
const EASE_PSI = 10;
const STARVES_UNDER_PSI = 10;
const EASES_TO_PSI = 50;
/** It raises an eased pump by this while the intake stands over this [psi]. Ours. */
const RAISE_PSI = 5;
const RAISES_OVER_PSI = 25;
/** Once its intake has been under the benchmark it waits so long [s], so that it does not go up and down with it. Ours. */
const HOLDS_OFF_S = 60;

/**
 * What the computer does in a role now. Its rules, in order, once a second of the drill:
 *
 * 1. What feeds a burst hose at hand is shut, and it is said. A crew without water says so.
 * 2. Asked for more, a pump between source and scene is raised as far as its hose and its intake bear it,
 *    and what it holds is said; else, that there is no more.
 * 3. A pump whose supply has gone (under 5 psi, hose burst or dry): tank to pump, the intake of that hose
 *    shut, and it is said. The tank is shut again once the intake stands over 25 psi. A pump that has run
 *    dry for 10 s is taken out of gear, and put in again once it has water.
 * 4. A hose-fed intake under the benchmark, 20 psi: more is asked for where another pump could give it;
 *    the pump is eased by 10 psi down to 80 % of the plan's pressure; then the last line is taken off, and
 *    it is said. With one line, under 10 psi or cavitating, it is eased down to 50 psi.
 * 5. An extra line that was called is charged, and opened once it is full.
 * 6. A pump that stands lower than the last done step, or else the start, set it is raised again by 5 psi
 *    while its intake stands over 25 psi, and has not been under the benchmark for a minute. A relay operator's in a drill without a script: lower than the plan has it.
 * 7. The first step of its role that does not stand, and that rests on none that does not, is done: each
 *    action of the step that does not stand already, in order, one a second. A relay operator in a drill without a
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
  if (postOf(scene, role).length === 0) return [];
  const loss = playsLoss(role, scene, state);
  if (loss.length > 0) return loss.map((action) => ({ role, action, byComputer: true }));
  const action =
    ease(role, scene, state) ??
    raise(role, scene, state) ??
    (goesByPlan(role, scene)
      ? nextByPlan(role, scene, state)
      : nextOf(nextStep(role, scene, state), role, scene, state));
  return action ? [{ role, action, byComputer: true }] : [];
}

function nextOf(
  step: DrillStep | undefined,
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction | undefined {
  if (!step) return undefined;
  const { how } = asCoupled(step, scene, state);
  // What has to be said of a step is said once that is done, whatever was said before.
  const isDue = step.done.is === 'said' && step.done.since !== undefined;
  const action = how.find((one) => (isDue && one.do === 'radio') || !stands(one, role, state));
  if (!action || isHeldBack(action, role, scene, state)) return undefined;
  return asRead(action, role, scene, state);
}

/** Whether a step waits for water: a line that was taken off, a tank that is all there is. */
function isHeldBack(
  action: DrillAction,
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): boolean {
  if (action.do === 'set governor')
    return (
      starvedLately(scene, state, action.rig) &&
      state.pumps.some(
        ({ rigId, targetPdpPsi }) => rigId === action.rig && targetPdpPsi < action.pdpPsi,
      )
    );
  // Nobody couples what water comes out of: it runs until it is shut.
  if (action.do === 'couple')
    return (
      livePort(scene, state, action.port) !== undefined ||
      state.hoses.some((hose) => hose.id === action.hose && pours(hose))
    );
  if (action.do !== 'set valve') return false;
  const valve = scene.valves.find(({ id }) => id === action.valve);
  const pump = state.pumps.find(({ rigId }) => rigId === valve?.pieceId);
  if (!valve || !pump) return false;
  if (valve.kind === 'discharge') return action.opening > 0 && shedStands(state, role, pump);
  return (
    valve.kind === 'tank to pump' &&
    action.opening === 0 &&
    pump.inGear &&
    pump.flowGpm > 1 &&
    liftsMost(scene, state, pump)
  );
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
      return state.hoses.some(
        ({ id, from, to }) =>
          id === action.hose &&
          [from.port, to.port].some((port) => port !== null && areEqualPorts(port, action.port)),
      );
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
    const starves = pump.condition === 'cavitating' || pump.intakePsi < STARVES_UNDER_PSI;
    const isLow = pump.intakePsi < scene.benchmarks.intakePsi;
    if (pump.flowGpm < 10) continue;
    if (pump.condition !== 'cavitating' && (!isLow || liftsMost(scene, state, pump))) continue;
    if (!starves && waitsForMore(state, role)) continue;
    const hasOne = openLines(scene, state, pump.rigId).length < 2;
    const floorPsi = starves && hasOne ? EASES_TO_PSI : easedTo(scene, role, pump);
    if (pump.targetPdpPsi <= floorPsi) continue;
    const pdpPsi = Math.max(floorPsi, pump.targetPdpPsi - EASE_PSI);
    return { do: 'set governor', rig: pump.rigId, pdpPsi };
  }
  return undefined;
}

/** What a pump should stand at: what the last done step set it to, else what the start did [psi]. */
function wantedPsi(rig: string, scene: DrillScene, state: DrillState): number | undefined {
  const pump = scene.pumps.find((one) => one.rigId === rig);
  let wanted = pump?.inGear && pump.setting.mode === 'governed' ? pump.setting.pdpPsi : undefined;
  for (const { step } of state.tally.stepTicks) {
    const done = scene.steps.find((one) => one.id === step);
    for (const planned of done?.how ?? []) {
      const action = withPsiAsked(done!, planned, scene, state);
      if (action.do === 'set governor' && action.rig === rig) wanted = action.pdpPsi;
    }
  }
  return wanted;
}

/**
 * Whether the intake of a pump between source and scene stood under the benchmark a short while ago: what was
 * eased for it stays eased so long.
 */
function starvedLately({ plan }: DrillScene, { tally, tick }: DrillState, rig: string): boolean {
  if (rig === plan.scene) return false;
  const last = tally.lines['intake under'].moments.findLast(({ piece }) => piece === rig);
  return last !== undefined && tick - (last.toTick ?? tick) < HOLDS_OFF_S * TICKS_PER_S;
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
    if (starvedLately(scene, state, pump.rigId)) continue;
    const pdpPsi = Math.min(wanted, pump.targetPdpPsi + RAISE_PSI);
    return { do: 'set governor', rig: pump.rigId, pdpPsi };
  }
  return undefined;
}
