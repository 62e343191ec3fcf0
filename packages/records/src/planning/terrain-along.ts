import { crowFt, type LonLat, pathFt } from '../streets/ellipsoid.ts';

/** Height of the ground [ft] at a place; undefined where it is not known. */
export type ElevationAt = (longitude: number, latitude: number) => number | undefined;

export interface TerrainPoint {
  alongFt: number;
  elevationFt: number;
}

/** Closer than this, SRTM and most elevation models say nothing new [ft]. */
const SAMPLE_FT = 50;
/** A point is kept where leaving it out would move the ground by more [ft]; 2 ft are under 1 psi. */
const KEEP_FT = 2;

/**
 * Heights between the ends of a lay, as few as show the ground to 2 ft. The ground is tilted to
 * meet the heights of the ends, so that a record's height and a model's need not agree. Empty
 * where a height along the way is not known.
 *
 * @param path from the lay's start to its end
 * @param lengthFt of the lay [ft], which may differ from the path's
 */
export function terrainAlong(
  path: readonly LonLat[],
  lengthFt: number,
  ends: { startFt: number; endFt: number },
  elevationAt: ElevationAt,
): TerrainPoint[] {
  const totalFt = pathFt(path);
  if (!(totalFt > SAMPLE_FT)) return [];
  const count = Math.max(2, Math.round(totalFt / SAMPLE_FT));
  const shares = Array.from({ length: count + 1 }, (_, i) => i / count);
  const ground = placesAlong(path, shares, totalFt).map((place) => elevationAt(...place));
  if (!ground.every((height) => height !== undefined)) return [];
  const atStart = ends.startFt - ground[0]!;
  const atEnd = ends.endFt - ground[count]!;
  const profile = shares.map((share, i) => ({
    alongFt: share * lengthFt,
    elevationFt: ground[i]! + (1 - share) * atStart + share * atEnd,
  }));
  return fewest(profile)
    .slice(1, -1)
    .map(({ alongFt, elevationFt }) => ({
      alongFt: Math.round(alongFt),
      elevationFt: Math.round(elevationFt * 10) / 10,
    }));
}

function placesAlong(path: readonly LonLat[], shares: readonly number[], totalFt: number) {
  const places: LonLat[] = [];
  let piece = 1;
  let before = 0;
  for (const share of shares) {
    const wanted = share * totalFt;
    let pieceFt = crowFt(path[piece - 1]!, path[piece]!);
    while (before + pieceFt < wanted && piece < path.length - 1) {
      before += pieceFt;
      piece += 1;
      pieceFt = crowFt(path[piece - 1]!, path[piece]!);
    }
    const within = pieceFt > 0 ? Math.min(1, (wanted - before) / pieceFt) : 0;
    const [a, b] = [path[piece - 1]!, path[piece]!];
    places.push([a[0] + within * (b[0] - a[0]), a[1] + within * (b[1] - a[1])]);
  }
  return places;
}

/** Drops what lies on a straight line of what stays ("Algorithms for the reduction of the number of points required to represent a digitized line", Douglas and Peucker, 1973; height instead of distance). */
function fewest(points: readonly TerrainPoint[]): TerrainPoint[] {
  const [first, last] = [points[0]!, points[points.length - 1]!];
  let worst = 0;
  let off = KEEP_FT;
  points.forEach(({ alongFt, elevationFt }, i) => {
    const share = (alongFt - first.alongFt) / (last.alongFt - first.alongFt);
    const straight = first.elevationFt + share * (last.elevationFt - first.elevationFt);
    if (Math.abs(elevationFt - straight) > off) {
      worst = i;
      off = Math.abs(elevationFt - straight);
    }
  });
  if (worst === 0) return [first, last];
  return [...fewest(points.slice(0, worst + 1)), ...fewest(points.slice(worst)).slice(1)];
}
