/** A step as it is to be done here and now: on the ports that hose is really on. */
import { splitPortRef } from '@plugside/fireground';
import type { DrillAction } from './action.ts';
import { withPsiAsked } from './asked-pressure.ts';
import type { DrillStep } from './drill-step.ts';
import { areEqualPorts, freeEqualPort, standsFor, valveStandingFor } from './equal-ports.ts';
import { dryEndsOn } from './flushed.ts';
import { otherEnd } from './hose-front.ts';
import { livePort, pours } from './live-ports.ts';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import { scenePorts } from './scene-ports.ts';
import { postOf } from './scene-posts.ts';
import type { DrillState } from './state.ts';
import { hoseWords, portName, valveName } from './words/piece-words.ts';

/** Seconds in which a valve is shut that was opened too early; ours. */
const SHUTS_S = 12;

/**
 * A step with the ports and valves that its hose is on where that is another than the plan's but as good:
 * intake 2 instead of 1. A hose that is on a wrong port comes off it first.
 */
export function asCoupled(step: DrillStep, scene: DrillScene, state: DrillState): DrillStep {
  let what = step.what;
  const off = step.done.is === 'flushed' ? dryEndsOn(state, step.done.hydrant) : [];
  if (off.length > 0) what = `Take the hose off the hydrant again. Then: ${what}`;
  const how = step.how.flatMap((action): DrillAction[] => {
    if (action.do === 'couple') {
      const port = freeEqualPort(state, scenePorts(scene), standsFor(scene, state, action.port));
      what = withPort(what, action.port, port);
      const first = shutFirst(step, { ...action, port }, scene, state);
      if (first) what = `${first.what} Then: ${what}`;
      return [...(first?.how ?? []), ...couplings(step, { ...action, port }, scene, state)];
    }
    if (action.do === 'set governor') {
      const now = withPsiAsked(step, action, scene, state);
      if (now.do !== 'set governor' || now === action) return [now];
      what = what.replaceAll(`${action.pdpPsi} psi`, `${now.pdpPsi} psi`);
      return [now];
    }
    if (action.do !== 'set valve') return [action];
    const valve = valveStandingFor(scene, state, action.valve);
    if (valve === action.valve) return [action];
    what = withPort(what, action.valve.replace(/\.bleeder$/, ''), valve.replace(/\.bleeder$/, ''));
    return [{ ...action, valve }];
  });
  const uncouples = off.map((end): DrillAction => ({ do: 'uncouple', ...end }));
  return { ...step, what, how: [...uncouples, ...how] };
}

/** What has to be shut before hose goes on a port that is live, or hose that pours; undefined: nothing. */
function shutFirst(
  step: DrillStep,
  { hose: id, port }: Couple,
  scene: DrillScene,
  state: DrillState,
): { what: string; how: DrillAction[] } | undefined {
  if (!hasRules(scene, 2)) return undefined;
  const shut = (valve: string, why: string) => {
    const piece = scene.valves.find((one) => one.id === valve);
    const isOwn = piece !== undefined && postOf(scene, step.role).includes(piece.pieceId);
    const name = valveName(scene, valve);
    const action = { do: 'set valve', valve, opening: 0, overS: SHUTS_S } as const;
    return isOwn
      ? { what: `${why} Shut first, slowly: ${name}.`, how: [action] }
      : { what: `${why} Have it shut first: ${name}.`, how: [] };
  };
  const live = livePort(scene, state, port);
  if (live) return shut(live.valve, `${portName(scene, port)} is live.`);
  const hose = state.hoses.find((one) => one.id === id);
  if (!hose || !pours(hose)) return undefined;
  const fed = hose.from.port ?? hose.to.port;
  const valve = fed === null ? undefined : valveBehind(scene, fed);
  const why = `Water pours out of ${hoseWords(scene, id)}.`;
  return valve === undefined ? { what: why, how: [] } : shut(valve, why);
}

/** The valve that shuts off what comes out of a port. */
function valveBehind(scene: DrillScene, port: string): string | undefined {
  const has = (id: string) => scene.valves.some((one) => one.id === id);
  if (has(port)) return port;
  const { pieceId } = splitPortRef(port);
  const on = scene.plan.appliances.find(({ id }) => id === pieceId);
  const stem = `${on?.kind === 'assist-valve' ? splitPortRef(on.on).pieceId : pieceId}.stem`;
  return has(stem) ? stem : undefined;
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
