/** Shortest ways along the streets from one point of them. */
import FlatQueue from 'flatqueue';
import type { LonLat } from './ellipsoid.ts';
import { placeOnPiece } from './piece-index.ts';
import { acrossPiece } from './street-graph.ts';
import type { StreetNetwork, StreetPoint } from './street-network.ts';

/** A way from the start to a point. */
export interface Way {
  lengthFt: number;
  /** Its last vertex before the point; −1: along one piece, past no vertex. */
  last: number;
}

export interface Walk {
  /** The shortest way to a point; none where it is farther than the walk went. */
  to(point: StreetPoint): Way | undefined;
  /** The way's places, from the start to the point, and how much of it is on foot [ft]. */
  trace(point: StreetPoint, way: Way): { path: LonLat[]; footOnlyFt: number };
}

/**
 * Walks from a point of the network to every vertex no farther than `maxFt`, nearest first, and
 * stops early once the shortest way to `goal` is known, where one is given ("A Note on Two Problems in Connexion with Graphs", E. W. Dijkstra, 1959). Exact for points
 * anywhere on a piece.
 */
export function walkFrom(
  { graph }: StreetNetwork,
  start: StreetPoint,
  maxFt: number,
  goal?: StreetPoint,
): Walk {
  const { lengthFt, firstIncident, incident, from, to, footOnly } = graph;
  const reached = new Float64Array(graph.longitude.length).fill(Number.POSITIVE_INFINITY);
  const via = new Int32Array(graph.longitude.length).fill(-1);
  const queue = new FlatQueue<number>();
  const offer = (vertex: number, soFarFt: number, piece: number) => {
    if (soFarFt > maxFt || soFarFt >= reached[vertex]!) return;
    reached[vertex] = soFarFt;
    via[vertex] = piece;
    queue.push(vertex, soFarFt);
  };
  const startFt = lengthFt[start.piece]!;
  const wayTo = ({ piece, fraction }: StreetPoint): Way | undefined => {
    const a = reached[from[piece]!]! + fraction * lengthFt[piece]!;
    const b = reached[to[piece]!]! + (1 - fraction) * lengthFt[piece]!;
    let way: Way = a <= b ? { lengthFt: a, last: from[piece]! } : { lengthFt: b, last: to[piece]! };
    if (piece === start.piece) {
      const along = Math.abs(fraction - start.fraction) * startFt;
      if (along <= way.lengthFt) way = { lengthFt: along, last: -1 };
    }
    return Number.isFinite(way.lengthFt) && way.lengthFt <= maxFt ? way : undefined;
  };
  offer(from[start.piece]!, start.fraction * startFt, -1);
  offer(to[start.piece]!, (1 - start.fraction) * startFt, -1);
  while (queue.length > 0) {
    const soFarFt = queue.peekValue()!;
    const vertex = queue.pop()!;
    if (soFarFt > reached[vertex]!) continue;
    if (goal && soFarFt >= (wayTo(goal)?.lengthFt ?? Number.POSITIVE_INFINITY)) break;
    const end = firstIncident[vertex + 1]!;
    for (let i = firstIncident[vertex]!; i < end; i += 1) {
      const piece = incident[i]!;
      offer(acrossPiece(graph, piece, vertex), soFarFt + lengthFt[piece]!, piece);
    }
  }

  return {
    to: wayTo,
    trace(point, way) {
      const back: LonLat[] = [placeOnPiece(graph, point.piece, point.fraction)];
      let onFootFt = 0;
      const count = (piece: number, share: number) => {
        if (footOnly[piece]) onFootFt += share * lengthFt[piece]!;
      };
      if (way.last === -1) {
        count(point.piece, Math.abs(point.fraction - start.fraction));
      } else {
        count(point.piece, shareTo(point, way.last === from[point.piece]));
        let vertex = way.last;
        back.push([graph.longitude[vertex]!, graph.latitude[vertex]!]);
        for (let piece = via[vertex]!; piece !== -1; piece = via[vertex]!) {
          count(piece, 1);
          vertex = acrossPiece(graph, piece, vertex);
          back.push([graph.longitude[vertex]!, graph.latitude[vertex]!]);
        }
        count(start.piece, shareTo(start, vertex === from[start.piece]));
      }
      back.push(placeOnPiece(graph, start.piece, start.fraction));
      return { path: back.reverse(), footOnlyFt: onFootFt };
    },
  };
}

function shareTo({ fraction }: StreetPoint, fromEnd: boolean): number {
  return fromEnd ? fraction : 1 - fraction;
}
