/** The mains behind a drill's hydrants as they stand: what each gives, and which of them draw on one. */
import {
  type Hydrant,
  type PortRef,
  type SharedMain,
  sharedMains,
  splitPortRef,
} from '@plugside/fireground';
import { inEffect } from './fault.ts';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';

/** A plan's hydrants, one that a fault has made weak with so much less in its test. */
export function hydrantsNow({ plan }: DrillScene, state: DrillState): Hydrant[] {
  return plan.hydrants.map((hydrant) => {
    const weak = state.faults.find(
      (fault) =>
        fault.kind === 'hydrant weak' && fault.hydrant === hydrant.id && inEffect(state, fault),
    );
    return weak?.kind === 'hydrant weak'
      ? { ...hydrant, testGpm: hydrant.testGpm * weak.share }
      : hydrant;
  });
}

/**
 * The mains that several hydrants of a drill draw on. A hydrant counts that the plan has a line or a valve
 * on, whether or not it is coupled or open yet, and one that hose is on: a stem that is turned changes no
 * main, and so no gauge jumps where tests say of one main that water stands at two heights.
 * @param hydrants as `hydrantsNow` gives them
 */
export function mainsNow(
  scene: DrillScene,
  state: DrillState,
  hydrants: readonly Hydrant[],
): SharedMain[] {
  if (hydrants.length < 2 || !hasRules(scene, 3)) return [];
  const { plan } = scene;
  const on = new Set<string>();
  const add = (port: PortRef | null) => {
    if (port !== null) on.add(splitPortRef(port).pieceId);
  };
  for (const { from, to } of plan.lines) for (const port of [from, to]) add(port);
  for (const one of plan.appliances) if (one.kind === 'assist-valve') add(one.on);
  for (const { from, to } of state.hoses) for (const { port } of [from, to]) add(port);
  for (const port of state.uncapped) add(port);
  return sharedMains(
    { ...plan, hydrants: [...hydrants] },
    hydrants.filter(({ id }) => on.has(id)),
  );
}
