import { crowFt, type LonLat, type Place, plainLongitude } from './ellipsoid.ts';
import { entries, type Frontage } from './frontage.ts';
import type { StreetNetwork, StreetPoint } from './street-network.ts';
import { type Walk, walkFrom } from './walk.ts';

/** Hose from a place to a target. */
export interface HoseRoute<Target extends Place = Place> {
  target: Target;
  /** The target's place in the list given. */
  index: number;
  /** Along the streets, with the stretches off the street at both ends [ft]. */
  lengthFt: number;
  /** From the place to the target. */
  path: LonLat[];
  /** False: one of the ends is off the network, and this is the straight line. */
  alongStreets: boolean;
  /** From the place to the street that the hose takes there, straight [ft]. */
  placeOffFt: number;
  /** That street's name, where it has one. */
  placeStreet?: string;
  /** From the target to its street, straight [ft]. */
  targetOffFt: number;
  /** How much of it no rig can drive [ft]. */
  footOnlyFt: number;
}

export interface HoseRouteOptions {
  /** Longer routes are left out [ft]; no limit where left out. */
  maxFt?: number;
  /** Only so many, the shortest; all where left out. */
  count?: number;
  /** A place farther from any street is off the network [ft]. */
  offNetworkFt?: number;
  /** Streets that hose may take at the place; the nearest alone where left out. */
  frontage?: Frontage;
}

/** A long drive's worth; farther than that from a street, the streets say nothing about the lay. */
export const usualOffNetworkFt = 1000;

/** Of latitude, at the equator, rounded down. */
const LEAST_FEET_PER_DEGREE = 362_000;
/** Where a search for the nearest few begins [ft]; doubled until they are found. */
const FIRST_REACH_FT = 1000;
/** Past three miles the next search is of everything. */
const LAST_REACH_FT = 16000;

/**
 * Hose lengths from one place to many along the streets, shortest first. Each end is joined to
 * the nearest point of any street, the place to those that its frontage has too; the stretch between
 * counts. A target that no street leads to
 * from the place is left out; where an end is off the network the straight line is given and
 * said to be so.
 *
 * @throws RangeError where `maxFt`, `count` or a place is out of range
 */
export function hoseRoutes<Target extends Place>(
  network: StreetNetwork,
  place: Place,
  targets: readonly Target[],
  options: HoseRouteOptions = {},
): HoseRoute<Target>[] {
  const { count, ...rest } = options;
  if (count !== undefined && !(count >= 1)) {
    throw new RangeError(`count is ${count}; give 1 or more, or leave it out for all.`);
  }
  if (count === undefined) return routesUntil(network, place, targets, rest);
  const routes = routesUntil(network, place, targets, rest, (found) => found.length >= count);
  return routes.slice(0, count);
}

/**
 * Routes as `hoseRoutes` gives them, from a search that reaches farther and farther until
 * `enough` of them are found; all within `maxFt` where it is left out.
 */
export function routesUntil<Target extends Place>(
  network: StreetNetwork,
  place: Place,
  targets: readonly Target[],
  options: Omit<HoseRouteOptions, 'count'>,
  enough?: (found: readonly HoseRoute<Target>[]) => boolean,
): HoseRoute<Target>[] {
  const { maxFt = Number.POSITIVE_INFINITY, offNetworkFt = usualOffNetworkFt, frontage } = options;
  if (!(maxFt > 0)) {
    throw new RangeError(`maxFt is ${maxFt}; give a length above 0 ft, or leave it out.`);
  }
  const starts = entries(network, place, offNetworkFt, frontage);
  const within = (reachFt: number) =>
    routesWithin(network, place, starts, targets, reachFt, offNetworkFt);
  if (!enough) return within(maxFt);
  for (let reachFt = FIRST_REACH_FT; reachFt < Math.min(maxFt, LAST_REACH_FT); reachFt *= 2) {
    const routes = within(reachFt);
    if (enough(routes)) return routes;
  }
  return within(maxFt);
}

function routesWithin<Target extends Place>(
  network: StreetNetwork,
  place: Place,
  starts: readonly StreetPoint[],
  targets: readonly Target[],
  maxFt: number,
  offNetworkFt: number,
): HoseRoute<Target>[] {
  const here = lonLat(place);
  const walk = starts.length > 0 ? walkFrom(network, starts, maxFt) : undefined;
  const offFt = starts[0]?.offFt ?? offOf(network, place);
  const routes: HoseRoute<Target>[] = [];
  targets.forEach((target, index) => {
    // No way is shorter than the crow's, so most of a district is never looked up.
    if (Math.abs(target.latitude - place.latitude) * LEAST_FEET_PER_DEGREE > maxFt) return;
    const straightFt = crowFt(here, lonLat(target));
    if (straightFt > maxFt) return;
    const end = attached(network, target);
    const ends = {
      target,
      index,
      placeOffFt: offFt,
      targetOffFt: end?.offFt ?? Number.POSITIVE_INFINITY,
    };
    if (!walk || !end || end.offFt > offNetworkFt) {
      const path = [here, lonLat(target)];
      routes.push({ ...ends, lengthFt: straightFt, path, alongStreets: false, footOnlyFt: 0 });
      return;
    }
    const way = walk.to(end);
    if (!way) return;
    const lengthFt = way.lengthFt + end.offFt;
    if (lengthFt > maxFt) return;
    const { path, start, footOnlyFt } = routeShape(walk, end, way, here, lonLat(target));
    const street = network.streetName(start.street);
    routes.push({
      ...ends,
      placeOffFt: start.offFt,
      ...(street !== undefined && { placeStreet: street }),
      lengthFt,
      path,
      alongStreets: true,
      footOnlyFt,
    });
  });
  return routes.sort((a, b) => a.lengthFt - b.lengthFt);
}

/** A way's places with the stretches off the street, each place once. */
export function routeShape(
  walk: Walk,
  end: StreetPoint,
  way: NonNullable<ReturnType<Walk['to']>>,
  here: LonLat,
  there: LonLat,
): ReturnType<Walk['trace']> {
  const { path, ...rest } = walk.trace(end, way);
  const plain = path.map(([longitude, latitude]): LonLat => [plainLongitude(longitude), latitude]);
  return { path: withoutRepeats([here, ...plain, there]), ...rest };
}

const offOf = (network: StreetNetwork, { longitude, latitude }: Place): number =>
  network.nearestPoint(longitude, latitude)?.offFt ?? Number.POSITIVE_INFINITY;

/** Leaves out places equal to the one before. */
export function withoutRepeats(path: readonly LonLat[]): LonLat[] {
  return path.filter(
    ([longitude, latitude], i) =>
      i === 0 || longitude !== path[i - 1]![0] || latitude !== path[i - 1]![1],
  );
}

export function lonLat({ longitude, latitude }: Place): LonLat {
  return [longitude, latitude];
}

interface Attachment extends Place {
  point: StreetPoint | undefined;
}

/** Hydrants stay where they are from query to query; kept as long as both live. */
const attachments = new WeakMap<StreetNetwork, WeakMap<Place, Attachment>>();

function attached(network: StreetNetwork, target: Place): StreetPoint | undefined {
  let ofNetwork = attachments.get(network);
  if (!ofNetwork) {
    ofNetwork = new WeakMap();
    attachments.set(network, ofNetwork);
  }
  const { longitude, latitude } = target;
  const kept = ofNetwork.get(target);
  if (kept && kept.longitude === longitude && kept.latitude === latitude) return kept.point;
  const point = network.nearestPoint(longitude, latitude);
  ofNetwork.set(target, { longitude, latitude, point });
  return point;
}
