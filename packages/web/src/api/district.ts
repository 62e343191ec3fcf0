/** The district as its map shows it, and what is asked along with it. */
import type { Stored } from '@plugside/records/model';
import { apiRequest } from './request.ts';

export interface DistrictSummary {
  name: string;
  /** Data made up for practice. */
  invented: boolean;
  /** West, south, east, north [degrees]; null where nothing has a place. */
  bounds: readonly [number, number, number, number] | null;
  counts: Readonly<Record<string, number>>;
  engine: string;
}

export type Position = readonly [longitude: number, latitude: number];

export type Geometry =
  | { type: 'Point'; coordinates: Position }
  | { type: 'LineString'; coordinates: readonly Position[] }
  | { type: 'Polygon'; coordinates: readonly (readonly Position[])[] };

export interface MapFeature<Properties, Shape extends Geometry = Geometry> {
  type: 'Feature';
  geometry: Shape;
  properties: Properties;
}

export interface HydrantProperties {
  id: string;
  name: string;
  status: 'in service' | 'out of service';
  statusReason: string | null;
  /** Of NFPA 291; null where no test tells it. */
  class: 'AA' | 'A' | 'B' | 'C' | null;
  q20Gpm: number | null;
  staticPsi: number | null;
  testedOn: string | null;
  retestOn: string | null;
  mainIn: number | null;
  steamerIn: number | null;
  elevationFt: number | null;
}

export interface BuildingProperties {
  id: string;
  name: string;
  /** False where its list gave none, and its key or place stands for it. */
  named: boolean;
  address: string | null;
  longitude: number;
  latitude: number;
  elevationFt: number | null;
  occupancy: string | null;
  neededGpm: number | null;
}

export interface StreetProperties {
  id: string;
  name: string;
  class: string | null;
  footOnly: boolean;
}

export interface StationProperties {
  id: string;
  name: string;
  elevationFt: number | null;
}

export interface WaterSourceProperties {
  id: string;
  name: string;
  kind: string;
  usableGal: number | null;
  liftFt: number | null;
  access: string | null;
  elevationFt: number | null;
}

type Point = { type: 'Point'; coordinates: Position };

/** What each layer of the map is made of. */
export interface MapLayers {
  hydrants: MapFeature<HydrantProperties, Point>;
  buildings: MapFeature<BuildingProperties>;
  streets: MapFeature<StreetProperties, { type: 'LineString'; coordinates: readonly Position[] }>;
  stations: MapFeature<StationProperties, Point>;
  'water-sources': MapFeature<WaterSourceProperties, Point>;
}

export const getDistrict = (signal?: AbortSignal): Promise<DistrictSummary> =>
  apiRequest('/district', { signal });

/** One layer of the map, whole. */
export async function mapLayer<Name extends keyof MapLayers>(
  name: Name,
  signal?: AbortSignal,
): Promise<MapLayers[Name][]> {
  const collection = await apiRequest<{ features: MapLayers[Name][] }>(`/map/${name}`, { signal });
  return collection.features;
}

export interface HydrantSupply {
  /** The flow test that plans use; null where there is none. */
  test: Stored<'flow-tests'> | null;
  /** Days of its tests that are dated ahead of today: they count for nothing. */
  datedAhead: readonly string[];
}

export const hydrantSupply = (id: string, signal?: AbortSignal): Promise<HydrantSupply> =>
  apiRequest(`/hydrants/${id}/supply`, { signal });

/** Pictures of map tiles, drawn under the department's own streets. */
export type BaseMap =
  | {
      kind: 'tiles';
      /** With {z}, {x} and {y}. */
      url: string;
      attribution: string;
      tileSize: number;
      minZoom: number;
      maxZoom: number;
    }
  | { kind: 'file'; url: string; attribution: string | null; tileSize: number };

export interface BaseMapAnswer {
  /** Null where the department has named none. */
  baseMap: BaseMap | null;
  /** Why there is none although one is named. */
  problem: string | null;
}

export const getBaseMap = (signal?: AbortSignal): Promise<BaseMapAnswer> =>
  apiRequest('/map/base-map', { signal });
