/** The district as sources of the map. */
import type { GeoJSONSourceSpecification } from 'maplibre-gl';
import type { District } from '../district.ts';

type Data = Exclude<GeoJSONSourceSpecification['data'], string>;
type Features = Extract<Data, { type: 'FeatureCollection' }>['features'];

export function collection(features: readonly unknown[]): Data {
  return { type: 'FeatureCollection', features: features as Features };
}

export function point(
  { longitude, latitude }: { longitude: number; latitude: number },
  properties: object = {},
): unknown {
  return {
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [longitude, latitude] },
    properties,
  };
}

/** Under this zoom, a city's hydrants are counted in groups instead of drawn one by one. */
const CLUSTERED_BELOW_ZOOM = 13;

const geojson = (
  data: Data,
  more: Partial<GeoJSONSourceSpecification> = {},
): GeoJSONSourceSpecification => ({ type: 'geojson', data, ...more });

export const SOURCE = {
  streets: 'streets',
  buildings: 'buildings',
  hydrants: 'hydrants',
  stations: 'stations',
  water: 'water',
  route: 'route',
} as const;

/** Everything that the map draws, from the department's own records; nothing from outside. */
export function districtSources(district: District): Record<string, GeoJSONSourceSpecification> {
  return {
    [SOURCE.streets]: geojson(collection(district.streets), { tolerance: 0.2 }),
    [SOURCE.buildings]: geojson(collection(district.buildingShapes), { promoteId: 'id' }),
    [SOURCE.hydrants]: geojson(collection(district.hydrants.map((one) => point(one, one))), {
      promoteId: 'id',
      cluster: true,
      clusterMaxZoom: CLUSTERED_BELOW_ZOOM - 1,
      clusterRadius: 34,
    }),
    [SOURCE.stations]: geojson(collection(district.stations.map((one) => point(one, one)))),
    [SOURCE.water]: geojson(collection(district.waterSources.map((one) => point(one, one)))),
    [SOURCE.route]: geojson(collection([])),
  };
}
