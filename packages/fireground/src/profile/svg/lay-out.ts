import type { PressureProfile, ProfilePath, ProfileSpan } from '../profile.ts';

/** Width of a span in the hookup, which is not to scale [px]. */
const HOOKUP_PX = { hose: 46, pump: 22, piece: 22 } as const;

/** Greatest share of the width that hookups may take. */
const HOOKUP_SHARE = 0.45;

/** Where each station stands across the page, and where the scene's pump is. */
export interface AcrossPage {
  sceneX: number;
  /** px for a foot of hose that is drawn to scale. */
  pxPerFt: number;
  /** For each path, by its id, the x of each station. */
  x: Map<string, number[]>;
}

const lengthFt = (path: ProfilePath, index: number) =>
  path.stations[index + 1]!.alongFt - path.stations[index]!.alongFt;

/** Hose of a path that is drawn to scale [ft], and what its hookup would like to take [px]. */
function roomOf(path: ProfilePath): { scaledFt: number; hookupPx: number } {
  let scaledFt = 0;
  let hookupPx = 0;
  for (const [index, span] of path.spans.entries()) {
    if (path.regions[index] === 'hookup') hookupPx += HOOKUP_PX[span.kind];
    else scaledFt += lengthFt(path, index);
  }
  return { scaledFt, hookupPx };
}

/**
 * Puts the scene's pump at one x for all paths: supply to its left, ending there; attack to its
 * right, starting there. Hose is to scale but in the hookup, where each span has a fixed width.
 */
export function layOut(profile: PressureProfile, left: number, right: number): AcrossPage {
  const width = right - left;
  const rooms = profile.supply.map(roomOf);
  const attackFt = Math.max(0, ...profile.attack.map((path) => path.stations.at(-1)!.alongFt));
  const widestHookup = Math.max(0, ...rooms.map(({ hookupPx }) => hookupPx));
  const shrink = widestHookup > 0 ? Math.min(1, (HOOKUP_SHARE * width) / widestHookup) : 1;
  const scales = rooms
    .map(({ scaledFt, hookupPx }) => (width - hookupPx * shrink) / (scaledFt + attackFt))
    .concat(width / attackFt)
    .filter((scale) => Number.isFinite(scale));
  const pxPerFt = scales.length > 0 ? Math.min(...scales) : 0;
  const sceneX = attackFt * pxPerFt > 0 ? right - attackFt * pxPerFt : right;

  const across = (path: ProfilePath, index: number, span: ProfileSpan) =>
    path.regions[index] === 'hookup'
      ? HOOKUP_PX[span.kind] * shrink
      : lengthFt(path, index) * pxPerFt;
  const x = new Map<string, number[]>();
  for (const path of profile.supply) {
    let at = sceneX;
    const places = [at];
    for (let index = path.spans.length - 1; index >= 0; index--) {
      at -= across(path, index, path.spans[index]!);
      places.unshift(at);
    }
    x.set(path.id, places);
  }
  for (const path of profile.attack) {
    x.set(
      path.id,
      path.stations.map(({ alongFt }) => sceneX + alongFt * pxPerFt),
    );
  }
  return { sceneX, pxPerFt, x };
}
