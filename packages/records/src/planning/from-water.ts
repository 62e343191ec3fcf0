import { crowFt, type LonLat, type Place } from '../streets/ellipsoid.ts';

/** A route's places beginning at the water, whichever way it was drawn. */
export function fromWater(
  path: readonly LonLat[],
  { longitude, latitude }: Place,
): readonly LonLat[] {
  const here: LonLat = [longitude, latitude];
  const [first, last] = [path[0]!, path[path.length - 1]!];
  return crowFt(here, first) <= crowFt(here, last) ? path : [...path].reverse();
}
