/**
 * Lengths on the WGS 84 ellipsoid at the scale of a town: a plane fitted to the ellipsoid at
 * the middle latitude of each piece. A piece of a few miles is good to parts in a million.
 */

/** [longitude, latitude] in degrees. */
export type LonLat = readonly [longitude: number, latitude: number];

/** A place by its fields, as records have it. */
export interface Place {
  longitude: number;
  latitude: number;
}

/** Semi-major axis [m] and flattening: "Department of Defense World Geodetic System 1984", NGA.STND.0036, table 3.1. */
const SEMI_MAJOR_M = 6378137;
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);
/** International foot [m]. */
const FOOT_M = 0.3048;
const RADIANS = Math.PI / 180;

/**
 * Length of one degree of longitude and of latitude at a latitude [ft/degree], by the radii of
 * curvature in the prime vertical and in the meridian: N = a/√(1 − e² sin²φ) and
 * M = a(1 − e²)/(1 − e² sin²φ)^1.5 ("Map Projections: A Working Manual", USGS Professional
 * Paper 1395, equations 4-20 and 4-18).
 */
export function feetPerDegree(latitude: number): { longitude: number; latitude: number } {
  const sine = Math.sin(latitude * RADIANS);
  const w = 1 - ECCENTRICITY_SQUARED * sine * sine;
  const primeVertical = SEMI_MAJOR_M / Math.sqrt(w);
  const meridian = (primeVertical * (1 - ECCENTRICITY_SQUARED)) / w;
  return {
    longitude: (primeVertical * Math.cos(latitude * RADIANS) * RADIANS) / FOOT_M,
    latitude: (meridian * RADIANS) / FOOT_M,
  };
}

/** A longitude brought to within half a turn of another, so that a town may lie across 180°. */
export function nearLongitude(longitude: number, reference: number): number {
  const turns = Math.round((longitude - reference) / 360);
  return longitude - 360 * turns;
}

/** As a record has it: −180 to 180. */
export function plainLongitude(longitude: number): number {
  return nearLongitude(longitude, 0);
}

/**
 * As the crow flies between two places [ft], by the radii at their middle latitude. Within
 * 0.001 % up to 30 miles away from the poles; not for longer.
 */
export function crowFt(a: LonLat, b: LonLat): number {
  const scale = feetPerDegree((a[1] + b[1]) / 2);
  return Math.hypot(
    (nearLongitude(b[0], a[0]) - a[0]) * scale.longitude,
    (b[1] - a[1]) * scale.latitude,
  );
}

/** Along a line of places [ft]. */
export function pathFt(path: readonly LonLat[]): number {
  let total = 0;
  for (let i = 1; i < path.length; i += 1) total += crowFt(path[i - 1]!, path[i]!);
  return total;
}
