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

/** The rigs whose intakes a rig's water comes to first, going downstream; through a pump that stands idle it goes on. */
export function nextRigs(plan: Plan, rigId: string): string[] {
  return wayToNext(plan, rigId).rigs;
}

/**
 * What a rig's water runs through to the intakes that it comes to first, and the rigs they belong to.
 * A pump before the scene that is not pumping lets it pass: it is on the way, not at its end.
 */
export function wayToNext(plan: Plan, rigId: string): { pieces: Set<string>; rigs: string[] } {
  const pieces = new Set<string>();
  const found = new Set<string>();
  const queue = [rigId];
  const visited = new Set<string>([rigId]);
  const rigs = new Set(
    plan.rigs
      .filter(({ id, setting }) => id === plan.scene || setting.mode !== 'idle')
      .map(({ id }) => id),
  );
  while (queue.length > 0) {
    const piece = queue.pop()!;
    for (const line of plan.lines) {
      if (line.valve === 'shut' || splitPortRef(line.from).pieceId !== piece) continue;
      pieces.add(line.id);
      const to = splitPortRef(line.to).pieceId;
      if (visited.has(to)) continue;
      visited.add(to);
      if (rigs.has(to)) found.add(to);
      else {
        pieces.add(to);
        queue.push(to);
      }
    }
  }
  return { pieces, rigs: [...found] };
}

/** Ids of the sources, lines, appliances and rigs that a rig's water comes through, the rig itself left out. */
export function upstreamOf(plan: Plan, rigId: string): Set<string> {
  const before = new Set<string>();
  const queue = [rigId];
  const visit = (piece: string) => {
    if (piece === rigId || before.has(piece)) return;
    before.add(piece);
    queue.push(piece);
  };
  while (queue.length > 0) {
    const piece = queue.pop()!;
    for (const line of plan.lines) {
      if (line.valve === 'shut' || splitPortRef(line.to).pieceId !== piece) continue;
      before.add(line.id);
      visit(splitPortRef(line.from).pieceId);
    }
    const valve = plan.appliances.find((appliance) => appliance.id === piece);
    if (valve?.kind === 'assist-valve') visit(splitPortRef(valve.on).pieceId);
  }
  return before;
}

/**
 * Ids of everything that water comes to through open valves, from hydrants and drafts on: sources,
 * lines, appliances and rigs.
 */
export function wetPieces(plan: Plan): Set<string> {
  const wet = new Set<string>();
  const queue = [...plan.hydrants, ...plan.drafts].map(({ id }) => id);
  while (queue.length > 0) {
    const piece = queue.pop()!;
    if (wet.has(piece)) continue;
    wet.add(piece);
    for (const appliance of plan.appliances) {
      if ('on' in appliance && splitPortRef(appliance.on).pieceId === piece)
        queue.push(appliance.id);
    }
    for (const line of plan.lines) {
      if (line.valve === 'shut' || splitPortRef(line.from).pieceId !== piece) continue;
      wet.add(line.id);
      queue.push(splitPortRef(line.to).pieceId);
    }
  }
  return wet;
}
