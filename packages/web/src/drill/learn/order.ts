/** What a guide knows of a script: the step at hand, and what was done too early. */

import type { PlayedRole } from '@plugside/drill';
import {
  areEqualPorts,
  type DrillAction,
  type DrillScene,
  type DrillStep,
  forerunnersOf,
} from '@plugside/drill';

/** Done too early: the step that an action belongs to, and the first one that should come before. */
export interface TooEarly {
  did: DrillStep;
  before: DrillStep;
}

/**
 * The step to do now among the roles that a person plays, in the script's order; undefined where the
 * person has to wait, or all is done.
 */
export function stepNow(
  scene: DrillScene,
  done: ReadonlySet<string>,
  roles: readonly PlayedRole[],
): DrillStep | undefined {
  return scene.steps.find(
    (step) =>
      roles.includes(step.role) &&
      !done.has(step.id) &&
      forerunnersOf(scene, step).every((id) => done.has(id)),
  );
}

/** The first step that is not done, whoever has it: what everyone waits for. */
export function firstOpen(scene: DrillScene, done: ReadonlySet<string>): DrillStep | undefined {
  return scene.steps.find((step) => !done.has(step.id));
}

/** Whether an action does what a step asks for, in kind: the same piece moved the same way. */
function belongsTo(action: DrillAction, step: DrillStep): boolean {
  return step.how.some((how) => {
    switch (action.do) {
      case 'couple':
        return how.do === 'couple' && how.hose === action.hose && how.port === action.port;
      case 'set valve':
        return (
          how.do === 'set valve' &&
          how.valve === action.valve &&
          how.opening > 0.05 === action.opening > 0.05
        );
      case 'pump in gear':
        return how.do === 'pump in gear' && how.rig === action.rig && how.inGear === action.inGear;
      case 'radio':
        return (
          how.do === 'radio' &&
          'preset' in how.message &&
          'preset' in action.message &&
          how.message.preset === action.message.preset
        );
      default:
        return false;
    }
  });
}

/**
 * Whether an action comes before its turn.
 * @param role who does it
 * @param done ids of the steps done so far
 */
export function tooEarly(
  scene: DrillScene,
  done: ReadonlySet<string>,
  role: PlayedRole,
  action: DrillAction,
): TooEarly | undefined {
  const did = scene.steps.find(
    (step) => step.role === role && !done.has(step.id) && belongsTo(action, step),
  );
  if (!did) return undefined;
  const missing = openBefore(scene, done, did);
  return missing && { did, before: missing };
}

/** The first step, in the script's order, that a step rests on and that is not done. */
function openBefore(
  scene: DrillScene,
  done: ReadonlySet<string>,
  step: DrillStep,
): DrillStep | undefined {
  const needed = new Set<string>();
  const open = [...forerunnersOf(scene, step)];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (needed.has(id)) continue;
    needed.add(id);
    const one = scene.steps.find((candidate) => candidate.id === id);
    if (one) open.push(...forerunnersOf(scene, one));
  }
  return scene.steps.find(({ id }) => needed.has(id) && !done.has(id));
}

/** A hose end that an action puts on another port than the plan has it on: where it should go. */
export interface WrongPort {
  hose: string;
  end: 'from' | 'to';
  planned: string;
}

/** Whether an action couples a hose end where it does not belong. */
export function wrongPort(scene: DrillScene, action: DrillAction): WrongPort | undefined {
  if (action.do !== 'couple') return undefined;
  const { hose, end } = action;
  const planned = scene.hoses.find(({ id }) => id === hose)?.[end].plannedPort;
  const other = scene.hoses.find(({ id }) => id === hose)?.[end === 'from' ? 'to' : 'from'];
  if (planned === undefined || areEqualPorts(planned, action.port)) return undefined;
  // Both ends of a hose are alike.
  if (other && areEqualPorts(other.plannedPort, action.port)) return undefined;
  return { hose, end, planned };
}
