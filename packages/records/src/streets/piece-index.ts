/** Which piece of street is nearest to a place. */
import Flatbush from 'flatbush';
import { feetPerDegree, type LonLat, nearLongitude } from './ellipsoid.ts';
import type { StreetGraph } from './street-graph.ts';

/** A point on a piece. */
export interface OnPiece {
  piece: number;
  /** From the piece's `from` (0) to its `to` (1). */
  fraction: number;
  /** From the place to this point, straight [ft]. */
  offFt: number;
}

export interface PieceIndex {
  /** The nearest point of any piece that `wanted` lets pass; none where there is none within `withinFt`. */
  nearest(
    place: LonLat,
    withinFt?: number,
    wanted?: (piece: number) => boolean,
  ): OnPiece | undefined;
  /** The nearest point of every piece within `withinFt`, in no order. */
  within(place: LonLat, withinFt: number): OnPiece[];
}

/** Builds a packed index of the pieces' boxes. */
export function indexPieces(graph: StreetGraph): PieceIndex {
  const { longitude, latitude, from, to } = graph;
  if (from.length === 0) return { nearest: () => undefined, within: () => [] };
  const reference = longitude[0]!;
  const base = feetPerDegree(latitude[0]!);
  const x = (lon: number) => (lon - reference) * base.longitude;
  const y = (lat: number) => (lat - latitude[0]!) * base.latitude;

  const boxes = new Flatbush(from.length);
  for (let piece = 0; piece < from.length; piece += 1) {
    const [a, b] = [from[piece]!, to[piece]!];
    const [ax, bx, ay, by] = [x(longitude[a]!), x(longitude[b]!), y(latitude[a]!), y(latitude[b]!)];
    boxes.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
  }
  boxes.finish();

  return {
    nearest([givenLongitude, givenLatitude], withinFt = Number.POSITIVE_INFINITY, wanted) {
      const lon = nearLongitude(givenLongitude, reference);
      // Far from the first vertex the index's own scale is off; the answer is by the place's.
      const local = feetPerDegree(givenLatitude);
      const onPiece = (piece: number): OnPiece =>
        nearestOnPiece(graph, piece, lon, givenLatitude, local);
      const [some] = boxes.neighbors(x(lon), y(givenLatitude), 1, undefined, wanted);
      if (some === undefined) return undefined;
      let best = onPiece(some);
      const reachFt = Math.min(best.offFt, withinFt) * 1.01 + 0.01;
      const dx = (reachFt / local.longitude) * base.longitude;
      const dy = (reachFt / local.latitude) * base.latitude;
      const [px, py] = [x(lon), y(givenLatitude)];
      for (const piece of boxes.search(px - dx, py - dy, px + dx, py + dy, wanted)) {
        const candidate = onPiece(piece);
        const closer = candidate.offFt < best.offFt;
        // Which of two equals wins must not hang on the index's order.
        if (closer || (candidate.offFt === best.offFt && piece < best.piece)) best = candidate;
      }
      return best.offFt <= withinFt ? best : undefined;
    },
    within([givenLongitude, givenLatitude], withinFt) {
      const lon = nearLongitude(givenLongitude, reference);
      const local = feetPerDegree(givenLatitude);
      const reachFt = withinFt * 1.01 + 0.01;
      const dx = (reachFt / local.longitude) * base.longitude;
      const dy = (reachFt / local.latitude) * base.latitude;
      const [px, py] = [x(lon), y(givenLatitude)];
      return boxes
        .search(px - dx, py - dy, px + dx, py + dy)
        .map((piece) => nearestOnPiece(graph, piece, lon, givenLatitude, local))
        .filter(({ offFt }) => offFt <= withinFt);
    },
  };
}

function nearestOnPiece(
  { longitude, latitude, from, to }: StreetGraph,
  piece: number,
  lon: number,
  lat: number,
  local: { longitude: number; latitude: number },
): OnPiece {
  const [a, b] = [from[piece]!, to[piece]!];
  const ax = (longitude[a]! - lon) * local.longitude;
  const ay = (latitude[a]! - lat) * local.latitude;
  const dx = (longitude[b]! - longitude[a]!) * local.longitude;
  const dy = (latitude[b]! - latitude[a]!) * local.latitude;
  const along = -(ax * dx + ay * dy) / (dx * dx + dy * dy);
  const fraction = Math.min(1, Math.max(0, along));
  return { piece, fraction, offFt: Math.hypot(ax + fraction * dx, ay + fraction * dy) };
}

/** Where a point of a piece is. */
export function placeOnPiece(
  { longitude, latitude, from, to }: StreetGraph,
  piece: number,
  fraction: number,
): LonLat {
  const [a, b] = [from[piece]!, to[piece]!];
  if (fraction === 0) return [longitude[a]!, latitude[a]!];
  if (fraction === 1) return [longitude[b]!, latitude[b]!];
  return [
    longitude[a]! + fraction * (longitude[b]! - longitude[a]!),
    latitude[a]! + fraction * (latitude[b]! - latitude[a]!),
  ];
}
