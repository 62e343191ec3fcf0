/** The pressure that the scene asks for on the radio, where a step follows it. */
import type { DrillAction } from './action.ts';
import type { AskedFor, Condition, DrillStep } from './drill-step.ts';
import type { RadioEntry } from './radio.ts';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import { postOf } from './scene-posts.ts';
import type { DrillState } from './state.ts';

/** A raise on request stays this far under the limit of its hose [psi]. Ours. */
const UNDER_LIMIT_PSI = 5;
/** A governor takes no more [psi]. */
const MOST_GOVERNED_PSI = 400;

/** What the hose on a pump's discharges bears, and a little less [psi]. */
export function mostPsi(scene: DrillScene, state: DrillState, rigId: string): number {
  const limits = scene.hoses
    .filter((_, at) => state.hoses[at]!.from.port?.startsWith(`${rigId}.discharge`))
    .map(({ limitPsi }) => limitPsi);
  return Math.min(MOST_GOVERNED_PSI, ...limits) - UNDER_LIMIT_PSI;
}

/** The last order for a pressure that somebody else than a pump's own operator gave. */
export function lastAsked(
  scene: DrillScene,
  { radio }: DrillState,
  rig: string,
): (RadioEntry & { psi: number }) | undefined {
  const last = radio.findLast(
    ({ from, preset, psi }) =>
      preset === 'pressure wanted' &&
      psi !== undefined &&
      (from === 'instructor' || from === 'observer' || !postOf(scene, from).includes(rig)),
  );
  return last?.psi === undefined ? undefined : { ...last, psi: last.psi };
}

/** What a step's pressure comes to [psi]: as it was asked for, no more than the hose bears, else as planned. */
function asAsked(
  plannedPsi: number,
  rig: string,
  asked: AskedFor | undefined,
  scene: DrillScene,
  state: DrillState,
): number {
  const last =
    asked === undefined || !hasRules(scene, 3) ? undefined : lastAsked(scene, state, rig);
  if (!last) return plannedPsi;
  const psi = Math.min(last.psi, mostPsi(scene, state, rig));
  return asked === 'up to' ? Math.min(plannedPsi, psi) : psi;
}

type Pressure = Extract<Condition, { is: 'discharge at least' | 'governor set' }>;

/** The pressure of a condition as it is to be now [psi]; a discharge may stand 1 psi under what was asked. */
export function psiWanted(condition: Pressure, scene: DrillScene, state: DrillState): number {
  const { psi, rig, asked } = condition;
  const spare = condition.is === 'discharge at least' && asked === 'in full' ? 1 : 0;
  return asAsked(psi + spare, rig, asked, scene, state) - spare;
}

/** A step's action with the pressure that it is to set now. */
export function withPsiAsked(
  step: DrillStep,
  action: DrillAction,
  scene: DrillScene,
  state: DrillState,
): DrillAction {
  if (action.do !== 'set governor') return action;
  const atoms = step.done.is === 'all' ? step.done.of : [step.done];
  const follows = atoms.flatMap((atom) =>
    (atom.is === 'discharge at least' || atom.is === 'governor set') && atom.rig === action.rig
      ? [atom.asked]
      : [],
  )[0];
  const pdpPsi = asAsked(action.pdpPsi, action.rig, follows, scene, state);
  return pdpPsi === action.pdpPsi ? action : { ...action, pdpPsi };
}
