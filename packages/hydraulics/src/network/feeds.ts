/** Whether water can get everywhere with every valve open, and whether fixed pressures agree. */
import { PSI_PER_FT } from './constants.ts';
import { NetworkError } from './network-error.ts';
import { reachable, type Step } from './reach.ts';
import type { LinkSpec, NetworkSpec } from './spec.ts';

/** Steps that water can take along a link: both ways, or one way through a check or a pump. */
export function stepsOf(link: LinkSpec, nodeAt: ReadonlyMap<string, number>): Step[] {
  if (!('to' in link)) return [];
  const from = nodeAt.get(link.from)!;
  const to = nodeAt.get(link.to)!;
  const oneWay = link.kind === 'pump' || link.check;
  return oneWay
    ? [{ from, to }]
    : [
        { from, to },
        { from: to, to: from },
      ];
}

/** @throws NetworkError when nothing feeds the network, or water cannot get to a part of it with every valve open */
export function checkReach(spec: NetworkSpec, nodeAt: ReadonlyMap<string, number>): void {
  const sources: number[] = [];
  spec.nodes.forEach((node, at) => {
    if (node.fixedPsi !== undefined || (node.demandGpm ?? 0) < 0) sources.push(at);
  });
  if (sources.length === 0) {
    throw new NetworkError(
      'no source',
      'Nothing feeds this network: no node has a fixed pressure. Add a hydrant, a draft source or a tank.',
      [],
    );
  }
  const steps = spec.links.flatMap((link) => stepsOf(link, nodeAt));
  const wet = reachable(spec.nodes.length, sources, steps);
  for (const link of spec.links) {
    if (link.kind !== 'pump' || wet[nodeAt.get(link.from)!]) continue;
    throw new NetworkError(
      'pump fed by nothing',
      `Pump "${link.id}" is fed by nothing: no source reaches its intake "${link.from}". Join its intake to a hydrant, a draft source, a tank or another pump's discharge.`,
      [link.id],
    );
  }
  const dry = spec.nodes.filter((_, at) => !wet[at]).map((node) => node.id);
  if (dry.length === 0) return;
  const named = dry.slice(0, 5).map((id) => `"${id}"`);
  const more = dry.length > 5 ? ` and ${dry.length - 5} more` : '';
  throw new NetworkError(
    'disconnected part',
    `No water can reach ${named.join(', ')}${more}. Join the part to a source, or turn a check the other way.`,
    dry,
  );
}

/** @throws NetworkError where links without loss join two different fixed pressures */
export function checkFixed(spec: NetworkSpec, nodeAt: ReadonlyMap<string, number>): void {
  const group = spec.nodes.map((_, at) => at);
  const find = (at: number): number => {
    let root = at;
    while (group[root] !== root) root = group[root]!;
    group[at] = root;
    return root;
  };
  for (const link of spec.links) {
    const lossless =
      (link.kind === 'hose' && (link.coefficient === 0 || link.lengthFt === 0)) ||
      (link.kind === 'loss' && link.lossPsi === 0);
    if (lossless && !link.shut && !link.check) {
      group[find(nodeAt.get(link.from)!)] = find(nodeAt.get(link.to)!);
    }
  }
  const held = new Map<number, { id: string; headPsi: number }>();
  spec.nodes.forEach((node, at) => {
    if (node.fixedPsi === undefined) return;
    const headPsi = node.fixedPsi + PSI_PER_FT * (node.elevationFt ?? 0);
    const other = held.get(find(at));
    if (other && Math.abs(other.headPsi - headPsi) > 1e-9) {
      throw new NetworkError(
        'conflicting fixed pressures',
        `"${other.id}" and "${node.id}" are fixed at different pressures and joined with no loss between. Give the link a loss or free one of them.`,
        [other.id, node.id],
      );
    }
    held.set(find(at), { id: node.id, headPsi });
  });
}
