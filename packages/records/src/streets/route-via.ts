import { crowFt, type LonLat, type Place } from './ellipsoid.ts';
import { entries, type Frontage } from './frontage.ts';
import { lonLat, routeShape, usualOffNetworkFt, withoutRepeats } from './hose-routes.ts';
import type { StreetNetwork } from './street-network.ts';
import { sharedFt, type TurnBack } from './turn-backs.ts';
import { walkFrom } from './walk.ts';

/** A place that a lay goes through. */
export interface RoutePoint extends Place {
  /** Reached in a straight line from the place before, over whatever lies between. */
  straight?: boolean;
  /** Of an end: the streets that hose may take there; the nearest alone where left out. */
  frontage?: Frontage;
}

export type LegKind =
  | 'along streets'
  /** As asked. */
  | 'straight'
  /** Straight, because one of its ends is off the network. */
  | 'off the network'
  /** Straight, because no street joins its ends. */
  | 'not joined';

/** From one place to the next. */
export interface RouteLeg {
  kind: LegKind;
  lengthFt: number;
  path: LonLat[];
}

export interface Route {
  lengthFt: number;
  path: LonLat[];
  legs: RouteLeg[];
  /** Every leg follows the streets. */
  alongStreets: boolean;
  /** How much of it no rig can drive [ft]. */
  footOnlyFt: number;
  /** Where it comes back the way it went; that hose is counted both ways. */
  turnBacks: TurnBack[];
}

export interface RouteViaOptions {
  /** A place farther from any street is off the network [ft]. */
  offNetworkFt?: number;
  /** A place between the ends is moved onto the street where it is no farther from it [ft]. */
  ontoStreetFt?: number;
}

/** Half the width of a wide street with its verges. */
const USUAL_ONTO_STREET_FT = 60;
/** Less than a stride is a slip of the hand [ft]. */
const LEAST_TURN_BACK_FT = 3;

/**
 * A lay dragged through given places, in order: each leg is the shortest along the streets. The
 * ends keep their stretch off the street. A place between them that is near a street is taken to
 * mean that street. Farther off, the lay truly goes through it: from the nearest point of a street
 * to the place and back to the street, since nothing is known of the ground between, and both ways
 * count; a `straight` leg crosses that ground instead. Wherever the lay comes back the way it went,
 * off the street or along it, `turnBacks` says so. A leg that cannot follow the streets is straight and says why.
 *
 * @throws RangeError for fewer than two places
 */
export function routeVia(
  network: StreetNetwork,
  points: readonly RoutePoint[],
  options: RouteViaOptions = {},
): Route {
  if (points.length < 2) {
    throw new RangeError(`A lay goes through ${points.length} places; give at least 2, its ends.`);
  }
  const { offNetworkFt = usualOffNetworkFt, ontoStreetFt = USUAL_ONTO_STREET_FT } = options;
  const places = points.map((point, i): RoutePoint => {
    const between = i > 0 && i < points.length - 1;
    const street = between && network.nearestPoint(point.longitude, point.latitude);
    if (!street || street.offFt > ontoStreetFt) return point;
    const { longitude, latitude } = street;
    return { longitude, latitude, straight: point.straight };
  });
  const legs: Leg[] = [];
  for (let i = 1; i < places.length; i += 1) {
    legs.push(legBetween(network, places[i - 1]!, places[i]!, offNetworkFt));
  }
  return {
    lengthFt: legs.reduce((sum, leg) => sum + leg.lengthFt, 0),
    path: withoutRepeats(legs.flatMap(({ path }) => path)),
    legs: legs.map(({ kind, lengthFt, path }) => ({ kind, lengthFt, path })),
    alongStreets: legs.every(({ kind }) => kind === 'along streets'),
    footOnlyFt: legs.reduce((sum, leg) => sum + leg.footOnlyFt, 0),
    turnBacks: turnBacksOf(legs),
  };
}

interface Leg extends RouteLeg {
  footOnlyFt: number;
  /** From its end to the street [ft]. */
  endOffFt: number;
}

function turnBacksOf(legs: readonly Leg[]): TurnBack[] {
  return legs.slice(1).flatMap((from, i) => {
    const to = legs[i]!;
    if (to.kind !== 'along streets' || from.kind !== 'along streets') return [];
    const backFt = sharedFt(to.path, from.path);
    if (backFt < LEAST_TURN_BACK_FT) return [];
    const offStreetFt = to.endOffFt < LEAST_TURN_BACK_FT ? 0 : Math.min(to.endOffFt, backFt);
    return [{ point: i + 1, backFt, offStreetFt }];
  });
}

function legBetween(
  network: StreetNetwork,
  a: RoutePoint,
  b: RoutePoint,
  offNetworkFt: number,
): Leg {
  const [here, there] = [lonLat(a), lonLat(b)];
  const straight = (kind: LegKind) => ({
    kind,
    lengthFt: crowFt(here, there),
    path: [here, there],
    footOnlyFt: 0,
    endOffFt: 0,
  });
  if (b.straight) return straight('straight');
  const starts = entries(network, a, offNetworkFt, a.frontage);
  const ends = entries(network, b, offNetworkFt, b.frontage);
  if (starts.length === 0 || ends.length === 0) return straight('off the network');
  const walk = walkFrom(network, starts, Number.POSITIVE_INFINITY, ends);
  const [best] = ends
    .flatMap((end) => {
      const way = walk.to(end);
      return way ? [{ end, way, lengthFt: way.lengthFt + end.offFt }] : [];
    })
    .sort((one, two) => one.lengthFt - two.lengthFt);
  if (!best) return straight('not joined');
  const { end, way, lengthFt } = best;
  const { path, footOnlyFt } = routeShape(walk, end, way, here, there);
  return { kind: 'along streets', lengthFt, path, footOnlyFt, endOffFt: end.offFt };
}
