/** The lines past the scene's pump, fanned out so that each has its own lane. */
import { kindOf, type Line, type Plan, pieceOf, splitPortRef } from '@plugside/fireground';
import { hoseBetween, type Point, polyline } from './curves.ts';
import type { FittingFigure, HoseFigure, RigFigure } from './figures.ts';
import { hosePx } from './hose-width.ts';
import type { Tracks } from './tracks.ts';

export interface AttackFrame {
  top: number;
  bottom: number;
  startX: number;
}

export interface AttackFigures {
  fittings: FittingFigure[];
  hoses: HoseFigure[];
}

const MOST_LANE_PX = 34;

/** Lane heights for `count` lines about a middle, kept inside the frame. */
export function lanes(count: number, middle: number, top: number, bottom: number): number[] {
  if (count === 0) return [];
  const step = count === 1 ? 0 : Math.min(MOST_LANE_PX, (bottom - top) / (count - 1));
  const half = (step * (count - 1)) / 2;
  const centre = Math.min(Math.max(middle, top + half), bottom - half);
  return Array.from({ length: count }, (_, i) => centre - half + i * step);
}

/** Places lines, wyes, monitors and nozzles past the scene's rig. */
export function attackFigures(
  plan: Plan,
  tracks: Tracks,
  scene: RigFigure,
  frame: AttackFrame,
): AttackFigures {
  const middle = scene.y + scene.height * 0.45;
  const laneYs = lanes(tracks.attack.length, middle, frame.top, frame.bottom);
  const through = new Map<string, number[]>();
  for (const [lane, { stations }] of tracks.attack.entries()) {
    for (const id of new Set(stations.map((station) => station.piece))) {
      through.set(id, [...(through.get(id) ?? []), laneYs[lane]!]);
    }
  }
  const yOf = (id: string, lane: number) => {
    if (id === plan.scene) return middle;
    const ys = through.get(id) ?? [laneYs[lane]!];
    return ys.reduce((sum, y) => sum + y, 0) / ys.length;
  };
  const fittings = new Map<string, FittingFigure>();
  const hoses = new Map<string, HoseFigure>();
  for (const [lane, track] of tracks.attack.entries()) {
    let from: Point = [frame.startX, middle];
    for (const [i, station] of track.stations.entries()) {
      // A gated valve is a station of its line: it stands where the line begins.
      const at: Point = [
        station.x,
        pieceOf(plan, station.piece) ? yOf(station.piece, lane) : from[1],
      ];
      const span = track.path.spans[i - 1];
      if (span?.kind === 'hose') {
        const line = plan.lines.find((one) => one.id === span.line);
        hoses.set(span.line, {
          line: span.line,
          curve: hoseBetween(from, [1, 0], at, [-1, 0], 0.5),
          widthPx: line ? hosePx(line.hose, false) : 3,
          region: 'attack',
        });
      }
      from = at;
      const piece = pieceOf(plan, station.piece);
      if (!piece || piece.id === plan.scene) continue;
      const kind = kindOf(piece);
      const figure = figureKind(kind);
      if (figure) fittings.set(piece.id, { id: piece.id, kind: figure, x: at[0], y: at[1] });
    }
  }
  addParallels(plan, hoses);
  return { fittings: [...fittings.values()], hoses: [...hoses.values()] };
}

/** Further lines between the same two pieces run beside the one that a path takes. */
function addParallels(plan: Plan, hoses: Map<string, HoseFigure>): void {
  const ends = (line: Line) =>
    `${splitPortRef(line.from).pieceId}>${splitPortRef(line.to).pieceId}`;
  const beside = new Map<string, number>();
  for (const line of plan.lines) {
    if (hoses.has(line.id)) continue;
    const drawn = plan.lines.find((one) => hoses.has(one.id) && ends(one) === ends(line));
    const first = drawn && hoses.get(drawn.id);
    if (!drawn || !first) continue;
    const count = (beside.get(ends(line)) ?? 0) + 1;
    beside.set(ends(line), count);
    const shift = count * (first.widthPx + 2.5);
    const points = first.curve.points.map(([x, y]): Point => [x, y + shift]);
    hoses.set(line.id, { ...first, line: line.id, curve: polyline(points), beside: true });
  }
}

function figureKind(kind: string): FittingFigure['kind'] | null {
  if (kind === 'wye' || kind === 'manifold' || kind === 'siamese' || kind === 'monitor')
    return kind;
  if (kind === 'nozzle') return 'nozzle';
  if (kind === 'standpipe' || kind === 'sprinkler') return 'system';
  return null;
}
