/** How far somebody has got in learning an evolution, kept on this device until it is done or begun anew. */
import type { DrillState, Evolution, PlayedRole } from '@plugside/drill';
import { drop, keep, kept } from '../../plan-store/device-memory.ts';

export interface KeptPlace {
  /** The drill as it stood. */
  state: DrillState;
  plays: 'all' | PlayedRole;
}

const nameOf = ({ key }: Evolution) => `plugside.learn:${key}`;

/**
 * A mark of the scene that a place was kept in: an evolution that has changed since is begun anew.
 * FNV-1a, 32 bits.
 */
function markOf(evolution: Evolution): string {
  const text = JSON.stringify(evolution.scene());
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++)
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return `${text.length}:${hash}`;
}

/** Keeps a place; where the device refuses, there is none to come back to. */
export function keepPlace(evolution: Evolution, place: KeptPlace): void {
  keep(nameOf(evolution), JSON.stringify({ mark: markOf(evolution), ...place }));
}

export function dropPlace(evolution: Evolution): void {
  drop(nameOf(evolution));
}

/** The place kept for an evolution; undefined where there is none, or none that fits it as it is now. */
export function keptPlace(evolution: Evolution): KeptPlace | undefined {
  try {
    const read = JSON.parse(kept(nameOf(evolution)) ?? 'null') as
      | (KeptPlace & { mark: string })
      | null;
    if (read?.mark !== markOf(evolution) || read.state.format !== 1) return undefined;
    return { state: read.state, plays: read.plays };
  } catch {
    return undefined;
  }
}
