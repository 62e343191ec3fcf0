/** Records as the map shows them: GeoJSON features with what it colours and labels by. */
import { flowTestResult, hydrantClass } from '@plugside/fireground';
import type { Stored } from '@plugside/records';

export type Position = readonly [longitude: number, latitude: number];

export type Geometry =
  | { type: 'Point'; coordinates: Position }
  | { type: 'LineString'; coordinates: readonly Position[] }
  | { type: 'Polygon'; coordinates: readonly (readonly Position[])[] };

export interface Feature {
  type: 'Feature';
  geometry: Geometry;
  properties: Readonly<Record<string, string | number | boolean | null>>;
}

/** A hydrant with what its test says; null where no test tells it. */
export function hydrantFeature(
  hydrant: Stored<'hydrants'>,
  test: Stored<'flow-tests'> | undefined,
): Feature {
  const result = test && flowTestResult(test);
  return {
    type: 'Feature',
    geometry: pointOf(hydrant),
    properties: {
      id: hydrant.id,
      name: hydrant.name,
      status: hydrant.status,
      statusReason: hydrant.statusReason ?? null,
      class: result?.class?.name ?? null,
      q20Gpm: rounded(result?.q20Gpm),
      ratedGpm: rounded(result?.rating?.flowGpm),
      staticPsi: test?.staticPsi ?? null,
      testedOn: test?.testedOn ?? null,
      retestOn: result?.retestOn ?? null,
      mainIn: hydrant.mainIn ?? null,
      steamerIn: hydrant.steamerIn ?? null,
      elevationFt: hydrant.elevationFt ?? null,
    },
  };
}

/** A building's outline, or its point where no outline is kept. */
export function buildingFeature(building: Stored<'buildings'>): Feature {
  const { footprint, longitude, latitude, name, externalId } = building;
  return {
    type: 'Feature',
    geometry:
      footprint && footprint.length > 0
        ? { type: 'Polygon', coordinates: footprint }
        : pointOf(building),
    properties: {
      id: building.id,
      name,
      named: name !== `Building ${externalId}` && !name.startsWith('Building at '),
      address: building.address ?? null,
      longitude,
      latitude,
      elevationFt: building.elevationFt ?? null,
      storeys: building.storeys ?? null,
      areaFt2: building.areaFt2 ?? null,
      occupancy: building.occupancy ?? null,
      construction: building.construction ?? null,
      exposures: building.exposures ?? null,
      sprinklered: building.sprinklered ?? null,
      standpipe: building.standpipe ?? null,
      neededGpm: building.neededGpm ?? null,
    },
  };
}

export function streetFeature(street: Stored<'streets'>): Feature {
  return {
    type: 'Feature',
    geometry: { type: 'LineString', coordinates: street.path },
    properties: {
      id: street.id,
      name: street.name,
      class: street.class ?? null,
      footOnly: street.footOnly,
    },
  };
}

export function stationFeature(station: Stored<'stations'>): Feature {
  return {
    type: 'Feature',
    geometry: pointOf(station),
    properties: {
      id: station.id,
      name: station.name,
      elevationFt: station.elevationFt ?? null,
    },
  };
}

export function waterSourceFeature(source: Stored<'water-sources'>): Feature {
  return {
    type: 'Feature',
    geometry: pointOf(source),
    properties: {
      id: source.id,
      name: source.name,
      kind: source.kind,
      usableGal: source.usableGal ?? null,
      liftFt: source.liftFt ?? null,
      access: source.access ?? null,
      elevationFt: source.elevationFt ?? null,
    },
  };
}

function pointOf({ longitude, latitude }: { longitude: number; latitude: number }): Geometry {
  return { type: 'Point', coordinates: [longitude, latitude] };
}

/** Whole gpm, as everywhere; rounded down only where a label would read as the class above. */
function rounded(gpm: number | null | undefined): number | null {
  if (gpm === null || gpm === undefined) return null;
  const nearest = Math.round(gpm);
  return hydrantClass(nearest) === hydrantClass(gpm) ? nearest : Math.floor(gpm);
}
