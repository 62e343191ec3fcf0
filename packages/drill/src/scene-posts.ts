import { type Plan, piecesOf, splitPortRef } from '@plugside/fireground';
import type { PlayedRole } from './role.ts';

/** Pieces joined to the engine at the scene by hose no longer than this are at hand there too [ft]; ours. */
const atHandFt = 50;

const ownerOf = (port: string) => splitPortRef(port).pieceId;

/**
 * Who stands where: the attack operator at the engine at the scene and what is joined to it by a short
 * hose, the nozzle crew at all that it feeds, the hydrant operator at everything else.
 */
export function postsOf(plan: Plan): Record<PlayedRole, string[]> {
  const fed = new Set<string>();
  const open = [plan.scene];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const next = [
      ...plan.lines.filter((line) => ownerOf(line.from) === id).map((line) => ownerOf(line.to)),
      ...plan.nozzles
        .filter((nozzle) => nozzle.on !== undefined && ownerOf(nozzle.on) === id)
        .map((nozzle) => nozzle.id),
    ];
    for (const piece of next) {
      if (fed.has(piece) || piece === plan.scene) continue;
      fed.add(piece);
      open.push(piece);
    }
  }
  const near = new Set(
    plan.lines
      .filter((line) => ownerOf(line.to) === plan.scene && line.lengthFt <= atHandFt)
      .map((line) => ownerOf(line.from)),
  );
  const ids = piecesOf(plan).map((piece) => piece.id);
  return {
    'hydrant operator': ids.filter((id) => id !== plan.scene && !fed.has(id)),
    'attack operator': ids.filter((id) => id === plan.scene || near.has(id)),
    'nozzle crew': ids.filter((id) => fed.has(id)),
  };
}
