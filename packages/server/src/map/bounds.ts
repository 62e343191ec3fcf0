import type { Feature, Position } from './features.ts';

/** Degrees WGS 84. */
export type Bounds = readonly [west: number, south: number, east: number, north: number];

/** The least box around features; null for none. */
export function boundsOf(features: readonly Feature[]): Bounds | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { geometry } of features) {
    for (const [longitude, latitude] of positionsOf(geometry)) {
      west = Math.min(west, longitude);
      south = Math.min(south, latitude);
      east = Math.max(east, longitude);
      north = Math.max(north, latitude);
    }
  }
  return west <= east ? [west, south, east, north] : null;
}

/** The least box around both. */
export function joined(one: Bounds | null, other: Bounds | null): Bounds | null {
  if (!one || !other) return one ?? other;
  return [
    Math.min(one[0], other[0]),
    Math.min(one[1], other[1]),
    Math.max(one[2], other[2]),
    Math.max(one[3], other[3]),
  ];
}

function positionsOf(geometry: Feature['geometry']): readonly Position[] {
  switch (geometry.type) {
    case 'Point':
      return [geometry.coordinates];
    case 'LineString':
      return geometry.coordinates;
    case 'Polygon':
      return geometry.coordinates[0] ?? [];
  }
}
