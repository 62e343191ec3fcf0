/** From which streets hose comes to a building. */
import type { Place } from './ellipsoid.ts';
import type { StreetNetwork, StreetPoint } from './street-network.ts';

/** Streets beside the nearest that hose may come to a place from. */
export interface Frontage {
  /** Of the place, as written: the street named in it counts where it is within reach. */
  address?: string | undefined;
  /** Streets count too that are no more than this farther than the nearest [ft]; 0 where left out. */
  besideFt?: number;
}

/**
 * Half the width of a wide street with its verges: a difference smaller than that says nothing of
 * which street a building faces. Ours.
 */
const USUAL_BESIDE_FT = 60;
/** A building that lies farther off the street of its address is told by the nearest street [ft]; ours. */
const OWN_STREET_FT = 500;

/** How a building is joined to the streets: by its address, else by what its name says of it. */
export function frontageOf({
  address,
  name,
}: {
  address?: string | null | undefined;
  name?: string | null | undefined;
}): Frontage {
  return { address: address || name || undefined, besideFt: USUAL_BESIDE_FT };
}

/**
 * Where hose from a place comes onto the streets: the nearest point of the nearest street, of the
 * street of its address and of those hardly farther than the nearest, the nearest first. None where
 * no street is within `offNetworkFt`.
 */
export function entries(
  network: StreetNetwork,
  { longitude, latitude }: Place,
  offNetworkFt: number,
  { address, besideFt = 0 }: Frontage = {},
): StreetPoint[] {
  const nearest = network.nearestPoint(longitude, latitude);
  if (!nearest || nearest.offFt > offNetworkFt) return [];
  if (!address && besideFt <= 0) return [nearest];
  const besideReachFt = Math.min(offNetworkFt, nearest.offFt + besideFt);
  const ownReachFt = address ? Math.min(offNetworkFt, OWN_STREET_FT) : 0;
  const around = network
    .nearestPoints(longitude, latitude, Math.max(besideReachFt, ownReachFt))
    .filter(({ street }) => street !== nearest.street);
  const own = address
    ? onStreetOf(
        network,
        [nearest, ...around].filter(({ offFt }) => offFt <= ownReachFt),
        address,
      )
    : undefined;
  const others = around.filter((point) => point === own || point.offFt <= besideReachFt);
  return [nearest, ...others];
}

/** Of some points the nearest on the street that an address names; of two that it may mean the one with more words. */
function onStreetOf(
  network: StreetNetwork,
  points: readonly StreetPoint[],
  address: string,
): StreetPoint | undefined {
  const words = wordsOf(address);
  let best: { point: StreetPoint; length: number } | undefined;
  for (const point of points) {
    const name = wordsOf(network.streetName(point.street) ?? '');
    if (!holds(words, name)) continue;
    if (!best || name.length > best.length) best = { point, length: name.length };
  }
  return best?.point;
}

/** Whether some words stand in others, one after another. */
function holds(words: readonly string[], part: readonly string[]): boolean {
  if (part.length === 0) return false;
  return words.some((_, at) => part.every((word, next) => words[at + next] === word));
}

/** As streets are shortened in addresses: "Publication 28, Postal Addressing Standards", appendices B and C1, the commonest. */
const SHORT: Readonly<Record<string, string>> = {
  alley: 'aly',
  avenue: 'ave',
  boulevard: 'blvd',
  circle: 'cir',
  court: 'ct',
  drive: 'dr',
  highway: 'hwy',
  lane: 'ln',
  parkway: 'pkwy',
  place: 'pl',
  road: 'rd',
  square: 'sq',
  street: 'st',
  terrace: 'ter',
  trail: 'trl',
  north: 'n',
  south: 's',
  east: 'e',
  west: 'w',
  northeast: 'ne',
  northwest: 'nw',
  southeast: 'se',
  southwest: 'sw',
};

/** Words of an address or a street's name, alike however they are written. */
function wordsOf(text: string): string[] {
  const bare = text.normalize('NFKD').replace(/\p{M}/gu, '').replace(/['’.]/g, '').toLowerCase();
  return (bare.match(/[\p{L}\p{N}]+/gu) ?? []).map((word) => SHORT[word] ?? word);
}
