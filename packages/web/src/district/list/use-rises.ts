import type { Stored } from '@plugside/records/model';
import { useEffect, useState } from 'react';
import { groundAt } from '../../api/elevation.ts';
import type { MapHydrant } from '../district.ts';
import type { NearHydrant } from '../streets/messages.ts';

/**
 * How far hose climbs from each hydrant to a building [ft], by id; null where it is not known. By the
 * records' heights, else by the ground at both ends where a terrain is loaded.
 */
export function useRises(
  building: Stored<'buildings'>,
  near: readonly NearHydrant[],
  hydrants: ReadonlyMap<string, MapHydrant>,
): (id: string) => number | null {
  const [ground, setGround] = useState<ReadonlyMap<string, number | null>>(new Map());
  useEffect(() => {
    const asked = near.flatMap(({ id }) => hydrants.get(id) ?? []);
    const { elevationFt } = building;
    if (elevationFt !== undefined && asked.every((one) => one.elevationFt !== null)) return;
    const stop = new AbortController();
    const places = [building, ...asked].map(
      ({ longitude, latitude }) => [longitude, latitude] as const,
    );
    groundAt(places, stop.signal).then(
      ([atBuilding = null, ...heights]) => {
        const rises = asked.map(({ id }, index) => {
          const from = heights[index] ?? null;
          return [id, atBuilding === null || from === null ? null : atBuilding - from] as const;
        });
        setGround(new Map(rises));
      },
      // The list does without, and says that the rise is not known.
      () => {},
    );
    return () => stop.abort();
  }, [building, near, hydrants]);
  return (id) => {
    const from = hydrants.get(id)?.elevationFt ?? null;
    const own = building.elevationFt ?? null;
    return own !== null && from !== null ? own - from : (ground.get(id) ?? null);
  };
}
