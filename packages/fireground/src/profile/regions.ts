import type { Plan } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';
import type { ProfileSpan } from './profile.ts';

/**
 * Which sources a piece stands at: a hydrant and its assist valve at the hydrant, a booster at
 * the hydrant that its lines come from, open water and the rigs that draft from it.
 */
export function standsAt(plan: Plan): Map<string, Set<string>> {
  const sources = new Map<string, Set<string>>();
  const stand = (piece: string, at: Iterable<string>) =>
    sources.set(piece, new Set([...(sources.get(piece) ?? []), ...at]));
  for (const { id } of [...plan.hydrants, ...plan.drafts]) stand(id, [id]);
  for (const piece of plan.appliances) {
    if (piece.kind === 'assist-valve') stand(piece.id, [splitPortRef(piece.on).pieceId]);
  }
  const fixed = new Map(sources);
  const drafts = new Set(plan.drafts.map(({ id }) => id));
  for (const rig of plan.rigs) {
    for (const line of plan.lines) {
      const ends = [line.from, line.to].map((ref) => splitPortRef(ref).pieceId);
      const other = ends.find((id) => id !== rig.id);
      if (!ends.includes(rig.id) || other === undefined) continue;
      if (rig.role === 'booster' || drafts.has(other)) stand(rig.id, fixed.get(other) ?? []);
    }
  }
  return sources;
}

/** Tells whether a span before the scene's pump is part of the hookup at a source, or of the lay. */
export function supplyRegion(plan: Plan): (span: ProfileSpan) => 'hookup' | 'lay' {
  const sources = standsAt(plan);
  const shared = (a: string, b: string) =>
    [...(sources.get(a) ?? [])].some((id) => sources.get(b)?.has(id));
  const lines = new Map(plan.lines.map((line) => [line.id, line]));
  return (span) => {
    const id = span.kind === 'hose' ? span.line : span.kind === 'pump' ? span.rig : span.piece;
    const line = lines.get(id);
    // A piece span by a line's name is the valve at that line's end.
    const hookup = line
      ? shared(splitPortRef(line.from).pieceId, splitPortRef(line.to).pieceId)
      : (sources.get(id)?.size ?? 0) > 0;
    return hookup ? 'hookup' : 'lay';
  };
}
