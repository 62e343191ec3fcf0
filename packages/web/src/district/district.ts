/** The district in the page: its places as plain data, and the streets as they came. */
import {
  type BaseMapAnswer,
  type BuildingProperties,
  type DistrictSummary,
  getBaseMap,
  getDistrict,
  type HydrantProperties,
  type MapLayers,
  mapLayer,
  type StationProperties,
  type WaterSourceProperties,
} from '../api/district.ts';

interface Placed {
  longitude: number;
  latitude: number;
}

export type MapHydrant = HydrantProperties & Placed;
export type MapBuilding = BuildingProperties & Placed;
export type MapStation = StationProperties & Placed;
export type MapWaterSource = WaterSourceProperties & Placed;

export interface District {
  summary: DistrictSummary;
  hydrants: readonly MapHydrant[];
  buildings: readonly MapBuilding[];
  stations: readonly MapStation[];
  waterSources: readonly MapWaterSource[];
  streets: readonly MapLayers['streets'][];
  /** With their outlines, for the map. */
  buildingShapes: readonly MapLayers['buildings'][];
  /** Drawn under it all. */
  base: BaseMapAnswer;
}

/** @throws UnreachableError, ProblemError */
export async function fetchDistrict(signal?: AbortSignal): Promise<District> {
  const [summary, hydrants, buildings, streets, stations, waterSources, base] = await Promise.all([
    getDistrict(signal),
    mapLayer('hydrants', signal),
    mapLayer('buildings', signal),
    mapLayer('streets', signal),
    mapLayer('stations', signal),
    mapLayer('water-sources', signal),
    getBaseMap(signal),
  ]);
  return {
    summary,
    hydrants: hydrants.map(placed),
    buildings: buildings.map(({ properties }) => properties),
    stations: stations.map(placed),
    waterSources: waterSources.map(placed),
    streets,
    buildingShapes: buildings,
    base,
  };
}

function placed<Properties>(feature: {
  geometry: { coordinates: readonly [number, number] };
  properties: Properties;
}): Properties & Placed {
  const [longitude, latitude] = feature.geometry.coordinates;
  return { ...feature.properties, longitude, latitude };
}
