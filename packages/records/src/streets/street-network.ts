import { closeGaps, gapFt } from './close-gaps.ts';
import { type LonLat, plainLongitude } from './ellipsoid.ts';
import { indexPieces, type OnPiece, placeOnPiece } from './piece-index.ts';
import {
  componentsOf,
  packGraph,
  piecesOfStreets,
  type StreetGraph,
  type StreetLine,
} from './street-graph.ts';

/** A point on a street. */
export interface StreetPoint extends OnPiece {
  longitude: number;
  latitude: number;
  /** The street's place in the list that the network was built from; −1 on a closed gap. */
  street: number;
}

/** Streets joined where they meet, with an index of what is nearest. */
export interface StreetNetwork {
  readonly graph: StreetGraph;
  /** Which connected part each vertex is in; 0 is the largest. */
  readonly component: Int32Array;
  /** Vertices in each connected part, largest first. */
  readonly componentSizes: readonly number[];
  /** Street ends that missed and were joined. */
  readonly gapsClosed: number;
  /** The nearest point of any street; none where there are no streets. */
  nearestPoint(longitude: number, latitude: number): StreetPoint | undefined;
  /** The nearest point of each street within so many feet, the nearest first. */
  nearestPoints(longitude: number, latitude: number, withinFt: number): StreetPoint[];
  /** Name of a street by its place in the list given; undefined where it has none. */
  streetName(street: number): string | undefined;
  /** Name of the nearest street that has one, within so many feet; undefined where there is none. */
  nearestName(longitude: number, latitude: number, withinFt: number): string | undefined;
}

export interface StreetNetworkOptions {
  /** Ends that miss by less are joined [ft]; 3 m where left out, 0: none. */
  closeFt?: number;
}

/**
 * Builds the network of a district's streets. Streets are joined where they share a vertex, and
 * where an end misses another street by under 3 m. Streets that cross without a shared vertex
 * are not: one may pass over the other.
 *
 * @throws RangeError where a place is not a longitude and latitude in degrees
 */
export function buildStreetNetwork(
  streets: Iterable<StreetLine>,
  { closeFt = gapFt }: StreetNetworkOptions = {},
): StreetNetwork {
  const names: string[] = [];
  const read = piecesOfStreets(named(streets, names));
  const joined = closeFt > 0 ? closeGaps(read, closeFt) : read;
  const graph = packGraph(joined);
  const index = indexPieces(graph);
  const { of, sizes } = componentsOf(graph);
  let gapsClosed = 0;
  for (const street of graph.street) if (street < 0) gapsClosed += 1;
  return {
    graph,
    component: of,
    componentSizes: sizes,
    gapsClosed,
    nearestPoint(longitude, latitude) {
      const found = index.nearest([longitude, latitude]);
      return found && streetPoint(graph, found);
    },
    nearestPoints(longitude, latitude, withinFt) {
      const byStreet = new Map<number, OnPiece>();
      for (const found of index.within([longitude, latitude], withinFt)) {
        const street = graph.street[found.piece]!;
        const best = byStreet.get(street);
        if (!best || nearer(found, best) < 0) byStreet.set(street, found);
      }
      return [...byStreet.values()].sort(nearer).map((found) => streetPoint(graph, found));
    },
    streetName: (street) => names[street] || undefined,
    nearestName(longitude, latitude, withinFt) {
      const isNamed = (piece: number) => Boolean(names[graph.street[piece]!]);
      const found = index.nearest([longitude, latitude], withinFt, isNamed);
      return found && found.offFt <= withinFt ? names[graph.street[found.piece]!] : undefined;
    },
  };
}

/** Keeps the names while the streets are read, which may be once only. */
function* named(streets: Iterable<StreetLine>, names: string[]): Generator<StreetLine> {
  for (const street of streets) {
    names.push(street.name?.trim() ?? '');
    yield street;
  }
}

/** Which of two equals comes first must not hang on an index's order. */
const nearer = (one: OnPiece, two: OnPiece) => one.offFt - two.offFt || one.piece - two.piece;

function streetPoint(graph: StreetGraph, found: OnPiece): StreetPoint {
  const [longitude, latitude]: LonLat = placeOnPiece(graph, found.piece, found.fraction);
  return {
    ...found,
    longitude: plainLongitude(longitude),
    latitude,
    street: graph.street[found.piece]!,
  };
}
