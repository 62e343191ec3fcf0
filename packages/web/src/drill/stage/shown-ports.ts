import type { DrillScene, DrillView } from '@plugside/drill';
import { type PortRef, splitPortRef } from '@plugside/fireground';

/**
 * The ports worth drawing: those that the plan or a hose uses, those whose valve is open, and one spare
 * of each kind on every engine, so that there is a wrong one to choose. All of them where asked for.
 */
export function shownPorts(scene: DrillScene, view: DrillView, all: boolean): Set<PortRef> {
  const ports = view.ports.map(({ port }) => port);
  if (all) return new Set(ports);
  const planned = new Set(scene.plan.lines.flatMap(({ from, to }) => [from, to]));
  const open = new Set(view.valves.filter(({ opening }) => opening > 0).map(({ id }) => id));
  const rigs = new Set(scene.plan.rigs.map(({ id }) => id));
  const spared = new Set<string>();
  const shown = new Set<PortRef>();
  for (const { port, hose } of view.ports) {
    const { pieceId, port: name } = splitPortRef(port);
    const isSide = name.startsWith('side');
    if (planned.has(port) || hose !== null || open.has(port)) shown.add(port);
    else if (rigs.has(pieceId)) {
      const kind = `${pieceId}.${name.replace(/\d+$/, '')}`;
      if (!spared.has(kind)) shown.add(port);
      spared.add(kind);
    } else if (!isSide) shown.add(port);
  }
  return shown;
}
