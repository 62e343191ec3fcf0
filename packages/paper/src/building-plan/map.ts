/** A small map drawn natively: streets, building, hydrants, hose. North is up. */
import { crowFt, type LonLat } from '@plugside/records/streets';
import type { Point } from '../sheet/ink.ts';
import { type Box, type Frame, Labels } from '../sheet/labels.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { put, type TextStyle } from '../sheet/text.ts';
import type { PlanMap } from './data.ts';

const PAD = 44;
const LEAST_SPAN_FT = 350;

/** From a hydrant to the mark of the engine that stands at it [pt]. */
const ENGINE_OFF = 11;
/** Between legs that run along the same street [pt]. */
const BESIDE = 4.2;

/** A hydrant nearer to the frame than this would be cut by it [pt]. */
const WHOLE_MARK = 9;

/**
 * Draws the map into a rectangle of the page [pt].
 * @returns labels of legs that found no room on it, and whether a hydrant is crossed out
 */
export function drawMap(
  sheet: Sheet,
  given: PlanMap,
  frame: Frame,
): { unwritten: string[]; crossed: boolean } {
  const { ink } = sheet;
  const { toPage, perFt } = projection(given, frame);
  const isWhole = ([x, y]: Point) =>
    Math.min(x - frame.x, frame.x + frame.width - x) >= WHOLE_MARK &&
    Math.min(y - frame.y, frame.y + frame.height - y) >= WHOLE_MARK;
  const map: PlanMap = {
    ...given,
    hydrants: given.hydrants.filter(({ used, at }) => used || isWhole(toPage(at))),
  };
  const line = (path: readonly LonLat[]) => path.map(toPage);
  const labels = new Labels(frame);
  const standBy = new Labels(frame);
  for (const { path, next } of map.lays) if (next) standBy.keepOff(line(path));
  const unwritten: string[] = [];
  const here = map.lays.filter(({ next }) => !next);
  const legs = here.map((leg, at) => ({
    ...leg,
    points: beside(line(leg.path), (at - (here.length - 1) / 2) * BESIDE),
  }));
  // The scale bar and the north arrow.
  labels.block([frame.x, frame.y + frame.height - 22, frame.x + 130, frame.y + frame.height]);
  labels.block([frame.x + frame.width - 24, frame.y, frame.x + frame.width, frame.y + 36]);
  ink.inside(frame.x, frame.y, frame.width, frame.height, () => {
    const wide = Math.max(3.5, Math.min(11, 30 * perFt));
    for (const { path, footOnly } of map.streets) {
      if (!footOnly) ink.path(line(path), { widthPt: wide, tone: 'hairline' });
    }
    for (const { path, footOnly } of map.streets) {
      if (footOnly) ink.path(line(path), { widthPt: 0.8, tone: 'line', dash: [2, 2] });
      else ink.path(line(path), { widthPt: wide - 1.1, tone: 'paper' });
    }
    const outline = map.footprint?.[0];
    if (outline) {
      ink.fill(line(outline), 'ground');
      for (const ring of map.footprint!) ink.path(line(ring), { widthPt: 1.4, tone: 'ink' });
    }
    for (const { path, next } of map.lays) {
      if (next) ink.path(line(path), { widthPt: 1.2, tone: 'water', dash: [3, 3] });
    }
    for (const { points, kind } of legs) {
      if (kind === 'road') {
        ink.path(points, { widthPt: 1.6, tone: 'ink', dash: [7, 3] });
        continue;
      }
      ink.path(points, { widthPt: 4, tone: 'paper' });
      ink.path(points, { widthPt: 2.4, tone: 'water' });
    }
    for (const { at, used } of map.waters) drop(sheet, toPage(at), used);
    for (const hydrant of map.hydrants) hydrantMark(sheet, toPage(hydrant.at), hydrant);
    if (!outline) ink.circle(toPage(map.building), 5, { fill: 'ground', widthPt: 1.4 });
    const pumps = map.pumps.map(({ name, at, atWater }) => {
      const [x, y] = toPage(at);
      // Beside its water, not on it.
      return { name, at: [x, y + (atWater ? ENGINE_OFF : 0)] as Point };
    });
    for (const { at } of pumps) engineMark(sheet, at);
    unwritten.push(...writeLabels(sheet, map, { labels, standBy }, toPage, legs, pumps));
  });
  ink.box(frame.x, frame.y, frame.width, frame.height, { widthPt: 0.8, tone: 'ink' });
  scaleBar(sheet, frame, perFt);
  return { unwritten, crossed: map.hydrants.some(({ outOfService }) => outOfService) };
}

/** A path moved to its side, so that legs along one street stand apart; its ends stay. */
function beside(points: readonly Point[], off: number): Point[] {
  if (Math.abs(off) < 0.1) return [...points];
  return points.map((point, at): Point => {
    if (at === 0 || at === points.length - 1) return point;
    const [before, after] = [points[at - 1]!, points[at + 1]!];
    const [dx, dy] = [after[0] - before[0], after[1] - before[1]];
    const length = Math.hypot(dx, dy) || 1;
    // Always to one side of the page, whichever way a leg runs.
    const side = dx > 0 || (dx === 0 && dy > 0) ? 1 : -1;
    return [point[0] - (side * off * dy) / length, point[1] + (side * off * dx) / length];
  });
}

function engineMark({ ink }: Sheet, [x, y]: Point): void {
  const corners: Point[] = [
    [x - 6, y - 4],
    [x + 6, y - 4],
    [x + 6, y + 4],
    [x - 6, y + 4],
    [x - 6, y - 4],
  ];
  ink.fill(corners, 'paper');
  ink.path(corners, { widthPt: 1.3, tone: 'ink' });
  ink.circle([x, y], 2, { fill: 'ink', widthPt: 0.5 });
}

function projection(map: PlanMap, frame: Frame) {
  const [lon0, lat0] = map.building;
  const step = 0.005;
  const perLon = crowFt([lon0, lat0], [lon0 + step, lat0]) / step;
  const perLat = crowFt([lon0, lat0 - step / 2], [lon0, lat0 + step / 2]) / step;
  const plane = ([lon, lat]: LonLat): Point => [(lon - lon0) * perLon, (lat - lat0) * perLat];
  const kept = [
    map.building,
    ...(map.footprint?.[0] ?? []),
    ...map.lays.filter(({ next }) => !next).flatMap(({ path }) => path),
    ...map.hydrants.filter(({ used }) => used).map(({ at }) => at),
    ...map.waters.filter(({ used }) => used).map(({ at }) => at),
  ].map(plane);
  const xs = kept.map(([x]) => x);
  const ys = kept.map(([, y]) => y);
  const middle: Point = [
    (Math.min(...xs) + Math.max(...xs)) / 2,
    (Math.min(...ys) + Math.max(...ys)) / 2,
  ];
  const span = (values: number[]) =>
    Math.max(LEAST_SPAN_FT, Math.max(...values) - Math.min(...values));
  const perFt = Math.min((frame.width - 2 * PAD) / span(xs), (frame.height - 2 * PAD) / span(ys));
  const toPage = (place: LonLat): Point => {
    const [x, y] = plane(place);
    return [
      frame.x + frame.width / 2 + (x - middle[0]) * perFt,
      frame.y + frame.height / 2 - (y - middle[1]) * perFt,
    ];
  };
  return { toPage, perFt };
}

function hydrantMark(
  sheet: Sheet,
  at: Point,
  { used, outOfService }: PlanMap['hydrants'][number],
): void {
  const radius = used ? 4.4 : 2.8;
  sheet.ink.circle(at, radius, { fill: used ? 'ink' : 'paper', widthPt: used ? 1 : 0.9 });
  if (!outOfService) return;
  const reach = radius + 2;
  const [x, y] = at;
  const stroke = { widthPt: 1.1, tone: 'ink' } as const;
  sheet.ink.line([x - reach, y - reach], [x + reach, y + reach], stroke);
  sheet.ink.line([x - reach, y + reach], [x + reach, y - reach], stroke);
}

/** Open water: a square, filled where it is drawn from. */
function drop({ ink }: Sheet, [x, y]: Point, used: boolean): void {
  const half = used ? 4.4 : 3;
  const corners: Point[] = [
    [x, y - half],
    [x + half, y],
    [x, y + half],
    [x - half, y],
    [x, y - half],
  ];
  ink.fill(corners, used ? 'ink' : 'paper');
  ink.path(corners, { widthPt: 1, tone: 'ink' });
}

/** Places along a leg where its label is tried. */
const ALONG = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

/** @returns labels of legs that found no room */
function writeLabels(
  sheet: Sheet,
  map: PlanMap,
  { labels, standBy }: { labels: Labels; standBy: Labels },
  toPage: (place: LonLat) => Point,
  legs: readonly { points: readonly Point[]; label: string }[],
  pumps: readonly { name: string; at: Point }[],
): string[] {
  const { ink } = sheet;
  const write = (text: string, [x, y]: Point, style: TextStyle, off: number): boolean => {
    const width = ink.widthOf(text, style.size, style.bold ?? false);
    const { size } = style;
    const places: Point[] = [
      [x + off, y + size * 0.35],
      [x - off - width, y + size * 0.35],
      [x - width / 2, y - off],
      [x - width / 2, y + off + size * 0.75],
    ];
    const boxes = places.map(([left, baseline]): [Point, Box] => [
      [left, baseline],
      [left - 1, baseline - size * 0.8, left + width + 1, baseline + size * 0.25],
    ]);
    const found =
      boxes.find(([, box]) => labels.isOff(box) && labels.take(box)) ??
      boxes.find(([, box]) => labels.take(box));
    if (!found) return false;
    halo(sheet, found[1]);
    put(ink, text, found[0][0], found[0][1], style);
    return true;
  };
  for (const { points } of legs) labels.keepOff(points);
  for (const { at } of pumps) {
    const [x, y] = at;
    labels.block([x - 6, y - 4, x + 6, y + 4]);
  }
  for (const { at } of map.hydrants) {
    const [x, y] = toPage(at);
    labels.block([x - 4, y - 4, x + 4, y + 4]);
  }

  for (const { name, at, used } of map.hydrants) {
    if (used) write(name, toPage(at), { size: 10.5, bold: true }, 8);
  }
  for (const { name, at, used } of map.waters) {
    if (used) write(name, toPage(at), { size: 10.5, bold: true }, 8);
  }
  const unnamed = pumps.filter(({ name, at }) => !write(name, at, { size: 9.5, bold: true }, 9));
  const unwritten = legs.filter(({ points, label }) => {
    if (label === '') return false;
    const style = { size: 9, bold: true };
    return !ALONG.some((share) => write(label, alongOf(points, share), style, 8));
  });
  for (const { name, at, used, outOfService } of map.hydrants) {
    if (!used) write(outOfService ? `${name}, out` : name, toPage(at), { size: 8 }, 5);
  }
  for (const { name, path } of [...map.streets].sort((a, b) => b.path.length - a.path.length)) {
    if (name !== '') streetName(sheet, name, path.map(toPage), { labels, standBy });
  }
  return [...unwritten.map(({ label }) => label), ...unnamed.map(({ name }) => `${name} (a box)`)];
}

/** White under a label, so that lines do not cross it. */
function halo({ ink }: Sheet, [left, top, right, bottom]: Box): void {
  ink.fill(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
      [left, top],
    ],
    'paper',
  );
}

function alongOf(points: readonly Point[], share: number): Point {
  const lengths = points
    .slice(1)
    .map(([x, y], at) => Math.hypot(x - points[at]![0], y - points[at]![1]));
  let left = share * lengths.reduce((sum, length) => sum + length, 0);
  for (const [at, length] of lengths.entries()) {
    const [from, to] = [points[at]!, points[at + 1]!];
    if (left <= length) {
      const part = length > 0 ? left / length : 0;
      return [from[0] + part * (to[0] - from[0]), from[1] + part * (to[1] - from[1])];
    }
    left -= length;
  }
  return points.at(-1)!;
}

const STREET = { size: 8, tone: 'soft' } as const;

/** Along the first stretch that has room for the name: off the supply that stands by where there is one, else over it. */
function streetName(
  sheet: Sheet,
  name: string,
  points: readonly Point[],
  { labels, standBy }: { labels: Labels; standBy: Labels },
): void {
  if (!nameAlong(sheet, name, points, labels, (box) => standBy.isOff(box))) {
    nameAlong(sheet, name, points, labels);
  }
}

/** @returns whether it was written; white under it where it may lie on the supply that stands by */
function nameAlong(
  sheet: Sheet,
  name: string,
  points: readonly Point[],
  labels: Labels,
  isClear?: (box: Box) => boolean,
): boolean {
  const { ink } = sheet;
  const width = ink.widthOf(name, STREET.size, false);
  for (const [at, to] of points.slice(1).entries()) {
    const from = points[at]!;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length < width * 1.15) continue;
    let angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
    if (Math.abs(angle) > Math.PI / 2 + 1e-6) angle += angle > 0 ? -Math.PI : Math.PI;
    for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
      const middle: Point = [
        from[0] + share * (to[0] - from[0]),
        from[1] + share * (to[1] - from[1]),
      ];
      const halfX =
        (Math.abs(Math.cos(angle)) * width + Math.abs(Math.sin(angle)) * STREET.size) / 2;
      const halfY =
        (Math.abs(Math.sin(angle)) * width + Math.abs(Math.cos(angle)) * STREET.size) / 2;
      const box: Box = [middle[0] - halfX, middle[1] - halfY, middle[0] + halfX, middle[1] + halfY];
      if (isClear && !isClear(box)) continue;
      if (!labels.isOff(box) || !labels.take(box)) continue;
      ink.turned(angle, middle, () => {
        if (!isClear) {
          const [x, y] = middle;
          halo(sheet, [x - width / 2 - 1, y - 4, x + width / 2 + 1, y + 4]);
        }
        put(ink, name, middle[0], middle[1] + STREET.size * 0.33, STREET, 'center');
      });
      return true;
    }
  }
  return false;
}

/** Round lengths of a bar [shown units]. */
const BARS = [50, 100, 200, 250, 500, 1000, 2000, 5000];

function scaleBar(sheet: Sheet, frame: Frame, perFt: number): void {
  const { ink, figures } = sheet;
  const unitFt = figures.units === 'us' ? 1 : 3.28084;
  const shown = [...BARS].reverse().find((bar) => bar * unitFt * perFt <= 90) ?? BARS[0]!;
  const width = shown * unitFt * perFt;
  const x = frame.x + 8;
  const y = frame.y + frame.height - 8;
  halo(sheet, [frame.x + 1, y - 10, x + width + 50, frame.y + frame.height - 1]);
  ink.path(
    [
      [x, y - 4],
      [x, y],
      [x + width, y],
      [x + width, y - 4],
    ],
    { widthPt: 1, tone: 'ink' },
  );
  put(ink, `${shown.toLocaleString('en-US')} ${figures.unit('length')}`, x + width + 5, y, {
    size: 8.5,
  });
  const north: Point = [frame.x + frame.width - 12, frame.y + 8];
  halo(sheet, [north[0] - 9, frame.y + 1, frame.x + frame.width - 1, north[1] + 27]);
  ink.path(
    [
      [north[0], north[1] + 16],
      [north[0], north[1]],
    ],
    { widthPt: 1.2, tone: 'ink' },
  );
  ink.fill(
    [
      [north[0], north[1] - 4],
      [north[0] + 3.5, north[1] + 5],
      [north[0] - 3.5, north[1] + 5],
      [north[0], north[1] - 4],
    ],
    'ink',
  );
  put(ink, 'N', north[0], north[1] + 25, { size: 9, bold: true }, 'center');
}
