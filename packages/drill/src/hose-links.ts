import { addNode, type PortRef } from '@plugside/fireground';
import type { LinkSpec } from '@plugside/hydraulics';
import { inEffect } from './fault.ts';
import type { Making } from './making.ts';
import { nodeOfPort, portElevationFt } from './port-node.ts';
import type { HoseState } from './state.ts';

/** A hose: a link while it is full, else an opening to the air at each end that is coupled. */
export function addHose({ scene, state, draft }: Making, hose: HoseState, at: number): void {
  const { coefficient, lengthFt, count } = scene.hoses[at]!;
  const line = scene.plan.lines.find((one) => one.id === hose.id);
  const end = (port: PortRef) => {
    const node = nodeOfPort(port);
    if (!draft.nodes.has(node)) addNode(draft, node, portElevationFt(scene.plan, port));
    return node;
  };
  if (hose.phase === 'full' && hose.from.port !== null && hose.to.port !== null) {
    const kinked = state.faults.find(
      (fault) => fault.kind === 'hose kinked' && fault.hose === hose.id && inEffect(state, fault),
    );
    const factor = kinked?.kind === 'hose kinked' ? kinked.factor : 1;
    const link: LinkSpec = {
      kind: 'hose',
      id: `${hose.id}:hose`,
      from: end(hose.from.port),
      to: end(hose.to.port),
      coefficient: coefficient * factor,
      lengthFt,
      lines: count,
    };
    if (line?.check) link.check = true;
    draft.links.push(link);
    return;
  }
  for (const side of ['from', 'to'] as const) {
    const { port } = hose[side];
    if (port === null) continue;
    if (line?.check && side === 'to') continue;
    const node = end(port);
    const elevationFt = draft.nodes.get(node)!.elevationFt ?? 0;
    const air = addNode(draft, `${hose.id}:air-${side}`, elevationFt, { fixedPsi: 0 });
    // The loss is set before every solve.
    draft.links.push({
      kind: 'loss',
      id: `${hose.id}:${side}`,
      from: node,
      to: air,
      lossPsi: 1,
      atGpm: 100,
      check: true,
    });
  }
}
