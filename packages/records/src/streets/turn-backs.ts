/** Where a lay comes back the way it went. */
import { crowFt, type LonLat } from './ellipsoid.ts';

/** A place between the ends that the lay leaves by the way it came. */
export interface TurnBack {
  /** Among the places that the lay was asked to go through. */
  point: number;
  /** How far back it is laid beside itself, one way [ft]. */
  backFt: number;
  /** How much of that is off the street [ft]. */
  offStreetFt: number;
}

/** Two ways part where they are farther from one line than this [ft]. */
const ASIDE_FT = 0.05;

/**
 * How far the way from a place runs beside the way to it [ft].
 * @param to ends at the place
 * @param from begins there
 */
export function sharedFt(to: readonly LonLat[], from: readonly LonLat[]): number {
  const back = [...to].reverse();
  let sharedSoFarFt = 0;
  for (let i = 1; i < back.length && i < from.length; i += 1) {
    const [here, a, b] = [back[i - 1]!, back[i]!, from[i]!];
    const [aFt, bFt, apartFt] = [crowFt(here, a), crowFt(here, b), crowFt(a, b)];
    if (apartFt < ASIDE_FT) {
      sharedSoFarFt += aFt;
      continue;
    }
    // One ends on the other's straight piece, or they part here.
    const together = Math.abs(aFt - bFt) + ASIDE_FT >= apartFt;
    return together ? sharedSoFarFt + Math.min(aFt, bFt) : sharedSoFarFt;
  }
  return sharedSoFarFt;
}
