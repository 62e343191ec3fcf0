import { type Plan, type PortRef, piecesOf, splitPortRef } from '@plugside/fireground';

/** By plan, which never changes in a drill: asked for in every tick. */
const known = new WeakMap<Plan, Map<PortRef, number>>();

/** Height of a port [ft]. */
export function portElevationFt(plan: Plan, ref: PortRef): number {
  let heightsFt = known.get(plan);
  if (!heightsFt) {
    heightsFt = new Map();
    known.set(plan, heightsFt);
  }
  const before = heightsFt.get(ref);
  if (before !== undefined) return before;
  const heightFt = elevationOf(plan, ref);
  heightsFt.set(ref, heightFt);
  return heightFt;
}

function elevationOf(plan: Plan, ref: PortRef): number {
  const { pieceId, port } = splitPortRef(ref);
  const piece = piecesOf(plan).find((one) => one.id === pieceId);
  if (!piece) return 0;
  if ('waterElevationFt' in piece) return piece.waterElevationFt;
  if ('outletElevationFt' in piece && port.startsWith('outlet')) return piece.outletElevationFt;
  return piece.elevationFt;
}

/** The node behind a port: each valved port has its own, ports without a valve share their chamber's. */
export function nodeOfPort(port: PortRef): string {
  if (!port.endsWith('.outlet') && !port.endsWith('.tip')) return port;
  return `${splitPortRef(port).pieceId}:out`;
}
