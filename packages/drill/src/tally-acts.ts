import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import type { UnsafeActKind } from './tally-shape.ts';

/** Entries of a kind that are kept. */
export const mostKept = 100;

/** Adds to a list in a tally that keeps the last 100. */
export function keep<T>(list: T[], one: T): void {
  list.push(one);
  if (list.length > mostKept) list.shift();
}

/** Counts an act that hurts people or wrecks a pump. */
export function countUnsafe(
  scene: DrillScene,
  state: DrillState,
  piece: string,
  act: UnsafeActKind,
): void {
  if (!hasRules(scene, 2)) return;
  state.tally.unsafe ??= [];
  keep(state.tally.unsafe, { tick: state.tick, piece, act });
}
