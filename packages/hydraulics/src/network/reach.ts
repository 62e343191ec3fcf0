/** Which nodes water can get to. */

/** Directed steps water can take: from node, to node. */
export interface Step {
  from: number;
  to: number;
}

/** @returns by node: 1 where water from a source can arrive, checks and pumps taken one way */
export function reachable(
  nodeCount: number,
  sources: Iterable<number>,
  steps: readonly Step[],
): Uint8Array {
  const next: number[][] = Array.from({ length: nodeCount }, () => []);
  for (const { from, to } of steps) next[from]!.push(to);
  const reached = new Uint8Array(nodeCount);
  const queue: number[] = [];
  for (const source of sources) {
    if (!reached[source]) {
      reached[source] = 1;
      queue.push(source);
    }
  }
  while (queue.length > 0) {
    for (const to of next[queue.pop()!]!) {
      if (reached[to]) continue;
      reached[to] = 1;
      queue.push(to);
    }
  }
  return reached;
}
