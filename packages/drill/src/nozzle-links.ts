import { addNode, type Draft, type Nozzle, nozzleK, type Plan } from '@plugside/fireground';
import { nodeOfPort, portElevationFt } from './port-node.ts';

/** A nozzle where its hose or appliance brings water; an automatic one behind its bale. */
export function nozzleLinks(draft: Draft, plan: Plan, nozzle: Nozzle): void {
  const port = nozzle.on ?? `${nozzle.id}.inlet`;
  const node = nodeOfPort(port);
  if (!draft.nodes.has(node)) return;
  const { elevationFt } = nozzle;
  const tip = `${nozzle.id}:tip`;
  if (nozzle.kind !== 'automatic') {
    draft.links.push({ kind: 'nozzle', id: tip, from: node, k: nozzleK(nozzle), elevationFt });
    return;
  }
  const behind = addNode(draft, `${nozzle.id}:behind`, portElevationFt(plan, port));
  const { ratedPsi, leastGpm, greatestGpm } = nozzle;
  draft.links.push(
    { kind: 'loss', id: `${nozzle.id}:bale`, from: node, to: behind, lossPsi: 0, atGpm: 1000 },
    {
      kind: 'automaticNozzle',
      id: tip,
      from: behind,
      ratedPsi,
      leastGpm,
      greatestGpm,
      elevationFt,
    },
  );
}
