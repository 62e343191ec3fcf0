import type { Problem, Submitted } from './action.ts';
import { couple, uncouple } from './coupling.ts';
import type { DrillEvent } from './event.ts';
import { couplingBar } from './fault-on-port.ts';
import { strike, takeBack } from './fault-strikes.ts';
import { onFineGrid, onGrid } from './grid.ts';
import { hear } from './hear.ts';
import { replaceHose } from './hose-replaced.ts';
import { mayDo } from './may-do.ts';
import { beginsToOpen } from './opened-fast.ts';
import { presetInWords, type RadioEntry, type RadioPresetKey, radioText } from './radio.ts';
import type { Role } from './role.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import { followShutDown } from './shut-down.ts';
import type { ValveState } from './state.ts';
import { statedPreset } from './stated-preset.ts';
import { keepShutting, shuttingOf, surgeOf } from './surge.ts';
import { keep } from './tally-acts.ts';
import { occasion } from './tally-occasions.ts';
import { faultWords } from './words/action-words.ts';
import { hoseWords, valveName } from './words/piece-words.ts';

/** Faults at a time. */
const mostFaults = 50;

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
  const today = hasRules(scene, 2);
  if (today && state.paused && role !== 'instructor' && action.do !== 'radio')
    return refuse(
      'clock',
      'The clock is stopped: nothing is worked until it runs. The radio can be used.',
    );
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
      // Asked for again while it moves there, it goes on: begun anew each time it would never arrive.
      const goesOn = today && target === valve.target && way > 0 ? valve.perS : 0;
      const wasOpen = valve.opening > 0 || valve.target > 0;
      beginsToOpen(scene, state, valve, target);
      if (piece.kind !== 'bleeder' && way > 0) worked(drill);
      valve.target = target;
      valve.perS = onFineGrid(Math.max(1e-3, goesOn, Math.min(atHand, asked)));
      if (target > 0 !== wasOpen) drill.stale = true;
      return { events: shutFast(drill, valve, at) };
    }
    case 'pump in gear': {
      const pump = state.pumps.find((one) => one.rigId === action.rig)!;
      if (pump.inGear !== action.inGear) {
        worked(drill);
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
      worked(drill);
      pump.mode = 'governed';
      pump.targetPdpPsi = onGrid(action.pdpPsi);
      return { events };
    }
    case 'set throttle': {
      const pump = state.pumps.find((one) => one.rigId === action.rig)!;
      worked(drill);
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
        keepSaid(drill, role, preset);
      } else if (today) {
        const preset = hasRules(scene, 3)
          ? statedPreset(message.text, role)
          : presetInWords(message.text);
        if (preset !== undefined) {
          entry.preset = preset;
          keepSaid(drill, role, preset);
        }
      }
      hear(state, entry);
      return { events };
    }
    case 'say': {
      const entry: RadioEntry = { tick: state.tick, from: role, text: action.text };
      followShutDown(scene, state, { order: action.text });
      if (action.to !== undefined) entry.to = action.to;
      hear(state, entry);
      return { events };
    }
    case 'heard': {
      const { from, preset } = action;
      keepSaid(drill, from, preset);
      return { events };
    }
    case 'mark': {
      const { verdict, text, about } = action;
      state.tally.marks ??= [];
      const mark = { tick: state.tick, verdict, text };
      keep(state.tally.marks, about === undefined ? mark : { ...mark, about });
      return { events };
    }
    case 'overrule': {
      const { criterion, met, reason } = action;
      const others = (state.tally.overrules ?? []).filter((one) => one.criterion !== criterion);
      state.tally.overrules = [...others, { criterion, met, reason, tick: state.tick }];
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
      if (fault.kind === 'wrong port' && fault.atTick === undefined) {
        const bar = couplingBar(scene, state, fault);
        if (bar !== undefined) return refuse('fault', bar);
      }
      state.faults.push({ ...fault });
      drill.stale = true;
      if ((fault.atTick ?? -1) < state.tick) strike(drill, fault);
      return { events };
    }
    case 'lift fault': {
      const at = state.faults.findIndex((one) => one.id === action.fault);
      if (at < 0) return refuse('fault', `There is no fault "${action.fault}".`);
      const [lifted] = state.faults.splice(at, 1);
      drill.stale = true;
      if (lifted!.kind === 'line called') takeBack(drill, lifted!.nozzle);
      if (today && lifted!.kind === 'hose burst') replaceHose(drill, lifted!.hose);
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

/** Keeps that a message was given: when first, and when last. */
function keepSaid({ scene, state }: Drill, role: Role, preset: RadioPresetKey): void {
  const { said, tally, tick } = state;
  followShutDown(scene, state, { preset });
  if (!said.some((one) => one.role === role && one.preset === preset))
    said.push({ role, preset, tick });
  if (!hasRules(scene, 3) || role === 'instructor' || role === 'observer') return;
  const others = (tally.saidLast ?? []).filter((one) => one.role !== role || one.preset !== preset);
  tally.saidLast = [...others, { role, preset, tick }];
}

/** Keeps that somebody has worked a valve or a pump: from then on what the water does is the crew's doing. */
function worked({ scene, state }: Drill): void {
  if (hasRules(scene, 3)) occasion(scene, state, 'worked');
}

function refuse(field: string, message: string): { problem: Problem } {
  return { problem: { field, message } };
}

/** A valve that is being shut fast on moving water: told, and counted where a hose could pass its limit. */
function shutFast({ scene, state }: Drill, valve: ValveState, at: number): DrillEvent[] {
  const movement = shuttingOf(scene, state, at);
  const surge = surgeOf(scene, state, at, movement);
  if (!surge) return [];
  const { hose, stoppedGpm, seconds, toPsi, limitPsi } = surge;
  const isOver = toPsi > limitPsi;
  if (movement) {
    // Of one movement: told once, and once more if it comes to pass a limit.
    if (isOver && movement.counted) {
      const counted = state.tally.surges?.findLast((one) => one.valve === valve.id);
      if (counted && counted.psi < toPsi) Object.assign(counted, { hose, psi: onGrid(toPsi) });
      return [];
    }
    if (!isOver && movement.told) return [];
    keepShutting(state, { ...movement, told: true, ...(isOver && { counted: true }) });
  }
  if (isOver && scene.settings.waveFtS !== undefined) {
    const { tally } = state;
    tally.surges ??= [];
    tally.surges.push({ tick: state.tick, hose, valve: valve.id, psi: onGrid(toPsi) });
    if (tally.surges.length > 100) tally.surges.shift();
  }
  const left = Math.round(valve.target * 100);
  const moved = left === 0 ? 'shut' : `moved to ${left} % open`;
  const { risePsi } = surge;
  const against = isOver ? `over its limit of ${limitPsi} psi` : `limit ${limitPsi} psi`;
  return [
    {
      kind: 'shut fast',
      level: 'caution',
      piece: valve.id,
      text: `${valveName(scene, valve.id)} is ${moved} in ${seconds.toFixed(1)} s on ${Math.round(stoppedGpm)} gpm: a surge of some ${Math.round(risePsi)} psi in ${hoseWords(scene, hose)}, to some ${Math.round(toPsi)} psi, ${against}. Shut slowly.`,
    },
  ];
}
