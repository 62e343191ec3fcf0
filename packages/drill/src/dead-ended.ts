/** A pump held in gear with nothing flowing heats the water that it churns; one without water wears itself out. */
import type { DrillEvent } from './event.ts';
import { engineIsDead } from './fault.ts';
import { isPriming } from './priming.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import { type PumpState, TICKS_PER_S } from './state.ts';
import { countUnsafe } from './tally-acts.ts';
import { pieceName } from './words/piece-words.ts';

/** Held so long it is told and judged [s]. Common practice is a few minutes at most, without a source; 3 is ours. */
export const HEATS_AFTER_S = 180;
/** Less than this through a pump carries no heat away [gpm]; ours. */
const CARRIES_GPM = 5;
/** It churns from this net pressure on [psi]; ours: at idle it takes longer. */
const CHURNS_PSI = 20;

/**
 * In gear without water so long it is told and judged [s]: what turns in it is cooled by water alone. Common
 * practice is never, without a source; the minute in which it is seen and taken out of gear is ours.
 */
export const RUNS_DRY_AFTER_S = 60;

/** One tick of a pump: counts how long it has been dead-ended, and how long it has run dry. */
export function moveHeat(drill: Drill, pump: PumpState): DrillEvent[] {
  return [...moveDeadEnd(drill, pump), ...moveDry(drill, pump)];
}

function moveDry(drill: Drill, pump: PumpState): DrillEvent[] {
  const { scene, state } = drill;
  if (!hasRules(scene, 3)) return [];
  const isDry =
    pump.inGear &&
    !pump.primed &&
    !engineIsDead(state, pump.rigId) &&
    !isPriming(drill, pump.rigId);
  if (!isDry) {
    if (pump.dryTicks) pump.dryTicks = 0;
    return [];
  }
  pump.dryTicks = (pump.dryTicks ?? 0) + 1;
  if (pump.dryTicks !== RUNS_DRY_AFTER_S * TICKS_PER_S) return [];
  countUnsafe(scene, state, pump.rigId, 'pump run dry');
  return [
    {
      kind: 'pump heats',
      level: 'caution',
      piece: pump.rigId,
      text: `${pieceName(scene, pump.rigId)} has run without water for ${RUNS_DRY_AFTER_S} s: what turns in it wears and seizes. Take it out of gear until it has water.`,
    },
  ];
}

function moveDeadEnd({ scene, state }: Drill, pump: PumpState): DrillEvent[] {
  if (!hasRules(scene, 2)) return [];
  const moves = pump.flowGpm + pump.reliefGpm >= CARRIES_GPM;
  const churns =
    pump.condition !== 'dead' &&
    pump.inGear &&
    pump.primed &&
    !moves &&
    pump.dischargePsi - pump.intakePsi >= CHURNS_PSI;
  if (!churns) {
    if (pump.deadEndTicks) pump.deadEndTicks = 0;
    return [];
  }
  pump.deadEndTicks = (pump.deadEndTicks ?? 0) + 1;
  if (pump.deadEndTicks !== HEATS_AFTER_S * TICKS_PER_S) return [];
  countUnsafe(scene, state, pump.rigId, 'pump dead-ended');
  return [
    {
      kind: 'pump heats',
      level: 'caution',
      piece: pump.rigId,
      text: `${pieceName(scene, pump.rigId)} has held pressure for ${HEATS_AFTER_S / 60} minutes with nothing flowing: the water in it heats. Crack the tank fill, flow a line, or take it out of gear.`,
    },
  ];
}
