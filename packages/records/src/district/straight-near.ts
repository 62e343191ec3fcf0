import type { Stored } from '../model/index.ts';
import type { NotByStreet } from '../planning/index.ts';
import { crowFt, frontageOf, hoseRoutes, type StreetNetwork } from '../streets/index.ts';

/** Nearer than this in a straight line a hydrant is seen from the building [ft]; ours. */
const STRAIGHT_FT = 400;
/** A way round a square block is not longer than twice the straight line; this many times as long is a detour. Ours. */
const TIMES_LONGER = 3;
/** And longer by this [ft]. */
const LONGER_FT = 500;
/** Told at most. */
const MOST_TOLD = 3;

/** Hydrants in service near a building in a straight line that hose along the streets comes to only by a long detour, or not at all: the nearest first. */
export function straightNear(
  network: StreetNetwork,
  hydrants: readonly Stored<'hydrants'>[],
  building: Stored<'buildings'>,
): NotByStreet[] {
  const here = [building.longitude, building.latitude] as const;
  const straightFt = ({ longitude, latitude }: Stored<'hydrants'>) =>
    crowFt(here, [longitude, latitude]);
  const seen = hydrants.filter(
    (hydrant) => hydrant.status === 'in service' && straightFt(hydrant) <= STRAIGHT_FT,
  );
  const frontage = frontageOf(building);
  const ways = hoseRoutes(network, building, seen, { frontage });
  const byStreet = new Map(ways.map(({ target, lengthFt }) => [target.id, lengthFt]));
  return seen
    .map((hydrant) => ({
      name: hydrant.name,
      straightFt: straightFt(hydrant),
      streetFt: byStreet.get(hydrant.id),
    }))
    .filter(
      ({ straightFt: near, streetFt = Number.POSITIVE_INFINITY }) =>
        streetFt > TIMES_LONGER * near && streetFt > near + LONGER_FT,
    )
    .sort((one, two) => one.straightFt - two.straightFt)
    .slice(0, MOST_TOLD);
}
