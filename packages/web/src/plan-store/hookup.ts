import { type Plan, type Rig, splitPortRef } from '@plugside/fireground';

/** The booster hosed to a source, straight or through the valve on it; undefined where there is none. */
export function boosterAt(plan: Plan, sourceId: string): Rig | undefined {
  const atSource = new Set([sourceId]);
  for (const one of plan.appliances) {
    if (one.kind === 'assist-valve' && splitPortRef(one.on).pieceId === sourceId)
      atSource.add(one.id);
  }
  return plan.rigs.find(
    (rig) =>
      rig.role === 'booster' &&
      plan.lines.some(
        (line) =>
          splitPortRef(line.to).pieceId === rig.id && atSource.has(splitPortRef(line.from).pieceId),
      ),
  );
}
