/** Drawing water up a suction hose before a pump can draft. */
import { splitPortRef } from '@plugside/fireground';
import type { Drill } from './running-drill.ts';
import { leastOpening } from './valve-loss.ts';

/** A primer draws a suction hose full in this [s]; ours. The rating standard allows 30 s to most pumps (from memory). */
export const PRIMER_FILLS_S = 20;

/** Nobody lifts water farther than this [ft]: 1.13 ft × 22 inHg ("Ch 11 Static Water Supply Sources" study cards). */
const MOST_LIFT_FT = 1.13 * 22;

/**
 * The rig whose primer draws on a hose now: one end is in open water, the other on an intake that is open,
 * the pump is in gear and not too high. Undefined where there is none.
 */
export function primerOn({ scene, state }: Drill, at: number): string | undefined {
  if (scene.plan.drafts.length === 0) return undefined;
  const { from, to, phase } = state.hoses[at]!;
  if (phase !== 'filling' || from.port === null || to.port === null) return undefined;
  const water = scene.plan.drafts.find(({ id }) => id === splitPortRef(from.port!).pieceId);
  if (!water) return undefined;
  const { pieceId } = splitPortRef(to.port);
  const rig = scene.plan.rigs.find(({ id }) => id === pieceId);
  const pump = state.pumps.find(({ rigId }) => rigId === pieceId);
  if (!rig || !pump?.inGear || rig.elevationFt - water.waterElevationFt > MOST_LIFT_FT)
    return undefined;
  const valve = state.valves.find(({ id }) => id === to.port);
  return valve && valve.opening >= leastOpening ? rig.id : undefined;
}

/** Whether a rig's primer is at work. */
export function isPriming(drill: Drill, rigId: string): boolean {
  return drill.state.hoses.some((_, at) => primerOn(drill, at) === rigId);
}
