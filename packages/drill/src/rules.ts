import type { DrillScene } from './scene.ts';

/**
 * Which rules a drill is run by that begins now. A scene of before keeps those that it was run by, so that
 * its log comes to the same end: what a scene says in its settings is asked wherever the two differ.
 */
export const RULES = 2;

/** Whether a scene is run by the rules of today: ends of hose alike, live ports refused, air sucked in. */
export function byTodaysRules(scene: DrillScene): boolean {
  return (scene.settings.rules ?? 1) >= RULES;
}
