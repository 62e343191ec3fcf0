/** A step as it is to be done here and now: on the ports that hose is really on. */
import type { DrillAction } from './action.ts';
import type { DrillStep } from './drill-step.ts';
import { areEqualPorts, freeEqualPort, standsFor, valveStandingFor } from './equal-ports.ts';
import { otherEnd } from './hose-front.ts';
import type { DrillScene } from './scene.ts';
import { scenePorts } from './scene-ports.ts';
import { postOf } from './scene-posts.ts';
import type { DrillState } from './state.ts';

/**
 * A step with the ports and valves that its hose is on where that is another than the plan's but as good:
 * intake 2 instead of 1. A hose that is on a wrong port comes off it first.
 */
export function asCoupled(step: DrillStep, scene: DrillScene, state: DrillState): DrillStep {
  let what = step.what;
  const how = step.how.flatMap((action): DrillAction[] => {
    if (action.do === 'couple') {
      const port = freeEqualPort(state, scenePorts(scene), standsFor(scene, state, action.port));
      what = withPort(what, action.port, port);
      return couplings(step, { ...action, port }, scene, state);
    }
    if (action.do !== 'set valve') return [action];
    const valve = valveStandingFor(scene, state, action.valve);
    if (valve === action.valve) return [action];
    what = withPort(what, action.valve.replace(/\.bleeder$/, ''), valve.replace(/\.bleeder$/, ''));
    return [{ ...action, valve }];
  });
  return { ...step, what, how };
}

type Couple = Extract<DrillAction, { do: 'couple' }>;

function couplings(
  step: DrillStep,
  action: Couple,
  scene: DrillScene,
  state: DrillState,
): DrillAction[] {
  const at = scene.hoses.findIndex(({ id }) => id === action.hose);
  const piece = scene.hoses[at];
  const hose = state.hoses[at];
  if (!piece || !hose) return [action];
  const isRight = (port: string) =>
    areEqualPorts(port, piece.from.plannedPort) || areEqualPorts(port, piece.to.plannedPort);
  for (const end of [action.end, otherEnd[action.end]] as const) {
    const { port, at: lies } = hose[end];
    if (port === null || isRight(port) || !postOf(scene, step.role).includes(lies)) continue;
    return [
      { do: 'uncouple', hose: hose.id, end },
      { ...action, end },
    ];
  }
  const other = otherEnd[action.end];
  const end = hose[action.end].port !== null && hose[other].port === null ? other : action.end;
  return [{ ...action, end }];
}

/** `Open your intake 1` for a hose on intake 2. */
function withPort(what: string, planned: string, port: string): string {
  if (planned === port) return what;
  const [, kind, number] = /\.(intake|discharge)(\d+)$/.exec(planned) ?? [];
  const instead = /(\d+)$/.exec(port)?.[1];
  return what.replaceAll(`${kind} ${number}`, `${kind} ${instead}`);
}
