/** For tests: places given in feet east and north of a corner, and streets through them. */
import { feetPerDegree, type LonLat, type Place } from './ellipsoid.ts';
import type { StreetLine } from './street-graph.ts';

// On the equator, where a plane in feet fits best.
const corner = { longitude: -30, latitude: 0 };
const scale = feetPerDegree(corner.latitude);

/** A place so many feet east and north of the corner. */
export function at(eastFt: number, northFt: number): Place {
  return {
    longitude: corner.longitude + eastFt / scale.longitude,
    latitude: corner.latitude + northFt / scale.latitude,
  };
}

/** A street through places in feet. */
export function street(...places: (readonly [eastFt: number, northFt: number])[]): StreetLine {
  return {
    path: places.map(([east, north]): LonLat => {
      const { longitude, latitude } = at(east, north);
      return [longitude, latitude];
    }),
  };
}

/** A square grid of streets, `blocks` by `blocks`, with every crossing a shared vertex. */
export function grid(blocks: number, blockFt: number): StreetLine[] {
  const stops = Array.from({ length: blocks + 1 }, (_, i) => i * blockFt);
  return [
    ...stops.map((north) => street(...stops.map((east) => [east, north] as const))),
    ...stops.map((east) => street(...stops.map((north) => [east, north] as const))),
  ];
}
