import { portOf, splitPortRef } from '@plugside/fireground';
import type { Problem, Submitted } from './action.ts';
import type { DrillEvent } from './event.ts';
import { onFineGrid, onGrid } from './grid.ts';
import { mayDo } from './may-do.ts';
import { type RadioEntry, radioText } from './radio.ts';
import type { Drill } from './running-drill.ts';
import { postOf } from './scene-posts.ts';
import type { DrillState, ValveState } from './state.ts';
import { surgeOf } from './surge.ts';
import { faultWords } from './words/action-words.ts';
import { hoseWords, pieceName, portName, valveName } from './words/piece-words.ts';

/** Messages kept in the state; the log has them all. */
const radioKept = 50;
/** Faults at a time. */
const mostFaults = 50;
/** Pressure that holds a coupling fast, and throws water when it is broken [psi]; ours. */
const throwsPsi = 3;

/**
 * Does one action to a drill's state.
 * @returns what is wrong with it, the state untouched; else what came of it at once
 */
export function applyAction(
  drill: Drill,
  submitted: Submitted,
): { problem: Problem } | { events: DrillEvent[] } {
  const { scene, state } = drill;
  const { role, action } = submitted;
  const problem = mayDo(role, scene, action);
  if (problem) return { problem };
  const events: DrillEvent[] = [];
  switch (action.do) {
    case 'couple':
      return couple(drill, submitted, action);
    case 'uncouple':
      return uncouple(drill, submitted, action);
    case 'set valve': {
      const at = scene.valves.findIndex((valve) => valve.id === action.valve);
      const piece = scene.valves[at]!;
      const valve = state.valves[at]!;
      const target = onFineGrid(action.opening);
      const way = Math.abs(target - valve.opening);
      const atHand = 1 / piece.travelS;
      const asked = action.overS === undefined || action.overS === 0 ? atHand : way / action.overS;
      const wasOpen = valve.opening > 0 || valve.target > 0;
      valve.target = target;
      valve.perS = onFineGrid(Math.max(1e-3, Math.min(atHand, asked)));
      if (target > 0 !== wasOpen) drill.stale = true;
      return { events: shutFast(drill, valve, at) };
    }
    case 'pump in gear': {
      const pump = state.pumps.find((one) => one.rigId === action.rig)!;
      if (pump.inGear !== action.inGear) {
        pump.inGear = action.inGear;
        // Idling in gear: it gives what comes in and the little that idling adds.
        pump.pdpPsi = action.inGear ? onGrid(Math.max(0, pump.intakePsi)) : 0;
        pump.speed = 0.3;
      }
      return { events };
    }
    case 'set governor': {
      const pump = state.pumps.find((one) => one.rigId === action.rig)!;
      if (pump.mode === 'throttled') pump.pdpPsi = onGrid(Math.max(0, pump.dischargePsi));
      pump.mode = 'governed';
      pump.targetPdpPsi = onGrid(action.pdpPsi);
      return { events };
    }
    case 'set throttle': {
      const pump = state.pumps.find((one) => one.rigId === action.rig)!;
      pump.mode = 'throttled';
      pump.targetSpeed = onFineGrid(action.speedFraction);
      return { events };
    }
    case 'radio': {
      const { message } = action;
      const entry: RadioEntry = { tick: state.tick, from: role, text: radioText(message) };
      if ('preset' in message) {
        const { preset, psi, gpm } = message;
        entry.preset = preset;
        if (psi !== undefined) entry.psi = psi;
        if (gpm !== undefined) entry.gpm = gpm;
        if (!state.said.some((one) => one.role === role && one.preset === preset))
          state.said.push({ role, preset, tick: state.tick });
      }
      hear(state, entry);
      return { events };
    }
    case 'say': {
      const entry: RadioEntry = { tick: state.tick, from: role, text: action.text };
      if (action.to !== undefined) entry.to = action.to;
      hear(state, entry);
      return { events };
    }
    case 'pause':
      state.paused = true;
      return { events };
    case 'resume':
      state.paused = false;
      return { events };
    case 'set speed':
      state.speed = action.speed;
      return { events };
    case 'arm fault': {
      const { fault } = action;
      if (state.faults.some((one) => one.id === fault.id))
        return refuse('fault', `There is a fault "${fault.id}" already. Give another id.`);
      if (state.faults.length >= mostFaults)
        return refuse('fault', `There are ${mostFaults} faults already. Lift one first.`);
      state.faults.push({ ...fault });
      drill.stale = true;
      return { events };
    }
    case 'lift fault': {
      const at = state.faults.findIndex((one) => one.id === action.fault);
      if (at < 0) return refuse('fault', `There is no fault "${action.fault}".`);
      const [lifted] = state.faults.splice(at, 1);
      drill.stale = true;
      events.push({
        kind: 'fault lifted',
        level: 'fact',
        piece: lifted!.id,
        text: `Put right: ${faultWords(scene, lifted!)}.`,
      });
      return { events };
    }
  }
}

function refuse(field: string, message: string): { problem: Problem } {
  return { problem: { field, message } };
}

function hear(state: DrillState, entry: RadioEntry): void {
  state.radio.push(entry);
  if (state.radio.length > radioKept) state.radio.shift();
}

function couple(
  drill: Drill,
  { role }: Submitted,
  action: { hose: string; end: 'from' | 'to'; port: string },
): { problem: Problem } | { events: DrillEvent[] } {
  const { scene, state } = drill;
  const at = scene.hoses.findIndex((one) => one.id === action.hose);
  const hose = state.hoses[at]!;
  const end = hose[action.end];
  const { pieceId } = splitPortRef(action.port);
  if (end.port !== null)
    return refuse('hose', `This end of ${action.hose} is on ${end.port}. Uncouple it first.`);
  if (role === 'instructor' || role === 'observer' || !postOf(scene, role).includes(end.at))
    return refuse('hose', `This end of ${action.hose} lies at ${end.at}, out of reach.`);
  if (!portOf(scene.plan, action.port))
    return refuse('port', `${pieceId} has no port "${action.port}".`);
  const taken = state.hoses.find(
    (one) => one.from.port === action.port || one.to.port === action.port,
  );
  if (taken) return refuse('port', `${action.port} has ${taken.id} on it. Take a free port.`);
  const sits = [
    ...scene.plan.appliances.filter((one) => one.kind === 'assist-valve'),
    ...scene.plan.nozzles,
  ].find((one) => one.on === action.port);
  const nozzleOn = scene.plan.nozzles.some(
    (one) => one.on !== undefined && `${one.id}.inlet` === action.port,
  );
  if (sits || nozzleOn)
    return refuse('port', `${action.port} is taken by ${sits?.id ?? pieceId}. Take a free port.`);
  end.port = action.port;
  end.at = pieceId;
  state.uncapped = state.uncapped.filter((port) => port !== action.port);
  // Full again only once the air at the new joint has gone; a hose that ran out may still be full.
  if (hose.phase === 'open') hose.phase = hose.from.port && hose.to.port ? 'full' : 'open';
  if (scene.hoses[at]![action.end].plannedPort !== action.port) {
    state.tally.wrongConnections.push({ tick: state.tick, hose: action.hose, port: action.port });
    if (state.tally.wrongConnections.length > 100) state.tally.wrongConnections.shift();
  }
  drill.stale = true;
  return { events: [] };
}

function uncouple(
  drill: Drill,
  { role }: Submitted,
  action: { hose: string; end: 'from' | 'to' },
): { problem: Problem } | { events: DrillEvent[] } {
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
  if (hose.phase === 'full' && end.psi > throwsPsi) {
    events.push({
      kind: 'water thrown',
      level: 'caution',
      piece: hose.id,
      text: `${hoseWords(scene, action.hose)} was uncoupled from ${portName(scene, end.port)} at ${Math.round(end.psi)} psi: hose whips and a coupling flies. Shut the valve and bleed the pressure off first.`,
    });
  }
  state.uncapped.push(end.port);
  end.port = null;
  if (hose.phase === 'full') hose.phase = 'open';
  drill.stale = true;
  return { events };
}

/** A valve that is being shut fast on moving water: told, and counted where a hose could pass its limit. */
function shutFast({ scene, state }: Drill, valve: ValveState, at: number): DrillEvent[] {
  const surge = surgeOf(scene, state, at);
  if (!surge) return [];
  const { hose, stoppedGpm, seconds, toPsi, limitPsi } = surge;
  const isOver = toPsi > limitPsi;
  if (isOver && scene.settings.waveFtS !== undefined) {
    const { tally } = state;
    tally.surges ??= [];
    tally.surges.push({ tick: state.tick, hose, valve: valve.id, psi: onGrid(toPsi) });
    if (tally.surges.length > 100) tally.surges.shift();
  }
  const { risePsi } = surge;
  const against = isOver ? `over its limit of ${limitPsi} psi` : `limit ${limitPsi} psi`;
  return [
    {
      kind: 'shut fast',
      level: 'caution',
      piece: valve.id,
      text: `${valveName(scene, valve.id)} is shut in ${seconds.toFixed(1)} s on ${Math.round(stoppedGpm)} gpm: a surge of some ${Math.round(risePsi)} psi in ${hoseWords(scene, hose)}, to some ${Math.round(toPsi)} psi, ${against}. Shut slowly.`,
    },
  ];
}
