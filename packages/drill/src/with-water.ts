import type { LinkSpec, NetworkSpec } from '@plugside/hydraulics';

/** Whether a fixed node can give water: the air at a hose's front cannot. */
function gives(node: { id: string; fixedPsi?: number }): boolean {
  return node.fixedPsi !== undefined && !node.id.includes(':air-');
}

/**
 * The part of a network that water can get to with every valve open: the solver takes no other.
 * @returns undefined where there is none
 */
export function withWater(spec: NetworkSpec): NetworkSpec | undefined {
  const wet = new Set(spec.nodes.filter(gives).map((node) => node.id));
  const oneWay = (link: LinkSpec) => link.kind === 'pump' || ('check' in link && link.check);
  for (let grown = true; grown; ) {
    grown = false;
    for (const link of spec.links) {
      if (!('to' in link)) continue;
      const from = wet.has(link.from);
      const to = wet.has(link.to);
      if (from && !to) wet.add(link.to);
      else if (to && !from && !oneWay(link)) wet.add(link.from);
      else continue;
      grown = true;
    }
  }
  const nodes = spec.nodes.filter((node) => wet.has(node.id));
  const links = spec.links.filter(
    (link) => wet.has(link.from) && (!('to' in link) || wet.has(link.to)),
  );
  return links.length > 0 ? { nodes, links } : undefined;
}
