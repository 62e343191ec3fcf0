import { addNode, type PortRef, splitPortRef } from '@plugside/fireground';
import { type Making, openLoss, valveIndex, valveOn } from './making.ts';
import { nodeOfPort } from './port-node.ts';
import { boreK } from './valve-loss.ts';

/** Outlets that share a chamber, each behind its own gate. */
export function gateOutlets(making: Making, id: string, elevationFt: number): void {
  const { scene, draft, used } = making;
  for (const valve of scene.valves) {
    if (valve.pieceId !== id || valve.kind !== 'appliance gate' || !used(valve.id)) continue;
    const out = draft.nodes.get(`${id}:out`);
    const node = addNode(draft, valve.id, out?.elevationFt ?? elevationFt);
    draft.links.push(openLoss(`${valve.id}:gate`, `${id}:out`, node));
    valveOn(making, `${valve.id}:gate`, valve.id);
  }
}

/** A nozzle's bale: the opening shrinks with it, and an automatic nozzle stands behind it. */
export function valveOnNozzle({ scene, draft, valved }: Making, id: string): void {
  const tip = draft.links.find((link) => link.id === `${id}:tip`);
  const valve = valveIndex(scene, `${id}.bale`);
  if (!tip || valve < 0) return;
  tip.shut = false;
  const { boreIn } = scene.valves[valve]!;
  if (tip.kind === 'nozzle') valved.push({ link: tip.id, valve, baseK: 0, boreIn, openK: tip.k });
  else valved.push({ link: `${id}:bale`, valve, baseK: 0, boreIn });
}

/** A port that a hose was taken off pours out while its valve is open, unless a clapper or check holds it. */
export function addOpenPort({ scene, draft }: Making, port: PortRef): void {
  const node = nodeOfPort(port);
  const { port: name } = splitPortRef(port);
  if (!draft.nodes.has(node) || name.startsWith('inlet') || name === 'pump-discharge') return;
  if (name.startsWith('intake')) return;
  const boreIn = scene.valves.find((valve) => valve.id === port)?.boreIn ?? 4;
  draft.links.push({ kind: 'nozzle', id: `${port}:open`, from: node, k: 0.9 * boreK(boreIn) });
}
