import { FLAT_SLOPE, WALL_SLOPE } from './constants.ts';

/**
 * Net pressure [psi] a pump can add at a flow, from points on flat arrays scaled by speed:
 * straight lines between points, the first line carried back below its first flow, a steep wall
 * past the last one. `start`/`count` pick the pump's points; `speed` scales flow by s and pressure by s².
 */
export function capabilityPsi(
  flows: Float64Array,
  nets: Float64Array,
  start: number,
  count: number,
  speed: number,
  flowGpm: number,
): number {
  const at = flowGpm / speed;
  const end = start + count - 1;
  const square = speed * speed;
  if (at >= flows[end]!) return square * nets[end]! - WALL_SLOPE * (flowGpm - flows[end]! * speed);
  let k = start;
  while (k < end - 1 && at > flows[k + 1]!) k++;
  const slope = (nets[k + 1]! - nets[k]!) / (flows[k + 1]! - flows[k]!);
  return square * (nets[k]! + slope * (at - flows[k]!));
}

/** Slope of `capabilityPsi` [psi/gpm], never quite 0 so that a flat stretch can still be solved. */
export function capabilitySlope(
  flows: Float64Array,
  nets: Float64Array,
  start: number,
  count: number,
  speed: number,
  flowGpm: number,
): number {
  const at = flowGpm / speed;
  const end = start + count - 1;
  if (at >= flows[end]!) return -WALL_SLOPE;
  let k = start;
  while (k < end - 1 && at > flows[k + 1]!) k++;
  const slope = (speed * (nets[k + 1]! - nets[k]!)) / (flows[k + 1]! - flows[k]!);
  return Math.min(slope, -FLAT_SLOPE);
}

/** Greatest flow [gpm] at which a pump can still add `netPsi`; 0 where it cannot at all. */
export function flowAtNetGpm(
  flows: Float64Array,
  nets: Float64Array,
  start: number,
  count: number,
  speed: number,
  netPsi: number,
): number {
  const end = start + count - 1;
  const net = netPsi / (speed * speed);
  if (net > nets[start]!) return 0;
  if (net <= nets[end]!) return flows[end]! * speed;
  let k = start;
  while (k < end - 1 && net <= nets[k + 1]!) k++;
  const fall = nets[k]! - nets[k + 1]!;
  const part = fall > 0 ? (nets[k]! - net) / fall : 1;
  return (flows[k]! + part * (flows[k + 1]! - flows[k]!)) * speed;
}
