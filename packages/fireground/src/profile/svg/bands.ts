import { type Drawing, FONT_PX, strokeAt, textAt } from './drawing.ts';
import { type Box, overlaps, type Point } from './place-labels.ts';
import { textWidth } from './text-width.ts';
import { element } from './xml.ts';

interface Band {
  x1: number;
  x2: number;
  psi: number;
  /** Forbidden above the line; else below it. */
  over: boolean;
  label: string;
}

/** Limit bands as drawn, and what other labels must keep clear of. */
export interface DrawnBands {
  parts: string[];
  labels: Box[];
  edges: [Point, Point][];
}

/** Lengths of hose with one limit that stand this near each other are one band [px]. */
const JOIN_PX = 60;

function hoseLimits({ paths, options, showsLimit }: Drawing): Band[] {
  const bands: Band[] = [];
  for (const { path, points } of paths) {
    for (const [index, span] of path.spans.entries()) {
      if (span.kind !== 'hose' || !showsLimit(span.limitPsi)) continue;
      const [x1, x2] = [points[index]!.x, points[index + 1]!.x];
      const psi = span.limitPsi;
      const same = bands.find((band) => band.psi === psi && band.x2 >= x1 - JOIN_PX);
      if (same) {
        same.x1 = Math.min(same.x1, x1);
        same.x2 = Math.max(same.x2, x2);
      } else {
        const label = `hose limit ${options.formatPressure(psi)}`;
        bands.push({ x1, x2, psi, over: true, label });
      }
    }
  }
  return bands;
}

function floors({ profile, options, frame, page }: Drawing): Band[] {
  if (profile.supply.length === 0) return [];
  return (options.floors ?? []).map(({ psi, label }) => ({
    x1: frame.left,
    x2: page.sceneX,
    psi,
    over: false,
    label,
  }));
}

/** Hose limits hatched above their line, floors of the supply side hatched below theirs. */
export function limitBands(drawing: Drawing): DrawnBands {
  const { frame, tone, yOf } = drawing;
  const drawn: DrawnBands = { parts: [], labels: [], edges: [] };
  for (const { x1, x2, psi, over, label } of [...hoseLimits(drawing), ...floors(drawing)]) {
    const y = yOf(psi);
    const end = over ? frame.top : yOf(0);
    const edge: [Point, Point] = [
      { x: x1, y },
      { x: x2, y },
    ];
    drawn.edges.push(edge);
    drawn.parts.push(
      element('rect', {
        x: x1,
        y: Math.min(y, end),
        width: x2 - x1,
        height: Math.abs(end - y),
        fill: 'url(#band)',
      }),
      strokeAt(edge, tone.warning, 1.2, { 'stroke-dasharray': '8 4' }),
    );
    const width = textWidth(label, FONT_PX);
    const left = Math.max(frame.left, Math.min(x1 + 6, frame.right - width));
    const top = over ? y - 17 : y + 3;
    const box = { left, right: left + width, top, bottom: top + 14 };
    if (drawn.labels.every((each) => !overlaps(each, box))) {
      drawn.labels.push(box);
      drawn.parts.push(textAt(left, box.bottom - 3, label, tone.warning, { class: 'halo' }));
    }
  }
  return drawn;
}
