/** Where the invented district lies, its ground, and its river. */
import { feetPerDegree, type LonLat } from '../streets/ellipsoid.ts';

/** [ft] east and north of the town's middle. */
export type Point = readonly [eastFt: number, northFt: number];

/**
 * In the South Pacific, near the point of the ocean that is farthest from any land (48.88° S,
 * 123.39° W): no town can be mistaken for it, and none can be mistaken for a real one.
 */
export const districtCentre = { longitude: -123.39, latitude: -48.88 };

/** [ft/degree] */
export const feetPerDegreeHere = feetPerDegree(districtCentre.latitude);
const scale = feetPerDegreeHere;
const SEVENTH = 1e7;

/** Degrees to the seventh decimal, about 3 mm, so that every machine writes the same. */
export function lonLatOf([eastFt, northFt]: Point): [longitude: number, latitude: number] {
  return [
    Math.round((districtCentre.longitude + eastFt / scale.longitude) * SEVENTH) / SEVENTH,
    Math.round((districtCentre.latitude + northFt / scale.latitude) * SEVENTH) / SEVENTH,
  ];
}

function pointOf([longitude, latitude]: LonLat): Point {
  return [
    (longitude - districtCentre.longitude) * scale.longitude,
    (latitude - districtCentre.latitude) * scale.latitude,
  ];
}

/** Middle of the river at a distance east [ft north]. */
export function riverNorthFt(eastFt: number): number {
  return -2420 + 170 * Math.sin(eastFt / 2600) + 60 * Math.sin(eastFt / 900 + 1);
}
export const riverWidthFt = 130;
export const riverElevationFt = 28;

/** Middle of the pond and its radius [ft]. */
export const pond = { at: [-5750, 4350] as Point, radiusFt: 330, elevationFt: 96 };

const bell = (distance: number, width: number) => Math.exp(-((distance / width) ** 2));

/** Height of the ground [ft] above the district's own zero, to a tenth. */
export function groundFt([east, north]: Point): number {
  const plain = 82 + 5 * Math.sin(east / 1500) + 4 * Math.sin(north / 1100 + east / 2700);
  const hill = 74 * bell(Math.hypot((east + 200) / 1.5, north - 3250), 1250);
  const knoll = 22 * bell(Math.hypot(east + 4700, north - 900), 1100);
  const industrial = -24 * bell(Math.hypot(east - 3900, (north + 200) / 0.8), 1700);
  const valley = -46 * bell(north - riverNorthFt(east), 900);
  const height = plain + hill + knoll + industrial + valley;
  return Math.round(Math.max(height, riverElevationFt + 1) * 10) / 10;
}

/** The ground is known so far from the middle [ft]. */
export const demoReachFt = 20_000;

/** Height of the invented district's ground [ft]; undefined a few miles away from it. */
export function demoElevationFt(longitude: number, latitude: number): number | undefined {
  const point = pointOf([longitude, latitude]);
  return Math.hypot(...point) > demoReachFt ? undefined : groundFt(point);
}

/** Whether a place is in the river or the pond, or within a margin [ft] of them. */
export function inWater([east, north]: Point, marginFt: number): boolean {
  const river = Math.abs(north - riverNorthFt(east)) < riverWidthFt / 2 + marginFt;
  return river || Math.hypot(east - pond.at[0], north - pond.at[1]) < pond.radiusFt + marginFt;
}
