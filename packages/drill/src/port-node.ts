import { type Plan, type PortRef, piecesOf, splitPortRef } from '@plugside/fireground';

/** Height of a port [ft]. */
export function portElevationFt(plan: Plan, ref: PortRef): number {
  const { pieceId, port } = splitPortRef(ref);
  const piece = piecesOf(plan).find((one) => one.id === pieceId);
  if (!piece) return 0;
  if ('waterElevationFt' in piece) return piece.waterElevationFt;
  if ('outletElevationFt' in piece && port.startsWith('outlet')) return piece.outletElevationFt;
  return piece.elevationFt;
}

/** The node behind a port: each valved port has its own, ports without a valve share their chamber's. */
export function nodeOfPort(port: PortRef): string {
  const { pieceId, port: name } = splitPortRef(port);
  return name === 'outlet' || name === 'tip' ? `${pieceId}:out` : port;
}
