import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import type { Occasion } from './tally-shape.ts';

/** Keeps that there has been occasion to judge something. */
export function occasion(scene: DrillScene, state: DrillState, what: Occasion): void {
  if (!hasRules(scene, 2)) return;
  const { tally } = state;
  tally.occasions ??= [];
  if (!tally.occasions.includes(what)) tally.occasions.push(what);
}
