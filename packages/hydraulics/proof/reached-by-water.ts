import type { NetworkSpec } from '@plugside/hydraulics';

/** Nodes that water can reach from a fixed pressure or an inflow, with valves as they stand; checks and pumps one way. */
export function reachedByWater(spec: NetworkSpec): Set<string> {
  const reached = new Set<string>();
  for (const node of spec.nodes) {
    if (node.fixedPsi !== undefined || (node.demandGpm ?? 0) < 0) reached.add(node.id);
  }
  let grew = true;
  while (grew) {
    const before = reached.size;
    for (const link of spec.links) {
      if (link.shut || !('to' in link)) continue;
      if (reached.has(link.from)) reached.add(link.to);
      else if (link.kind !== 'pump' && !link.check && reached.has(link.to)) reached.add(link.from);
    }
    grew = reached.size > before;
  }
  return reached;
}
