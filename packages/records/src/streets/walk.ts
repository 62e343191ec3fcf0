/** Shortest ways along the streets from one point of them. */
import FlatQueue from 'flatqueue';
import type { LonLat } from './ellipsoid.ts';
import { placeOnPiece } from './piece-index.ts';
import { acrossPiece } from './street-graph.ts';
import type { StreetNetwork, StreetPoint } from './street-network.ts';

/** A way from the start to a point. */
export interface Way {
  /** From the place: with its stretch to the street. */
  lengthFt: number;
  /** Its last vertex before the point; −1 − s: along one piece from start s, past no vertex. */
  last: number;
}

export interface Walk {
  /** The shortest way to a point; none where it is farther than the walk went. */
  to(point: StreetPoint): Way | undefined;
  /** The way's places, from its start to the point, which start that is, and how much of it is on foot [ft]. */
  trace(point: StreetPoint, way: Way): { path: LonLat[]; start: StreetPoint; footOnlyFt: number };
}

/**
 * Walks from a place's points on the network to every vertex no farther from the place than `maxFt`,
 * nearest first, and stops early once the shortest way to any of `goals`, with the stretch off the
 * street there, is known, where there are some ("A Note on Two Problems in Connexion with Graphs",
 * E. W. Dijkstra, 1959). Exact for points anywhere on a piece.
 */
export function walkFrom(
  { graph }: StreetNetwork,
  starts: readonly StreetPoint[],
  maxFt: number,
  goals: readonly StreetPoint[] = [],
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
  const wayTo = ({ piece, fraction }: StreetPoint): Way | undefined => {
    const a = reached[from[piece]!]! + fraction * lengthFt[piece]!;
    const b = reached[to[piece]!]! + (1 - fraction) * lengthFt[piece]!;
    let way: Way = a <= b ? { lengthFt: a, last: from[piece]! } : { lengthFt: b, last: to[piece]! };
    starts.forEach((start, at) => {
      if (piece !== start.piece) return;
      const along = start.offFt + Math.abs(fraction - start.fraction) * lengthFt[piece]!;
      if (along <= way.lengthFt) way = { lengthFt: along, last: -1 - at };
    });
    return Number.isFinite(way.lengthFt) && way.lengthFt <= maxFt ? way : undefined;
  };
  starts.forEach(({ piece, fraction, offFt }, at) => {
    offer(from[piece]!, offFt + fraction * lengthFt[piece]!, -1 - at);
    offer(to[piece]!, offFt + (1 - fraction) * lengthFt[piece]!, -1 - at);
  });
  const goalFt = () =>
    Math.min(
      ...goals.map((goal) => (wayTo(goal)?.lengthFt ?? Number.POSITIVE_INFINITY) + goal.offFt),
    );
  while (queue.length > 0) {
    const soFarFt = queue.peekValue()!;
    const vertex = queue.pop()!;
    if (soFarFt > reached[vertex]!) continue;
    if (goals.length > 0 && soFarFt >= goalFt()) break;
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
      let start: StreetPoint;
      if (way.last < 0) {
        start = starts[-1 - way.last]!;
        count(point.piece, Math.abs(point.fraction - start.fraction));
      } else {
        count(point.piece, shareTo(point, way.last === from[point.piece]));
        let vertex = way.last;
        back.push([graph.longitude[vertex]!, graph.latitude[vertex]!]);
        let piece = via[vertex]!;
        for (; piece >= 0; piece = via[vertex]!) {
          count(piece, 1);
          vertex = acrossPiece(graph, piece, vertex);
          back.push([graph.longitude[vertex]!, graph.latitude[vertex]!]);
        }
        start = starts[-1 - piece]!;
        count(start.piece, shareTo(start, vertex === from[start.piece]));
      }
      back.push(placeOnPiece(graph, start.piece, start.fraction));
      return { path: back.reverse(), start, footOnlyFt: onFootFt };
    },
  };
}

function shareTo({ fraction }: StreetPoint, fromEnd: boolean): number {
  return fromEnd ? fraction : 1 - fraction;
}
