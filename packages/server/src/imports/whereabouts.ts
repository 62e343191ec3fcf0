/** Where a file's rows lie beside what is on record already. */
import { type Mapping, placeOf, type SourceRow } from '@plugside/records';

/** West, south, east, north [degrees]. */
export type DistrictBounds = readonly [number, number, number, number];
type LonLat = [longitude: number, latitude: number];

export interface Whereabouts {
  district: DistrictBounds;
  /** Of the first rows. */
  places: LonLat[];
  /** Middle of those places. */
  middle: LonLat;
  /** From it to the nearest edge of what is on record [km]; 0 inside. */
  awayKm: number;
}

/** Shown at most. */
const MOST_PLACES = 200;
const EARTH_KM = 6371;

export const middleOf = ([west, south, east, north]: DistrictBounds): LonLat => [
  (west + east) / 2,
  (south + north) / 2,
];

/** Null where nothing is on record yet, or no row has a place. */
export function whereaboutsOf(
  sample: readonly SourceRow[],
  { place }: Mapping,
  district: DistrictBounds | undefined,
): Whereabouts | null {
  if (!place || !district) return null;
  const places = sample.slice(0, MOST_PLACES).flatMap((row): LonLat[] => {
    const found = placeOf(row, place);
    return 'code' in found ? [] : [[found.longitude, found.latitude]];
  });
  if (places.length === 0) return null;
  const middle: LonLat = [median(places.map(([x]) => x)), median(places.map(([, y]) => y))];
  return { district, places, middle, awayKm: Math.round(awayKm(middle, district) * 10) / 10 };
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** Great circle to the nearest place within the bounds. */
function awayKm([longitude, latitude]: LonLat, [west, south, east, north]: DistrictBounds): number {
  const nearest: LonLat = [
    Math.min(Math.max(longitude, west), east),
    Math.min(Math.max(latitude, south), north),
  ];
  const rad = Math.PI / 180;
  const across = Math.sin(((nearest[0] - longitude) * rad) / 2) ** 2;
  const along = Math.sin(((nearest[1] - latitude) * rad) / 2) ** 2;
  const h = along + Math.cos(latitude * rad) * Math.cos(nearest[1] * rad) * across;
  return 2 * EARTH_KM * Math.asin(Math.min(1, Math.sqrt(h)));
}
