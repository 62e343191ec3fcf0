/** Hose put on a port, and taken off. */
import { portOf, splitPortRef } from '@plugside/fireground';
import type { Problem, Submitted } from './action.ts';
import { areEqualPorts } from './equal-ports.ts';
import type { DrillEvent } from './event.ts';
import { otherEnd } from './hose-front.ts';
import { livePort, pours, THROWS_PSI } from './live-ports.ts';
import type { HoseEnd } from './names.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene, SceneHose } from './scene.ts';
import { postOf } from './scene-posts.ts';
import type { DrillState, HoseState } from './state.ts';
import { countUnsafe } from './tally-acts.ts';
import { occasion } from './tally-occasions.ts';
import { hoseWords, pieceName, portName, valveName } from './words/piece-words.ts';

type Done = { problem: Problem } | { events: DrillEvent[] };

function refuse(field: string, message: string): { problem: Problem } {
  return { problem: { field, message } };
}

/** Why no hose goes on a port; undefined where one does. */
export function portTaken(scene: DrillScene, state: DrillState, port: string): string | undefined {
  const { pieceId } = splitPortRef(port);
  if (!portOf(scene.plan, port)) return `${pieceId} has no port "${port}".`;
  const taken = state.hoses.find((one) => one.from.port === port || one.to.port === port);
  if (taken) return `${port} has ${taken.id} on it. Take a free port.`;
  const sits = [
    ...scene.plan.appliances.filter((one) => one.kind === 'assist-valve'),
    ...scene.plan.nozzles,
  ].find((one) => one.on === port);
  const nozzleOn = scene.plan.nozzles.some(
    (one) => one.on !== undefined && `${one.id}.inlet` === port,
  );
  if (sits || nozzleOn) return `${port} is taken by ${sits?.id ?? pieceId}. Take a free port.`;
  return undefined;
}

/** Puts a loose end on a free port, whoever does it. */
export function putOn(drill: Drill, hose: HoseState, end: HoseEnd, port: string): void {
  const { state } = drill;
  hose[end].port = port;
  hose[end].at = splitPortRef(port).pieceId;
  state.uncapped = state.uncapped.filter((one) => one !== port);
  // Full again only once the air at the new joint has gone; a hose that ran out may still be full.
  if (hose.phase === 'open') hose.phase = hose.from.port && hose.to.port ? 'full' : 'open';
  drill.stale = true;
}

/** Takes an end off its port, whoever does it. */
export function takeOff(drill: Drill, hose: HoseState, end: HoseEnd): void {
  drill.state.uncapped.push(hose[end].port!);
  hose[end].port = null;
  if (hose.phase === 'full') hose.phase = 'open';
  drill.stale = true;
}

/** Couples as a person at the role's post would. */
export function couple(
  drill: Drill,
  { role }: Submitted,
  action: { hose: string; end: HoseEnd; port: string },
): Done {
  const { scene, state } = drill;
  const at = scene.hoses.findIndex((one) => one.id === action.hose);
  const hose = state.hoses[at]!;
  const piece = scene.hoses[at]!;
  const end = hose[action.end];
  if (end.port !== null)
    return refuse('hose', `This end of ${action.hose} is on ${end.port}. Uncouple it first.`);
  if (role === 'instructor' || role === 'observer' || !postOf(scene, role).includes(end.at))
    return refuse('hose', `This end of ${action.hose} lies at ${end.at}, out of reach.`);
  const taken = portTaken(scene, state, action.port);
  if (taken !== undefined) return refuse('port', taken);
  const today = hasRules(scene, 2);
  if (today) {
    const live = livePort(scene, state, action.port);
    if (live) {
      const psi = Math.round(live.psi);
      return refuse(
        'port',
        `${portName(scene, action.port)} is live at ${psi} psi: water would throw the coupling back. Shut first: ${valveName(scene, live.valve)}.`,
      );
    }
    if (pours(hose))
      return refuse(
        'hose',
        `Water pours out of ${hoseWords(scene, hose.id)}: nobody couples it like that. Shut it at its other end first.`,
      );
  }
  const taking = today ? endFor(piece, hose, action, postOf(scene, role)) : action.end;
  if (taking !== action.end) [hose.from, hose.to] = [hose.to, hose.from];
  putOn(drill, hose, taking, action.port);
  occasion(scene, state, 'coupling');
  if (!isPlanned(piece, taking, action.port, today)) {
    state.tally.wrongConnections.push({ tick: state.tick, hose: action.hose, port: action.port });
    if (state.tally.wrongConnections.length > 100) state.tally.wrongConnections.shift();
  }
  return { events: [] };
}

/**
 * Which end of a hose goes on a port. Both ends of a hose that lies loose in one post are alike: the one
 * is taken that the plan has there, and the other keeps the place of the one that was named.
 */
function endFor(
  piece: SceneHose,
  hose: HoseState,
  { end, port }: { end: HoseEnd; port: string },
  post: readonly string[],
): HoseEnd {
  const other = otherEnd[end];
  if (areEqualPorts(piece[end].plannedPort, port)) return end;
  const alike = hose[other].port === null && post.includes(hose[other].at);
  return alike && areEqualPorts(piece[other].plannedPort, port) ? other : end;
}

function isPlanned(piece: SceneHose, end: HoseEnd, port: string, today: boolean): boolean {
  if (!today) return piece[end].plannedPort === port;
  return areEqualPorts(piece.from.plannedPort, port) || areEqualPorts(piece.to.plannedPort, port);
}

/** Uncouples as a person at the role's post would; hose under pressure throws water, and is judged. */
export function uncouple(
  drill: Drill,
  { role }: Submitted,
  action: { hose: string; end: HoseEnd },
): Done {
  const { scene, state } = drill;
  const hose = state.hoses.find((one) => one.id === action.hose)!;
  const end = hose[action.end];
  if (end.port === null)
    return refuse(
      'hose',
      `This end of ${hoseWords(scene, action.hose)} is loose already, at ${pieceName(scene, end.at)}.`,
    );
  if (role === 'instructor' || role === 'observer' || !postOf(scene, role).includes(end.at))
    return refuse(
      'hose',
      `This end of ${hoseWords(scene, action.hose)} is on ${portName(scene, end.port)}, out of reach.`,
    );
  const events: DrillEvent[] = [];
  const charged = hose.phase === 'full' || (hasRules(scene, 2) && hose.phase === 'filling');
  if (charged && end.psi > THROWS_PSI) {
    countUnsafe(scene, state, hose.id, 'charged hose uncoupled');
    events.push({
      kind: 'water thrown',
      level: 'caution',
      piece: hose.id,
      text: `${hoseWords(scene, action.hose)} was uncoupled from ${portName(scene, end.port)} at ${Math.round(end.psi)} psi: hose whips and a coupling flies. Shut the valve and bleed the pressure off first.`,
    });
  }
  takeOff(drill, hose, action.end);
  return { events };
}
