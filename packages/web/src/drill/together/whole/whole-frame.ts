/** The whole drill's layout, in pixels for a width. */
import type { WholeLayout } from './whole-layout.ts';

/** Room that a column needs, so that the figures on the hose beside it can be read [px]. */
const LEAST_PITCH = 206;
const BOX = { width: 136, height: 142 };
const NARROW_BOX = { width: 116, height: 142 };
const ROW_GAP = 58;
const MARGIN = 6;

export interface Run {
  d: string;
  /** Middle, for words. */
  x: number;
  y: number;
}

export interface WholeFrame {
  width: number;
  height: number;
  box: { width: number; height: number };
  /** Corner of a piece's box. */
  at(id: string): { x: number; y: number };
  /** A line between two pieces, the `lane`-th of `lanes` side by side. */
  between(from: string, to: string, side: { lane: number; lanes: number }): Run;
}

/** Columns run across where there is room for them, else down. */
export function frameOf(layout: WholeLayout, widthPx: number): WholeFrame {
  const across = widthPx >= layout.columns * LEAST_PITCH;
  const box = across ? BOX : NARROW_BOX;
  const lines = across ? layout.columns : layout.rows;
  const least = lines * (box.width + (across ? 70 : 8));
  const width = Math.max(widthPx, least);
  const pitchX = (width - 2 * MARGIN - box.width) / Math.max(1, lines - 1);
  const pitchY = box.height + ROW_GAP;
  const height = MARGIN * 2 + box.height + ((across ? layout.rows : layout.columns) - 1) * pitchY;
  const spots = new Map(
    layout.spots.map(({ id, column, row }) => {
      const x = across ? column * pitchX : spread(layout, column, row) * pitchX;
      const y = (across ? row : column) * pitchY;
      return [id, { x: MARGIN + x, y: MARGIN + y }];
    }),
  );
  const at = (id: string) => spots.get(id) ?? { x: MARGIN, y: MARGIN };
  return {
    width,
    height,
    box,
    at,
    between: (from, to, { lane, lanes }) => {
      const a = middle(at(from), box);
      const b = middle(at(to), box);
      const shift = (lane - (lanes - 1) / 2) * 34;
      const sideways = across ? Math.abs(a.x - b.x) > 1 : Math.abs(a.y - b.y) < 1;
      if (sideways) {
        const right = b.x > a.x ? 1 : -1;
        const [x1, x2] = [a.x + (right * box.width) / 2, b.x - (right * box.width) / 2];
        const [y1, y2] = [a.y + shift, b.y + shift];
        const bend = (x2 - x1) / 2;
        return {
          d: `M${x1} ${y1}C${x1 + bend} ${y1} ${x2 - bend} ${y2} ${x2} ${y2}`,
          x: (x1 + x2) / 2,
          y: (y1 + y2) / 2,
        };
      }
      const down = b.y > a.y ? 1 : -1;
      const [y1, y2] = [a.y + (down * box.height) / 2, b.y - (down * box.height) / 2];
      const spreadX = shift * 1.9;
      const [x1, x2] = [a.x + spreadX, b.x + spreadX];
      const bend = (y2 - y1) / 2;
      return {
        d: `M${x1} ${y1}C${x1} ${y1 + bend} ${x2} ${y2 - bend} ${x2} ${y2}`,
        x: (x1 + x2) / 2,
        y: (y1 + y2) / 2,
      };
    },
  };
}

/** Down the page a column's pieces stand in the middle of the width. */
function spread(layout: WholeLayout, column: number, row: number): number {
  const here = layout.spots.filter((spot) => spot.column === column).length;
  return row + (layout.rows - here) / 2;
}

function middle({ x, y }: { x: number; y: number }, box: WholeFrame['box']) {
  return { x: x + box.width / 2, y: y + box.height / 2 };
}
