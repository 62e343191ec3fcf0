/** Street ends drawn a step short of the street that they meet. */
import { indexPieces, placeOnPiece } from './piece-index.ts';
import {
  acrossPiece,
  degreeOf,
  type Piece,
  packGraph,
  type StreetGraph,
  type StreetPieces,
} from './street-graph.ts';

/** 3 m: a survey's slip, not the width of a yard. */
export const gapFt = 3 / 0.3048;

/**
 * Joins each dead end to the nearest piece under `closeFt` away, by a short piece as long as
 * the gap. Only ends are joined: streets that cross without a shared vertex stay apart. An end
 * that lies under a bridge, within the gap of it in plan, is joined too: heights are not known.
 */
export function closeGaps(given: StreetPieces, closeFt = gapFt): StreetPieces {
  const graph = packGraph(given);
  const index = indexPieces(graph);
  const vertices = [...given.vertices];
  const gaps: Piece[] = [];
  const cuts = new Map<number, { fraction: number; vertex: number }[]>();
  for (let end = 0; end < given.vertices.length; end += 1) {
    if (degreeOf(graph, end) !== 1) continue;
    const own = piecesWithin(graph, end, 3 * closeFt);
    const place = given.vertices[end]!;
    const hit = index.nearest(place, closeFt, (piece) => !own.has(piece));
    if (!hit || hit.offFt >= closeFt) continue;
    let vertex: number;
    if (hit.fraction === 0) vertex = graph.from[hit.piece]!;
    else if (hit.fraction === 1) vertex = graph.to[hit.piece]!;
    else {
      vertex = vertices.length;
      vertices.push(placeOnPiece(graph, hit.piece, hit.fraction));
      const cut = { fraction: hit.fraction, vertex };
      const others = cuts.get(hit.piece);
      if (others) others.push(cut);
      else cuts.set(hit.piece, [cut]);
    }
    // Two ends that miss each other are joined once.
    if (gaps.some((gap) => gap.from === vertex && gap.to === end)) continue;
    const { footOnly } = given.pieces[graph.incident[graph.firstIncident[end]!]!]!;
    gaps.push({ from: end, to: vertex, street: -1, footOnly });
  }
  const pieces = given.pieces.flatMap((piece, number) => cutPiece(piece, cuts.get(number)));
  return { vertices, pieces: [...pieces, ...gaps] };
}

/** Pieces that a walk of this length from a vertex touches: its own street, near its end. */
function piecesWithin(graph: StreetGraph, start: number, reachFt: number): Set<number> {
  const found = new Set<number>();
  const walked = new Map([[start, 0]]);
  const stack = [start];
  for (let v = stack.pop(); v !== undefined; v = stack.pop()) {
    const soFar = walked.get(v)!;
    for (let i = graph.firstIncident[v]!; i < graph.firstIncident[v + 1]!; i += 1) {
      const piece = graph.incident[i]!;
      found.add(piece);
      const other = acrossPiece(graph, piece, v);
      const there = soFar + graph.lengthFt[piece]!;
      if (there > reachFt || there >= (walked.get(other) ?? Number.POSITIVE_INFINITY)) continue;
      walked.set(other, there);
      stack.push(other);
    }
  }
  return found;
}

function cutPiece(piece: Piece, cuts?: { fraction: number; vertex: number }[]): Piece[] {
  if (!cuts) return [piece];
  const stops = [...cuts]
    .sort((a, b) => a.fraction - b.fraction)
    .map(({ vertex }) => vertex)
    .concat(piece.to);
  let from = piece.from;
  return stops.map((to) => {
    const part = { ...piece, from, to };
    from = to;
    return part;
  });
}
