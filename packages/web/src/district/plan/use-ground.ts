import { type ElevationAt, terrainAlong } from '@plugside/records/planning';
import type { LonLat, Place, Route } from '@plugside/records/streets';
import { useEffect, useState } from 'react';
import { groundAt } from '../../api/elevation.ts';

const keyOf = (longitude: number, latitude: number): string => `${longitude},${latitude}`;

/** The places whose heights a plan along this route asks for. */
export function placesOnRoute(route: Route, ends: readonly Place[]): LonLat[] {
  const places: LonLat[] = ends.map(({ longitude, latitude }) => [longitude, latitude]);
  terrainAlong(route.path, route.lengthFt, { startFt: 0, endFt: 0 }, (longitude, latitude) => {
    places.push([longitude, latitude]);
    return undefined;
  });
  return places;
}

/**
 * Ground along a route, from the terrain that the server has loaded; undefined while it is being
 * read, and where there is none.
 * @param ends hydrant and building
 */
export function useGround(
  hasTerrain: boolean,
  route: Route,
  hydrant: Place,
  building: Place,
): ElevationAt | undefined {
  const [ground, setGround] = useState<{ route: Route; at: ElevationAt } | null>(null);
  useEffect(() => {
    if (!hasTerrain) return;
    const stop = new AbortController();
    const places = placesOnRoute(route, [hydrant, building]);
    groundAt(places, stop.signal).then(
      (heights) => {
        const known = new Map(
          places.map((place, index) => [keyOf(...place), heights[index] ?? undefined]),
        );
        const at: ElevationAt = (longitude, latitude) => known.get(keyOf(longitude, latitude));
        setGround({ route, at });
      },
      // Without it the plan takes the records' heights, and says so where they are missing.
      () => {},
    );
    return () => stop.abort();
  }, [hasTerrain, route, hydrant, building]);
  return ground?.route === route ? ground.at : undefined;
}
