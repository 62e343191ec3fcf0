import type { FlowEdge } from './flow-graph.ts';

/** Every place from which `goal` can be reached along the edges. */
function placesBefore(edges: readonly FlowEdge[], goal: string): Set<string> {
  const into = new Map<string, string[]>();
  for (const { from, to } of edges) into.set(to, [...(into.get(to) ?? []), from]);
  const found = new Set([goal]);
  const waiting = [goal];
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    for (const before of into.get(place) ?? []) {
      if (!found.has(before)) {
        found.add(before);
        waiting.push(before);
      }
    }
  }
  return found;
}

/**
 * The edges from `start` to `goal` that take the greatest flow at each parting of the water;
 * undefined where no water gets there.
 */
export function mainWay(
  edges: readonly FlowEdge[],
  start: string,
  goal: string,
): FlowEdge[] | undefined {
  const before = placesBefore(edges, goal);
  const passed = new Set([start]);
  const way: FlowEdge[] = [];
  for (let place = start; place !== goal; ) {
    let best: FlowEdge | undefined;
    for (const edge of edges) {
      if (edge.from !== place || !before.has(edge.to) || passed.has(edge.to)) continue;
      if (!best || edge.flowGpm > best.flowGpm) best = edge;
    }
    if (!best) return undefined;
    way.push(best);
    passed.add(best.to);
    place = best.to;
  }
  return way;
}

/** As `mainWay`, but the greatest flow is sought from the goal backwards: what feeds it most. */
export function mainFeed(
  edges: readonly FlowEdge[],
  start: string,
  goal: string,
): FlowEdge[] | undefined {
  const turned = edges.map((edge) => ({ ...edge, from: edge.to, to: edge.from, edge }));
  const way = mainWay(turned, goal, start) as typeof turned | undefined;
  return way?.reverse().map(({ edge }) => edge);
}
