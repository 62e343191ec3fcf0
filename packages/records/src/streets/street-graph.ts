/** Streets as vertices joined by straight pieces, in typed arrays. */
import { crowFt, type LonLat, nearLongitude } from './ellipsoid.ts';

/** What is needed of a street: a stored record has it. */
export interface StreetLine {
  name?: string;
  /** In order along the street. */
  path: readonly LonLat[];
  /** A rig cannot drive it. */
  footOnly?: boolean;
}

export interface StreetGraph {
  /** Of each vertex [degrees], all within half a turn of the first. */
  longitude: Float64Array;
  latitude: Float64Array;
  /** Each piece's ends. */
  from: Int32Array;
  to: Int32Array;
  lengthFt: Float64Array;
  /** The piece's street in the list given; −1 for a gap that was closed. */
  street: Int32Array;
  footOnly: Uint8Array;
  /** Pieces at vertex v: `incident[firstIncident[v]]` up to `firstIncident[v + 1]`. */
  firstIncident: Int32Array;
  incident: Int32Array;
}

/** A piece before it is packed. */
export interface Piece {
  from: number;
  to: number;
  street: number;
  footOnly: boolean;
}

/** Vertices and pieces as read, before gaps are closed. */
export interface StreetPieces {
  vertices: LonLat[];
  pieces: Piece[];
}

/** Places nearer than this are one vertex: 1e-7 degrees, about a centimetre. */
const VERTEX_STEPS_PER_DEGREE = 1e7;

/**
 * Vertices that streets share (the same place in both) and the pieces between them. Streets
 * that cross without a shared vertex stay apart: one may be a bridge.
 *
 * @throws RangeError where a street's path has a place that is not a number in range
 */
export function piecesOfStreets(streets: Iterable<StreetLine>): StreetPieces {
  const vertices: LonLat[] = [];
  const pieces: Piece[] = [];
  const known = new Map<string, number>();
  let reference: number | undefined;
  let street = 0;
  for (const { name, path, footOnly = false } of streets) {
    let last = -1;
    for (const [longitude, latitude] of path) {
      requirePlace(longitude, latitude, name, street);
      reference ??= longitude;
      const near = nearLongitude(longitude, reference);
      const key = `${Math.round(near * VERTEX_STEPS_PER_DEGREE)},${Math.round(latitude * VERTEX_STEPS_PER_DEGREE)}`;
      let vertex = known.get(key);
      if (vertex === undefined) {
        vertex = vertices.length;
        vertices.push([near, latitude]);
        known.set(key, vertex);
      }
      if (last >= 0 && vertex !== last) pieces.push({ from: last, to: vertex, street, footOnly });
      last = vertex;
    }
    street += 1;
  }
  return { vertices, pieces };
}

function requirePlace(
  longitude: number,
  latitude: number,
  name: string | undefined,
  street: number,
): void {
  if (Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90) return;
  const which = name ? `Street "${name}"` : `Street number ${street + 1}`;
  throw new RangeError(
    `${which} has a place at longitude ${longitude}, latitude ${latitude}; degrees from −180 to 180 and from −90 to 90 are allowed. Mend its path, or say which coordinates it is in when it is imported.`,
  );
}

/** Packs vertices and pieces. */
export function packGraph({ vertices, pieces }: StreetPieces): StreetGraph {
  const count = pieces.length;
  const graph: StreetGraph = {
    longitude: Float64Array.from(vertices, ([longitude]) => longitude),
    latitude: Float64Array.from(vertices, ([, latitude]) => latitude),
    from: Int32Array.from(pieces, ({ from }) => from),
    to: Int32Array.from(pieces, ({ to }) => to),
    lengthFt: Float64Array.from(pieces, ({ from, to }) => crowFt(vertices[from]!, vertices[to]!)),
    street: Int32Array.from(pieces, ({ street }) => street),
    footOnly: Uint8Array.from(pieces, ({ footOnly }) => (footOnly ? 1 : 0)),
    firstIncident: new Int32Array(vertices.length + 1),
    incident: new Int32Array(2 * count),
  };
  const { firstIncident, incident } = graph;
  for (const { from, to } of pieces) {
    firstIncident[from + 1]! += 1;
    firstIncident[to + 1]! += 1;
  }
  for (let v = 0; v < vertices.length; v += 1) firstIncident[v + 1]! += firstIncident[v]!;
  const next = firstIncident.slice(0, vertices.length);
  pieces.forEach(({ from, to }, piece) => {
    incident[next[from]!++] = piece;
    incident[next[to]!++] = piece;
  });
  return graph;
}

/** Pieces that meet at a vertex. */
export function degreeOf({ firstIncident }: StreetGraph, vertex: number): number {
  return firstIncident[vertex + 1]! - firstIncident[vertex]!;
}

/** The other end of a piece. */
export function acrossPiece({ from, to }: StreetGraph, piece: number, vertex: number): number {
  return from[piece] === vertex ? to[piece]! : from[piece]!;
}

/** Which connected part each vertex is in, numbered from the largest. */
export function componentsOf(graph: StreetGraph): { of: Int32Array; sizes: number[] } {
  const count = graph.longitude.length;
  const found = new Int32Array(count).fill(-1);
  const sizes: number[] = [];
  const stack: number[] = [];
  for (let start = 0; start < count; start += 1) {
    if (found[start] !== -1) continue;
    const number = sizes.length;
    let size = 0;
    found[start] = number;
    stack.push(start);
    for (let v = stack.pop(); v !== undefined; v = stack.pop()) {
      size += 1;
      for (let i = graph.firstIncident[v]!; i < graph.firstIncident[v + 1]!; i += 1) {
        const other = acrossPiece(graph, graph.incident[i]!, v);
        if (found[other] !== -1) continue;
        found[other] = number;
        stack.push(other);
      }
    }
    sizes.push(size);
  }
  const order = sizes.map((_, number) => number).sort((a, b) => sizes[b]! - sizes[a]!);
  const rank = new Int32Array(sizes.length);
  order.forEach((number, place) => {
    rank[number] = place;
  });
  return { of: found.map((number) => rank[number]!), sizes: order.map((n) => sizes[n]!) };
}
