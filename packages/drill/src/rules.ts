import type { DrillScene } from './scene.ts';

/**
 * Which rules a drill is run by that begins now. A scene of before keeps those that it was run by, so that
 * its log comes to the same end: what a scene says in its settings is asked wherever two differ.
 *
 * 1: a scene without the mark. 2: ends of hose alike, live ports refused, air sucked in.
 * 3: hydrants of one main share it, air of a boosted hose goes on to the next pump, hose behind a clapper stays
 * charged, free words count only where they state a message, a nozzle over its rating is told. Valves opened too
 * fast and pumps run dry are judged, moves of a valve are one, and nothing is judged twice or without occasion.
 */
export const RULES = 3;

/** Whether a scene is run by rules of at least a number: what came in with them holds in it. */
export function hasRules(scene: DrillScene, number: 2 | 3): boolean {
  return (scene.settings.rules ?? 1) >= number;
}
