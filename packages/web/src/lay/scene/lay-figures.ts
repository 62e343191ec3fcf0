/** The lay itself, to scale along the ground: hose, relay pumps, fittings, the rig at the scene. */
import { kindOf, type Line, type Plan, pieceOf, splitPortRef } from '@plugside/fireground';
import { type HoseCurve, hoseBetween, joined, type Point, polyline } from './curves.ts';
import type { DrawingSizes } from './drawing-sizes.ts';
import type { FittingFigure, HoseFigure, RigFigure } from './figures.ts';
import type { Ground } from './ground.ts';
import type { Frame, HookupFigures } from './hookup-figures.ts';
import { hosePx } from './hose-width.ts';
import type { Track, Tracks } from './tracks.ts';

interface LayInput {
  plan: Plan;
  track: Track;
  tracks: Tracks;
  frame: Frame;
  ground: Ground;
  sizes: DrawingSizes;
  hookup: HookupFigures;
  /** Rigs that earlier tracks have placed. */
  rigs: readonly RigFigure[];
}

export interface LayFigures {
  rigs: RigFigure[];
  fittings: FittingFigure[];
  hoses: HoseFigure[];
  ground: Point[];
}

/** Places everything between the hookup and the scene's rig. */
export function layFigures(input: LayInput): LayFigures {
  const { plan, track, tracks, frame, ground, sizes } = input;
  const lay = track.stations.filter((station) => station.region === 'lay');
  const start = track.stations.filter((station) => station.region === 'hookup').at(-1);
  const startFt = start?.elevationFt ?? lay[0]?.elevationFt ?? 0;
  const line: Point[] = [[track.hookupX[1], ground.y(startFt, frame.lowY)]];
  for (const station of lay) line.push([station.x, ground.y(station.elevationFt, frame.lowY)]);
  const endX = frame.top === 0 ? tracks.scale.widthPx : tracks.scale.attackStartX;
  line.push([endX, line.at(-1)![1]]);

  const rigs: RigFigure[] = [];
  const fittings: FittingFigure[] = [];
  for (const station of lay) {
    const piece = pieceOf(plan, station.piece);
    if (!piece || station.kind === 'terrain') continue;
    const kind = kindOf(piece);
    const known = [...rigs, ...input.rigs].some((rig) => rig.id === piece.id);
    const y = ground.y(station.elevationFt, frame.lowY);
    if (kind === 'rig') {
      if (known) continue;
      const width = tracks.scale.rigPx;
      const height = Math.min(sizes.rigHeightPx, width * 0.5);
      rigs.push({ id: piece.id, x: station.x, y: y - height - height * 0.2, width, height });
    } else if (kind === 'wye' || kind === 'siamese' || kind === 'manifold' || kind === 'monitor') {
      if (!fittings.some((one) => one.id === piece.id)) {
        fittings.push({ id: piece.id, kind, x: station.x, y: y - 8 });
      }
    }
  }
  return { rigs, fittings, hoses: layHoses(input, line, rigs, fittings), ground: line };
}

/** Height of a polyline at a screen position. */
export function heightAt(line: readonly Point[], x: number): number {
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    if (x <= b[0]) {
      const t = b[0] === a[0] ? 1 : Math.max(0, (x - a[0]) / (b[0] - a[0]));
      return a[1] + (b[1] - a[1]) * t;
    }
  }
  return line.at(-1)?.[1] ?? 0;
}

function layHoses(
  input: LayInput,
  ground: readonly Point[],
  rigs: readonly RigFigure[],
  fittings: readonly FittingFigure[],
): HoseFigure[] {
  const { plan, hookup, sizes, track } = input;
  const onLay = new Map<string, { left: Point; right: Point }>();
  for (const rig of [...rigs, ...input.rigs]) {
    if (hookup.pieces.has(rig.id)) continue;
    const y = rig.y + rig.height * 0.66;
    onLay.set(rig.id, { left: [rig.x, y], right: [rig.x + rig.width, y] });
  }
  for (const one of fittings)
    onLay.set(one.id, { left: [one.x - 7, one.y], right: [one.x + 7, one.y] });
  const ends = (line: Line) => ({
    from: splitPortRef(line.from).pieceId,
    to: splitPortRef(line.to).pieceId,
  });
  const own = plan.lines.filter((line) => {
    const { from, to } = ends(line);
    if (from === plan.scene || !onLay.has(to)) return false;
    return (
      hookup.pieces.has(from) ||
      (onLay.has(from) && rigs.concat().some((r) => r.id === from)) ||
      fittings.some((f) => f.id === from)
    );
  });
  const stacked = new Map<string, number>();
  return own.flatMap((line): HoseFigure[] => {
    const { from, to } = ends(line);
    const target = onLay.get(to)!;
    const width = hosePx(line.hose, sizes.compact);
    const shown = Math.min(line.count, 4);
    return Array.from({ length: shown }, (_, n) => {
      const lift = (stacked.get(to) ?? 0) + width / 2;
      stacked.set(to, lift + width / 2 + 2.5);
      const hookupEnd = hookup.pieces.has(from) ? hookup.anchor(line.from, to) : null;
      const first: Point = hookupEnd ? hookupEnd.at : onLay.get(from)!.right;
      const groundFrom = hookupEnd ? track.hookupX[1] : first[0] + 12;
      const curve = alongGround(ground, first, groundFrom, target.left, lift, hookupEnd !== null);
      return {
        line: n === 0 ? line.id : `${line.id}#${n}`,
        curve,
        widthPx: width,
        region: 'lay' as const,
      };
    });
  });
}

/** Up into an intake: a bend beside the rig, or a riser from a track drawn below. */
function upTo(from: Point, to: Point): HoseCurve {
  const climb = from[1] - to[1];
  if (climb < 60) return hoseBetween(from, [1, 0], to, [-1, 0], 0.5);
  const x = to[0] - 12;
  const low = hoseBetween(from, [1, 0], [x, from[1] - 18], [0, 1], 0.5);
  const riser = polyline([
    [x, from[1] - 18],
    [x, to[1] + 14],
  ]);
  const high = hoseBetween([x, to[1] + 14], [0, -1], to, [-1, 0], 0.5);
  return joined(joined(low, riser), high);
}

/** From a port down to the ground, along it, and up into an intake. */
function alongGround(
  ground: readonly Point[],
  from: Point,
  groundFromX: number,
  to: Point,
  lift: number,
  sweeps: boolean,
): HoseCurve {
  const room = to[0] - groundFromX;
  const risePx = Math.min(22, Math.max(room * 0.3, 1));
  const lastX = to[0] - risePx;
  const touch: Point = [Math.min(groundFromX, lastX), 0];
  const down: Point = [touch[0], heightAt(ground, touch[0]) - lift];
  const between = ground
    .filter(([x]) => x > touch[0] && x < lastX)
    .map(([x, y]): Point => [x, y - lift]);
  const last: Point = [lastX, heightAt(ground, lastX) - lift];
  // Over the hookup the hose first runs level, clear of the booster under it, then sweeps down.
  const level: Point = [from[0] + (down[0] - from[0]) * (sweeps ? 0.42 : 0), from[1]];
  const sweep = joined(polyline([from, level]), hoseBetween(level, [1, 0], down, [-1, 0], 0.3));
  const body = polyline([down, ...between, last]);
  return joined(joined(sweep, body), upTo(last, to));
}
