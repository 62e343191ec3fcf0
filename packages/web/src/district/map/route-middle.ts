import { crowFt, type LonLat, pathFt } from '@plugside/records/streets';

/** The place half way along a path; its first place where it has no length. */
export function middleOf(path: readonly LonLat[]): LonLat {
  let leftFt = pathFt(path) / 2;
  for (let at = 1; at < path.length; at += 1) {
    const [a, b] = [path[at - 1]!, path[at]!];
    const pieceFt = crowFt(a, b);
    if (pieceFt > 0 && leftFt <= pieceFt) {
      const share = leftFt / pieceFt;
      return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
    }
    leftFt -= pieceFt;
  }
  return path[0] ?? [0, 0];
}
