/** A pump held in gear with nothing flowing heats the water that it churns. */
import type { DrillEvent } from './event.ts';
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

/** One tick of a pump: counts how long it has been dead-ended. */
export function moveHeat({ scene, state }: Drill, pump: PumpState): DrillEvent[] {
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
