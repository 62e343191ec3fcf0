import type { Plan } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';

/** Ids of the lines, appliances, rigs and nozzles that a rig's discharges lead to, the rig itself left out. */
export function downstreamOf(plan: Plan, rigId: string): Set<string> {
  const past = new Set<string>();
  const queue = [rigId];
  const visited = new Set<string>([rigId]);
  while (queue.length > 0) {
    const piece = queue.pop()!;
    for (const line of plan.lines) {
      const from = splitPortRef(line.from);
      if (from.pieceId !== piece) continue;
      past.add(line.id);
      const to = splitPortRef(line.to).pieceId;
      if (visited.has(to)) continue;
      visited.add(to);
      past.add(to);
      queue.push(to);
    }
    for (const nozzle of plan.nozzles) {
      if (nozzle.on && splitPortRef(nozzle.on).pieceId === piece) past.add(nozzle.id);
    }
  }
  return past;
}

/** The rigs whose intakes a rig's water comes to first, going downstream. */
export function nextRigs(plan: Plan, rigId: string): string[] {
  const found = new Set<string>();
  const queue = [rigId];
  const visited = new Set<string>([rigId]);
  const rigs = new Set(plan.rigs.map((rig) => rig.id));
  while (queue.length > 0) {
    const piece = queue.pop()!;
    for (const line of plan.lines) {
      if (line.valve === 'shut' || splitPortRef(line.from).pieceId !== piece) continue;
      const to = splitPortRef(line.to).pieceId;
      if (visited.has(to)) continue;
      visited.add(to);
      if (rigs.has(to)) found.add(to);
      else queue.push(to);
    }
  }
  return [...found];
}
