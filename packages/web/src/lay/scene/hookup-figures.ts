/** The end at the source, expanded and not to scale: source, assist valve, booster, short hoses. */
import { kindOf, type Plan, pieceOf, splitPortRef } from '@plugside/fireground';
import { hoseBetween, type Point, polyline } from './curves.ts';
import type { DrawingSizes } from './drawing-sizes.ts';
import type { FittingFigure, HoseFigure, RigFigure } from './figures.ts';
import { hosePx } from './hose-width.ts';
import type { Track } from './tracks.ts';

/** The hose body's height under the cab's roof, as a share of an engine's height. */
const RIG_BED = 0.16;

export interface Frame {
  top: number;
  height: number;
  /** Screen height of the lowest ground. */
  lowY: number;
}

export interface Anchor {
  at: Point;
  /** Unit vector out of the port. */
  out: Point;
}

export interface HookupFigures {
  rigs: RigFigure[];
  fittings: FittingFigure[];
  hoses: HoseFigure[];
  /** Where a port of a piece in the hookup is. */
  anchor(portRef: string, towards: string): Anchor | null;
  pieces: ReadonlySet<string>;
}

function piecesIn(plan: Plan, track: Track): Set<string> {
  const pieces = new Set<string>();
  for (const station of track.stations) {
    if (station.region !== 'hookup' || station.kind === 'terrain') continue;
    const piece = pieceOf(plan, station.piece);
    // The station where the lay begins belongs to the hookup unless it is the scene's own rig.
    if (piece && station.piece !== plan.scene) pieces.add(station.piece);
  }
  const sources = [...pieces];
  for (const appliance of plan.appliances) {
    if (appliance.kind === 'assist-valve' && sources.includes(splitPortRef(appliance.on).pieceId)) {
      pieces.add(appliance.id);
    }
  }
  for (const line of plan.lines) {
    const from = splitPortRef(line.from).pieceId;
    const to = splitPortRef(line.to).pieceId;
    const rig = plan.rigs.find((one) => one.id === to);
    if (rig?.role === 'booster' && pieces.has(from) && rig.id !== plan.scene) pieces.add(to);
  }
  return pieces;
}

/** Places a hookup's pieces and the hoses between them. */
export function hookupFigures(
  plan: Plan,
  track: Track,
  frame: Frame,
  sizes: DrawingSizes,
): HookupFigures {
  const [x0, x1] = track.hookupX;
  const width = x1 - x0;
  const pieces = piecesIn(plan, track);
  const upperY = frame.top + frame.height * 0.31;
  const lowerY = frame.top + frame.height * (sizes.compact ? 0.7 : 0.74);
  const share = (part: number) => x0 + width * part;
  const rigs: RigFigure[] = [];
  const fittings: FittingFigure[] = [];
  const places = new Map<string, { x: number; y: number }>();
  let rigCount = 0;
  for (const id of pieces) {
    const piece = pieceOf(plan, id);
    if (!piece) continue;
    const kind = kindOf(piece);
    if (kind === 'rig') {
      const rigWidth = width * (track.shares.rigRight - track.shares.rigLeft);
      const height = Math.min(sizes.rigHeightPx, rigWidth * 0.5);
      const y = lowerY - height / 2 + rigCount * (height + 14);
      rigs.push({ id, x: share(track.shares.rigLeft), y, width: rigWidth, height });
      rigCount += 1;
      continue;
    }
    const x = share(
      kind === 'hydrant' || kind === 'draft' ? track.shares.source : track.shares.valve,
    );
    const y = kind === 'draft' ? lowerY : upperY;
    places.set(id, { x, y });
    const figure = kind === 'assist-valve' ? 'valve' : kind;
    if (figure !== 'standpipe' && figure !== 'sprinkler') {
      fittings.push({ id, kind: figure, x, y });
    }
  }
  const unit = sizes.compact ? 0.62 : 1;
  const anchor = (portRef: string, towards: string): Anchor | null => {
    const { pieceId, port } = splitPortRef(portRef);
    const rig = rigs.find((one) => one.id === pieceId);
    if (rig) return rigAnchor(rig, port, towards, places);
    const place = places.get(pieceId);
    const piece = pieceOf(plan, pieceId);
    if (!place || !piece) return null;
    return fittingAnchor(kindOf(piece), port, place, unit);
  };
  const hoses = plan.lines.flatMap((line): HoseFigure[] => {
    const from = splitPortRef(line.from).pieceId;
    const to = splitPortRef(line.to).pieceId;
    if (!pieces.has(from) || !pieces.has(to)) return [];
    const a = anchor(line.from, to);
    const b = anchor(line.to, from);
    if (!a || !b) return [];
    return [
      {
        line: line.id,
        curve: hoseBetween(a.at, a.out, b.at, b.out, 0.55),
        widthPx: hosePx(line.hose, sizes.compact),
        region: 'hookup',
      },
    ];
  });
  return { rigs, fittings, hoses: [...hoses, ...nipples(plan, pieces, anchor)], anchor, pieces };
}

/** The short way from a hydrant's steamer into the valve that sits on it. */
function nipples(
  plan: Plan,
  pieces: ReadonlySet<string>,
  anchor: HookupFigures['anchor'],
): HoseFigure[] {
  return plan.appliances.flatMap((one): HoseFigure[] => {
    if (one.kind !== 'assist-valve' || !pieces.has(one.id)) return [];
    const from = anchor(one.on, one.id);
    const to = anchor(`${one.id}.inlet`, splitPortRef(one.on).pieceId);
    if (!from || !to) return [];
    const curve = polyline([from.at, to.at]);
    return [{ line: `on:${one.id}`, curve, widthPx: 8, region: 'hookup' }];
  });
}

function rigAnchor(
  rig: RigFigure,
  port: string,
  towards: string,
  places: ReadonlyMap<string, { x: number; y: number }>,
): Anchor {
  const intake = port.startsWith('intake');
  const order = Number(/\d+$/.exec(port)?.[0] ?? 1);
  const other = places.get(towards);
  // The valve stands above the rig: its two hoses meet the rig from above.
  if (other && other.x > rig.x - rig.width * 0.6 && other.y < rig.y) {
    const share = intake ? 0.16 : 0.44;
    return { at: [rig.x + rig.width * share, rig.y + rig.height * RIG_BED], out: [0, -1] };
  }
  if (intake) {
    // A suction straight from the steamer enters highest, then the side lines.
    const share = [0.3, 0.84, 0.46][(order - 1) % 3]!;
    return { at: [rig.x, rig.y + rig.height * share], out: [-1, 0] };
  }
  return { at: [rig.x + rig.width, rig.y + rig.height * 0.6], out: [1, 0] };
}

function fittingAnchor(
  kind: string,
  port: string,
  place: { x: number; y: number },
  unit: number,
): Anchor {
  const point = (dx: number, dy: number): Point => [place.x + dx * unit, place.y + dy * unit];
  if (kind === 'hydrant') {
    if (port === 'steamer') return { at: point(17, 0), out: [1, 0] };
    if (port === 'side1') return { at: point(-16, -2), out: [-1, 0] };
    return { at: point(0, 6), out: [0, 1] };
  }
  if (kind === 'draft') return { at: point(6, 0), out: [1, 0] };
  if (port === 'pump-suction') return { at: point(-9, 20), out: [0, 1] };
  if (port === 'pump-discharge') return { at: point(10, 20), out: [0, 1] };
  if (port.startsWith('inlet')) return { at: point(-20, 0), out: [-1, 0] };
  return { at: point(20, 0), out: [1, 0] };
}
