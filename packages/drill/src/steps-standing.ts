/** Which steps of a script are done, and still stand. */
import { splitPortRef } from '@plugside/fireground';
import type { DrillAction } from './action.ts';
import type { Condition, DrillStep } from './drill-step.ts';
import { valveStandingFor } from './equal-ports.ts';
import { isPastFlushing } from './flushed.ts';
import { holds } from './holds.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';

/** A valve that a step opened counts as open down to this share of it, one that it shut as shut up to this opening; ours. */
const OPEN_SHARE = 0.5;
const SHUT_UP_TO = 0.1;

/** The steps that must come before one: those it names, else the one before it in the list. */
export function forerunnersOf(scene: DrillScene, step: DrillStep): string[] {
  if (step.after) return step.after;
  const at = scene.steps.indexOf(step);
  return at > 0 ? [scene.steps[at - 1]!.id] : [];
}

/** Whether a step's condition has held. */
export function wasDone(state: DrillState, step: DrillStep): boolean {
  return state.tally.stepTicks.some((one) => one.step === step.id);
}

/**
 * Whether a step is done and still stands: hose that it coupled is on, hose that it filled is full, valves
 * stand as it left them, its pump is in gear, but where a later step that stands has changed that since.
 * What was said, pressures that were reached, water that a tank or a nozzle had are done for good.
 */
export function stepStands(scene: DrillScene, state: DrillState, step: DrillStep): boolean {
  return standingIn(scene, state)(step);
}

/** The steps that are done and stand, by id. */
export function stepsStanding(scene: DrillScene, state: DrillState): Set<string> {
  return new Set(scene.steps.filter(standingIn(scene, state)).map(({ id }) => id));
}

/** `stepStands` for one state, each step looked at once. */
function standingIn(scene: DrillScene, state: DrillState): (step: DrillStep) => boolean {
  const known = new Map<string, boolean>();
  const stands = (step: DrillStep): boolean => {
    const before = known.get(step.id);
    if (before !== undefined) return before;
    // Asked about while it is being looked at, it stands where it was done.
    const done = wasDone(state, step);
    known.set(step.id, done);
    const still =
      done &&
      atomsOf(step.done).every(
        (atom) => stillHolds(atom, scene, state) || isOvertaken(atom, scene, state, step, stands),
      );
    known.set(step.id, still);
    return still;
  };
  return stands;
}

/**
 * The step that a role should do now: what a guide shows. The first that does not stand, all that it rests
 * on standing; one that was undone comes again. Undefined where it has to wait, or is done.
 */
export function nextStep(
  role: DrillStep['role'],
  scene: DrillScene,
  state: DrillState,
): DrillStep | undefined {
  if (!scene.steps.some((step) => step.role === role) || state.tally.shutDown) return undefined;
  const standing = stepsStanding(scene, state);
  const rests = new Map<string, boolean>();
  const byId = new Map(scene.steps.map((step) => [step.id, step]));
  const restsOnAll = (step: DrillStep): boolean => {
    const known = rests.get(step.id);
    if (known !== undefined) return known;
    rests.set(step.id, false);
    const all = forerunnersOf(scene, step).every((id) => {
      const before = byId.get(id);
      if (before === undefined || isTooLate(before, scene, state)) return true;
      return standing.has(id) && restsOnAll(before);
    });
    rests.set(step.id, all);
    return all;
  };
  return scene.steps.find(
    (step) =>
      step.role === role &&
      !standing.has(step.id) &&
      !isTooLate(step, scene, state) &&
      restsOnAll(step) &&
      !step.how.some((action) => opensOntoBurst(action, scene, state) || runsDry(action, state)),
  );
}

/** Whether a step flushes a hydrant that feeds hose by now: nobody opens it for that. */
function isTooLate(step: DrillStep, scene: DrillScene, state: DrillState): boolean {
  return atomsOf(step.done).some(
    (atom) => atom.is === 'flushed' && isPastFlushing(scene, state, atom.hydrant),
  );
}

/** Whether every step of a scene has been done, and stands. */
export function allStepsDone(scene: DrillScene, state: DrillState): boolean {
  return scene.steps.every((step) => stepStands(scene, state, step));
}

type Atom = Exclude<Condition, { is: 'all' }>;

function atomsOf(condition: Condition): Atom[] {
  return condition.is === 'all' ? condition.of.flatMap(atomsOf) : [condition];
}

function stillHolds(atom: Atom, scene: DrillScene, state: DrillState): boolean {
  switch (atom.is) {
    case 'coupled':
    case 'hose full':
    case 'in gear':
      return holds(atom, scene, state);
    case 'valve at least':
      return holds({ ...atom, opening: OPEN_SHARE * atom.opening }, scene, state);
    case 'valve at most':
      return holds({ ...atom, opening: Math.max(SHUT_UP_TO, atom.opening) }, scene, state);
    default:
      return true;
  }
}

/** Whether a later step, done or being done in its turn, is meant to change what an earlier one set. */
function isOvertaken(
  atom: Atom,
  scene: DrillScene,
  state: DrillState,
  step: DrillStep,
  stands: (step: DrillStep) => boolean,
): boolean {
  const at = scene.steps.indexOf(step);
  return scene.steps.slice(at + 1).some((later) => {
    const changes = later.how.filter((action) => undoes(action, atom));
    if (changes.length === 0) return false;
    if (wasDone(state, later)) return stands(later);
    const inTurn = forerunnersOf(scene, later).every((id) => {
      const before = scene.steps.find((one) => one.id === id);
      return before === undefined || before === step || stands(before);
    });
    return inTurn && changes.some((action) => isUnderWay(action, scene, state));
  });
}

function undoes(action: DrillAction, atom: Atom): boolean {
  switch (action.do) {
    case 'set valve':
      if (atom.is === 'valve at least')
        return action.valve === atom.valve && action.opening < OPEN_SHARE * atom.opening;
      return (
        atom.is === 'valve at most' && action.valve === atom.valve && action.opening > SHUT_UP_TO
      );
    case 'pump in gear':
      return atom.is === 'in gear' && action.rig === atom.rig && action.inGear !== atom.inGear;
    case 'uncouple':
      return atom.is === 'coupled' && action.hose === atom.hose;
    default:
      return false;
  }
}

function isUnderWay(action: DrillAction, scene: DrillScene, state: DrillState): boolean {
  if (action.do !== 'set valve') return false;
  const id = valveStandingFor(scene, state, action.valve);
  return state.valves.find((valve) => valve.id === id)?.target === action.opening;
}

/** Whether an action would put a pump in gear that has lost its prime: it gets water first. */
function runsDry(action: DrillAction, state: DrillState): boolean {
  if (action.do !== 'pump in gear' || !action.inGear) return false;
  return state.pumps.some(({ rigId, primed }) => rigId === action.rig && !primed);
}

/** Whether an action would send water into a hose that is burst. */
export function opensOntoBurst(action: DrillAction, scene: DrillScene, state: DrillState): boolean {
  if (action.do !== 'set valve' || action.opening === 0) return false;
  const valve = scene.valves.find(({ id }) => id === action.valve);
  if (!valve) return false;
  const id = valveStandingFor(scene, state, valve.id);
  return state.hoses.some(({ phase, from }) => {
    if (phase !== 'burst' || from.port === null) return false;
    if (valve.kind !== 'hydrant stem') return from.port === id;
    const owner = splitPortRef(from.port).pieceId;
    const on = scene.plan.appliances.find((one) => one.id === owner);
    const source = on?.kind === 'assist-valve' ? splitPortRef(on.on).pieceId : owner;
    return source === valve.pieceId;
  });
}
