/** Points that a lay goes by, found from streets' names. */
import { crowFt, type LonLat, type Place } from '@plugside/records/streets';
import type { District } from '../district.ts';

type Streets = District['streets'];

const at = ({ longitude, latitude }: Place): LonLat => [longitude, latitude];

/** The vertex of a named street that is nearest to a path; null where no street has the name. */
export function nearestOn(streets: Streets, name: string, path: readonly LonLat[]): Place | null {
  let best: { place: Place; ft: number } | null = null;
  for (const { geometry, properties } of streets) {
    if (properties.name !== name) continue;
    for (const [a, b] of pairs(geometry.coordinates)) {
      // The middle of a piece, not its end: a corner lies on the other street as well.
      const middle: LonLat = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      const ft = Math.min(...path.map((place) => crowFt(middle, place)));
      if (!best || ft < best.ft) {
        best = { place: { longitude: middle[0], latitude: middle[1] }, ft };
      }
    }
  }
  return best?.place ?? null;
}

/** Where among those between the ends a place adds least to the way, as the crow flies. */
export function bestIndex(points: readonly Place[], place: Place): number {
  let best = { index: 0, addedFt: Number.POSITIVE_INFINITY };
  for (let i = 1; i < points.length; i += 1) {
    const [a, b] = [at(points[i - 1]!), at(points[i]!)];
    const addedFt = crowFt(a, at(place)) + crowFt(at(place), b) - crowFt(a, b);
    if (addedFt < best.addedFt) best = { index: i - 1, addedFt };
  }
  return best.index;
}

/** The street that a place is on or nearest to, by its pieces' middles and ends. */
export function streetNameAt(streets: Streets, place: Place): string {
  let best = { name: 'a point off the streets', ft: Number.POSITIVE_INFINITY };
  for (const { geometry, properties } of streets) {
    for (const [a, b] of pairs(geometry.coordinates)) {
      const ft = offPieceFt(a, b, at(place));
      if (ft < best.ft) best = { name: properties.name || 'an unnamed street', ft };
    }
  }
  return best.name;
}

function* pairs(path: readonly LonLat[]): Iterable<readonly [LonLat, LonLat]> {
  for (let i = 1; i < path.length; i += 1) yield [path[i - 1]!, path[i]!];
}

/** From a place to the nearest point of a straight piece [ft]. */
function offPieceFt(a: LonLat, b: LonLat, place: LonLat): number {
  const shrink = Math.cos((place[1] * Math.PI) / 180);
  const [x, y] = [(b[0] - a[0]) * shrink, b[1] - a[1]];
  const [px, py] = [(place[0] - a[0]) * shrink, place[1] - a[1]];
  const long = x * x + y * y;
  const share = long === 0 ? 0 : Math.min(1, Math.max(0, (px * x + py * y) / long));
  return crowFt(place, [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
}
