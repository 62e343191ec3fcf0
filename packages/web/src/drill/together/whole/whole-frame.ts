/** The whole drill's layout, in pixels for a width. */
import type { WholeLayout } from './whole-layout.ts';

/** Room that a column needs, so that the figures on the hose beside it can be read [px]. */
const LEAST_PITCH = 206;
const BOX_WIDTH = 140;
const NARROW_BOX_WIDTH = 111;
const LEAST_GAP = 70;
const NARROW_GAP = 6;
const ROW_GAP = 34;
/** Between rows that hose runs up and down between. */
const RUN_GAP = 74;
const MARGIN = 4;
const LANE = 34;

export interface Run {
  d: string;
  /** Where its words stand. */
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
}

export interface Side {
  /** The `lane`-th of `lanes` side by side. */
  lane: number;
  lanes: number;
  /** Where several runs come together: words stand at the other end, where they are apart. */
  crowded?: 'from' | 'to';
}

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface WholeFrame {
  width: number;
  height: number;
  /** Columns run down the page, for want of width. */
  narrow: boolean;
  at(id: string): Box;
  /** A line between two pieces. */
  between(from: string, to: string, side: Side): Run;
}

/** Times as large as usual that a drawing can be in a width, up to half as large again. */
export function scaleFor(layout: WholeLayout, widthPx: number): number {
  return Math.min(1.5, Math.max(1, widthPx / (layout.columns * (LEAST_PITCH + 1))));
}

/**
 * Columns run across where there is room for them, else down.
 * @param heightOf a piece's box [px]
 */
export function frameOf(
  layout: WholeLayout,
  widthPx: number,
  heightOf: (id: string) => number,
): WholeFrame {
  const narrow = widthPx < layout.columns * LEAST_PITCH;
  const boxWidth = narrow ? NARROW_BOX_WIDTH : BOX_WIDTH;
  const across = narrow ? layout.rows : layout.columns;
  const gap = narrow ? NARROW_GAP : LEAST_GAP;
  const width = Math.max(widthPx, across * boxWidth + (across - 1) * gap + 2 * MARGIN);
  const lineOf = (spot: { column: number; row: number }) => (narrow ? spot.column : spot.row);
  const lines = narrow ? layout.columns : layout.rows;
  const tops: number[] = [];
  let y = MARGIN;
  for (let line = 0; line < lines; line++) {
    const here = layout.spots.filter((spot) => lineOf(spot) === line);
    tops.push(y);
    const runsOn = narrow || here.some(({ id }) => layout.beside.includes(id));
    const next = layout.spots.some(
      (spot) => lineOf(spot) === line + 1 && layout.beside.includes(spot.id),
    );
    y += Math.max(0, ...here.map(({ id }) => heightOf(id)));
    y += runsOn || next ? RUN_GAP : ROW_GAP;
  }
  const boxes = new Map(
    layout.spots.map((spot) => {
      const { id, column, row } = spot;
      const mates = layout.spots.filter((one) => one.column === column).length;
      const room = width - 2 * MARGIN;
      const x = narrow
        ? MARGIN + ((row + 0.5) * room) / mates - boxWidth / 2
        : MARGIN + (column * (room - boxWidth)) / Math.max(1, layout.columns - 1);
      return [id, { x, y: tops[lineOf(spot)]!, width: boxWidth, height: heightOf(id) }];
    }),
  );
  const at = (id: string) => boxes.get(id) ?? { x: 0, y: 0, width: boxWidth, height: 0 };
  const height = Math.max(0, ...[...boxes.values()].map((box) => box.y + box.height)) + MARGIN;
  return {
    width,
    height,
    narrow,
    at,
    between: (from, to, side) => {
      const [a, b] = [at(from), at(to)];
      const sideways = narrow ? a.y === b.y : Math.abs(a.x - b.x) > 1;
      return sideways ? runAcross(a, b, side) : runDown(a, b, side);
    },
  };
}

/** Where on a bent run its words stand, from 0 to 1. */
const wordsAt = ({ crowded }: Side): number => (crowded === 'to' ? 0.3 : 0.7);

function runAcross(a: Box, b: Box, side: Side): Run {
  const { lane, lanes } = side;
  const shift = (lane - (lanes - 1) / 2) * LANE;
  const right = b.x > a.x;
  const [x1, x2] = right ? [a.x + a.width, b.x] : [a.x, b.x + b.width];
  const [y1, y2] = [middle(a) + shift, middle(b) + shift];
  const straight = Math.abs(y1 - y2) < 8;
  const t = straight ? 0.5 : wordsAt(side);
  const bend = (x2 - x1) / 2;
  return {
    d: `M${x1} ${y1}C${x1 + bend} ${y1} ${x2 - bend} ${y2} ${x2} ${y2}`,
    x: bent(x1, x1 + bend, x2 - bend, x2, t),
    // Over a straight hose; on a bent one, which the paper under the words parts.
    y: bent(y1, y1, y2, y2, t) - (straight ? 10 : 2),
    anchor: 'middle',
  };
}

function runDown(a: Box, b: Box, side: Side): Run {
  const { lane, lanes, crowded } = side;
  const shift = (lane - (lanes - 1) / 2) * LANE;
  const down = b.y > a.y;
  const [y1, y2] = down ? [a.y + a.height, b.y] : [a.y, b.y + b.height];
  const [x1, x2] = [a.x + a.width / 2 + shift, b.x + b.width / 2 + shift];
  const bend = (y2 - y1) / 2;
  const d = `M${x1} ${y1}C${x1} ${y1 + bend} ${x2} ${y2 - bend} ${x2} ${y2}`;
  const straight = Math.abs(x1 - x2) < 8;
  // At the end where runs stand apart, on the side that the hose bends away from.
  const atStart = crowded === 'to';
  const isLeft = straight ? lanes > 1 && lane < lanes / 2 : atStart ? x2 > x1 : x2 < x1;
  const under = atStart === down;
  return {
    d,
    x: (atStart ? x1 : x2) + (isLeft ? -8 : 8),
    y: (atStart ? y1 : y2) + (under ? 28 : -8),
    anchor: isLeft ? 'end' : 'start',
  };
}

/** Hose comes in at one height in a row, whatever stands in the boxes. */
const middle = ({ y }: Box) => y + 44;

/** A coordinate of a cubic Bézier curve at `t` from 0 to 1. */
function bent(p0: number, p1: number, p2: number, p3: number, t: number): number {
  const s = 1 - t;
  return s * s * s * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * p3;
}
