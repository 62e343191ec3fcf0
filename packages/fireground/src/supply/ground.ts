/** Heights along a lay. */
import type { LayGround } from './situation.ts';

/** A lay's ground with the heights of its two ends [ft]: the water's or the pump's, and the scene's. */
export interface GroundLine extends LayGround {
  fromElevationFt: number;
  toElevationFt: number;
}

export interface GroundPoint {
  alongFt: number;
  elevationFt: number;
}

/** Ends and heights between, in order from the water. */
export function groundPoints(ground: GroundLine): GroundPoint[] {
  const between = (ground.terrain ?? [])
    .filter(({ alongFt }) => alongFt > 0 && alongFt < ground.lengthFt)
    .sort((one, two) => one.alongFt - two.alongFt);
  return [
    { alongFt: 0, elevationFt: ground.fromElevationFt },
    ...between,
    { alongFt: ground.lengthFt, elevationFt: ground.toElevationFt },
  ];
}

/** Height of the ground at a distance from the water [ft], straight between the points known. */
export function elevationAtFt(ground: GroundLine, alongFt: number): number {
  const points = groundPoints(ground);
  const after = points.findIndex((point) => point.alongFt >= alongFt);
  if (after <= 0) return after < 0 ? ground.toElevationFt : points[0]!.elevationFt;
  const [low, high] = [points[after - 1]!, points[after]!];
  const share = (alongFt - low.alongFt) / (high.alongFt - low.alongFt);
  return low.elevationFt + share * (high.elevationFt - low.elevationFt);
}

/** Heights strictly between two distances, measured from the first of them, as a line's `terrain`. */
export function terrainBetween(
  ground: GroundLine,
  fromFt: number,
  toFt: number,
): GroundPoint[] | undefined {
  const points = (ground.terrain ?? [])
    .filter(({ alongFt }) => alongFt > fromFt && alongFt < toFt)
    .sort((one, two) => one.alongFt - two.alongFt)
    .map(({ alongFt, elevationFt }) => ({ alongFt: alongFt - fromFt, elevationFt }));
  return points.length > 0 ? points : undefined;
}
