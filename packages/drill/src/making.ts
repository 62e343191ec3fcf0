/** What the parts of a drill's network are made with. */
import type { Draft, PortRef } from '@plugside/fireground';
import type { LinkSpec } from '@plugside/hydraulics';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';

/** A link whose loss goes with a valve: `baseK + extra(opening)`. */
export interface ValvedLink {
  link: string;
  /** Index in the state's valves. */
  valve: number;
  baseK: number;
  boreIn: number;
  /** An opening to the air: its K [gpm/√psi] shrinks with the opening instead. */
  openK?: number;
}

export interface Making {
  scene: DrillScene;
  state: DrillState;
  draft: Draft;
  valved: ValvedLink[];
  used: (port: PortRef) => boolean;
}

/** The port's valve in the scene: index, or -1. */
export function valveIndex(scene: DrillScene, id: string): number {
  return scene.valves.findIndex((valve) => valve.id === id);
}

/** The link's loss goes with a valve from now on; its loss when open is what it was compiled with. */
export function valveOn({ scene, draft, valved }: Making, link: string, valveId: string): void {
  const spec = draft.links.find((one) => one.id === link);
  const valve = valveIndex(scene, valveId);
  if (spec?.kind !== 'loss' || valve < 0) return;
  // Handles and gates move in the drill, whatever the plan has them at.
  spec.shut = false;
  const baseK = spec.lossPsi / (spec.atGpm * spec.atGpm);
  valved.push({ link, valve, baseK, boreIn: scene.valves[valve]!.boreIn });
}

/** No loss of its own: a valve that stands open. */
export function openLoss(id: string, from: string, to: string): LinkSpec {
  return { kind: 'loss', id, from, to, lossPsi: 0, atGpm: 1000 };
}
