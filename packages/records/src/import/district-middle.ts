/** Where the department's records are, to hold a list from elsewhere against. */
import type { Kind } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import type { Mapping } from './mapping/mapping.ts';
import { distanceKm } from './place/place.ts';

/** Rows farther than this from what is on record are told [km]. */
const TOLD_KM = 50;
/** Records that are looked at. */
const LOOKED_AT = 500;

const placed = ['hydrants', 'buildings', 'stations', 'water-sources'] as const satisfies Kind[];

/**
 * Middle of what is on record [longitude, latitude], by the median of some hydrants, or of another kind
 * where there are none; undefined in an empty store.
 */
export async function districtMiddle(store: RecordStore): Promise<[number, number] | undefined> {
  for (const kind of placed) {
    const { records } = await store.list(kind, { limit: LOOKED_AT });
    if (records.length === 0) continue;
    const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1]!;
    return [
      median(records.map(({ longitude }) => longitude)),
      median(records.map(({ latitude }) => latitude)),
    ];
  }
  return undefined;
}

/** That a file's rows lie far from what is on record, and how far; undefined where they do not. */
export function awayNotice(
  { place }: Mapping,
  district: readonly [number, number] | undefined,
): string | undefined {
  if (!place?.near || !district) return undefined;
  const away = distanceKm(place.near, district);
  return away > TOLD_KM
    ? `The rows lie about ${Math.round(away).toLocaleString('en-US')} km from what is on record: check longitude, latitude and the coordinate system.`
    : undefined;
}
