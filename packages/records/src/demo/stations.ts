import type { FieldsIn } from '../model/index.ts';
import { lonLatOf, type Point } from './ground.ts';
import { bent } from './town-map.ts';

const wanted: readonly { name: string; near: Point }[] = [
  { name: 'Station 1', near: [360, -160] },
  { name: 'Station 2', near: [-3600, 480] },
];

/** Turns the building nearest to each wanted place into a fire station. */
export function placeStations(buildings: readonly FieldsIn<'buildings'>[]): {
  stations: FieldsIn<'stations'>[];
  buildings: FieldsIn<'buildings'>[];
} {
  const changed = [...buildings];
  const stations = wanted.map(({ name, near }): FieldsIn<'stations'> => {
    const [east, north] = lonLatOf(bent(near));
    const away = ({ longitude, latitude }: FieldsIn<'buildings'>) =>
      Math.hypot((longitude - east) * 0.66, latitude - north);
    const at = changed.reduce(
      (best, building, i) => (away(building) < away(changed[best]!) ? i : best),
      0,
    );
    const building = changed[at]!;
    changed[at] = { ...building, name: `Fire ${name.toLowerCase()}`, occupancy: 'fire station' };
    const { longitude, latitude, elevationFt } = building;
    return { name, longitude, latitude, elevationFt, externalId: name };
  });
  return { stations, buildings: changed };
}
