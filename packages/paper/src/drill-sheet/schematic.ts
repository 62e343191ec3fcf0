/** The evolution from source to nozzle, and under it the pressure along the hose, on one axis. */
import {
  formatHoseSize,
  limitsFor,
  nameOf,
  type Plan,
  type PressureProfile,
  type ProfilePath,
  type ProfileStation,
  pieceOf,
} from '@plugside/fireground';
import type { Point } from '../sheet/ink.ts';
import { type Box, type Frame, Labels } from '../sheet/labels.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { fitted, put } from '../sheet/text.ts';

/** Where the water passes a piece; its stations stand above one another. */
interface Stop {
  piece: string;
  alongFt: number;
  stations: ProfileStation[];
  x: number;
}

/** Hose between two stops. */
interface Reach {
  line: string;
  terrain: ProfileStation[];
}

const LEFT = 30;
const RIGHT = 12;
/** Names, symbols and hose above the pressures; of several legs each has less. */
const STRIP = { tall: 88, low: 70 };
const TALL = 200;
const FOOT = 16;
/** Least distance between two stops [pt]. */
const LEAST = 44;

/** Draws both into a rectangle of the page [pt], for one source: its leg, and past the scene the longest line. */
export function schematic(
  sheet: Sheet,
  plan: Plan,
  { supply, attack }: PressureProfile,
  leg: number,
  frame: Frame,
): void {
  const path = supply[leg];
  if (!path) {
    put(sheet.ink, 'No water moves in this plan.', frame.x, frame.y + 14, { size: 10 });
    return;
  }
  const way = wayOf(path, leg === 0 ? attack : []);
  const { stops, reaches } = way;
  place(stops, frame);
  strip(sheet, plan, stops, reaches, frame);
  pressures(sheet, plan, stops, reaches, {
    ...frame,
    y: frame.y + stripOf(frame),
    height: frame.height - stripOf(frame),
  });
}

const stripOf = ({ height }: Frame) => (height < TALL ? STRIP.low : STRIP.tall);

/** The main supply and the longest line past the scene, as one way. */
function wayOf(first: ProfilePath, attack: readonly ProfilePath[]) {
  const [longest] = [...attack].sort(
    (a, b) => b.stations.at(-1)!.alongFt - a.stations.at(-1)!.alongFt,
  );
  const stops: Stop[] = [];
  const reaches: (Reach | undefined)[] = [];
  const add = (path: ProfilePath, offsetFt: number) => {
    path.stations.forEach((station, at) => {
      const alongFt = station.alongFt + offsetFt;
      const span = path.spans[at - 1];
      const line = span?.kind === 'hose' ? span.line : undefined;
      if (station.kind === 'terrain') {
        const reach = reaches[stops.length - 1] ?? { line: line ?? '', terrain: [] };
        reach.terrain.push({ ...station, alongFt });
        reaches[stops.length - 1] = reach;
        return;
      }
      const last = stops.at(-1);
      if (last && last.piece === station.piece && line === undefined) {
        last.stations.push(station);
        return;
      }
      if (last && line) reaches[stops.length - 1] ??= { line, terrain: [] };
      stops.push({ piece: station.piece, alongFt, stations: [station], x: 0 });
    });
  };
  add(first, 0);
  if (longest) add(longest, first.stations.at(-1)!.alongFt);
  return { stops, reaches };
}

/** Each stop gets room to be seen; what is left goes by length of hose. */
function place(stops: Stop[], frame: Frame): void {
  const from = frame.x + LEFT + 14;
  const width = frame.width - LEFT - RIGHT - 36;
  const gaps = stops.slice(1).map((stop, at) => stop.alongFt - stops[at]!.alongFt);
  const all = gaps.reduce((sum, gap) => sum + gap, 0);
  const least = Math.min(LEAST, width / Math.max(1, gaps.length) / 1.2);
  const free = Math.max(0, width - least * gaps.length);
  let x = from;
  stops.forEach((stop, at) => {
    if (at > 0) x += least + (all > 0 ? (free * gaps[at - 1]!) / all : free / gaps.length);
    stop.x = x;
  });
}

function strip(
  sheet: Sheet,
  plan: Plan,
  stops: readonly Stop[],
  reaches: readonly (Reach | undefined)[],
  frame: Frame,
): void {
  const { ink, figures } = sheet;
  const y = frame.y + stripOf(frame) * 0.51;
  const hose = new Rows(y + 18);
  stops.slice(1).forEach((stop, at) => {
    const from = stops[at]!;
    const line = plan.lines.find(({ id }) => id === reaches[at]?.line);
    if (!line) {
      ink.line([from.x, y], [stop.x, y], { widthPt: 0.8, tone: 'ink' });
      return;
    }
    const count = Math.min(line.count, 3);
    for (let index = 0; index < count; index += 1) {
      const off = (index - (count - 1) / 2) * 4;
      ink.line([from.x, y + off], [stop.x, y + off], { widthPt: 2.4, tone: 'water' });
    }
    const words = `${line.count > 1 ? `${line.count} × ` : ''}${figures.full(line.lengthFt, 'length')} of ${formatHoseSize(line.hose, figures.units)}`;
    hose.write(sheet, words, (from.x + stop.x) / 2, frame, { size: 9 }, 10.5);
  });
  const names = new Rows(y - 12);
  for (const stop of stops) {
    symbol(sheet, plan, stop, y);
    names.write(sheet, nameOfStop(plan, stop.piece), stop.x, frame, { size: 9, bold: true }, -10.5);
  }
}

/** Words beside one another where there is room, else on a row farther from the line. */
class Rows {
  readonly #at: number;
  /** Where each row is free from [pt]. */
  readonly #free = [0, 0, 0];

  constructor(at: number) {
    this.#at = at;
  }

  write(
    sheet: Sheet,
    text: string,
    middle: number,
    frame: Frame,
    style: { size: number; bold?: boolean },
    step: number,
  ): void {
    const { ink } = sheet;
    const most = fitted(ink, text, frame.width * 0.45, style, 8);
    const width = ink.widthOf(most.text, most.style.size, style.bold ?? false);
    const left = Math.max(frame.x, Math.min(middle - width / 2, frame.x + frame.width - width));
    const row = this.#free.findIndex((free) => left >= free);
    const used = row < 0 ? this.#free.indexOf(Math.min(...this.#free)) : row;
    const from = Math.max(left, this.#free[used]!);
    const room = frame.x + frame.width - from;
    const said = fitted(ink, most.text, Math.min(width + 0.1, room), most.style, 8);
    if (room < 12) return;
    put(ink, said.text, from, this.#at + used * step, said.style);
    this.#free[used] = from + ink.widthOf(said.text, said.style.size, style.bold ?? false) + 5;
  }
}

function nameOfStop(plan: Plan, id: string): string {
  const piece = pieceOf(plan, id);
  return piece ? nameOf(piece) : 'gated';
}

function symbol({ ink }: Sheet, plan: Plan, { piece, x }: Stop, y: number): void {
  if (plan.hydrants.some(({ id }) => id === piece)) {
    ink.circle([x, y], 7, { fill: 'paper', widthPt: 1.6, tone: 'ink' });
    ink.circle([x, y], 2.4, { fill: 'ink', widthPt: 0.5, tone: 'ink' });
    return;
  }
  if (plan.rigs.some(({ id }) => id === piece)) {
    square(ink, x, y, 11, 7.5);
    ink.circle([x, y], 4, { fill: 'paper', widthPt: 1.2, tone: 'ink' });
    return;
  }
  if (plan.nozzles.some(({ id }) => id === piece)) {
    const shape: Point[] = [
      [x - 5, y - 3],
      [x + 9, y - 6],
      [x + 9, y + 6],
      [x - 5, y + 3],
      [x - 5, y - 3],
    ];
    ink.fill(shape, 'paper');
    ink.path(shape, { widthPt: 1.4, tone: 'ink' });
    return;
  }
  square(ink, x, y, 4.5, 4.5);
}

function square(ink: Sheet['ink'], x: number, y: number, halfX: number, halfY: number): void {
  const corners: Point[] = [
    [x - halfX, y - halfY],
    [x + halfX, y - halfY],
    [x + halfX, y + halfY],
    [x - halfX, y + halfY],
    [x - halfX, y - halfY],
  ];
  ink.fill(corners, 'paper');
  ink.path(corners, { widthPt: 1.4, tone: 'ink' });
}

function pressures(
  sheet: Sheet,
  plan: Plan,
  stops: readonly Stop[],
  reaches: readonly (Reach | undefined)[],
  frame: Frame,
): void {
  const { ink, figures } = sheet;
  const x0 = frame.x + LEFT;
  const x1 = frame.x + frame.width - RIGHT;
  const y0 = frame.y + frame.height - FOOT;
  const y1 = frame.y + 10;
  const greatest = Math.max(...stops.flatMap(({ stations }) => stations.map(({ psi }) => psi)), 60);
  const topPsi = greatest * 1.16;
  const y = (psi: number) => y0 - ((y0 - y1) * Math.max(0, psi)) / topPsi;
  const step = figures.units === 'us' ? (topPsi > 160 ? 50 : 25) : topPsi > 160 ? 50.763 : 29.008;
  for (let psi = 0; psi <= topPsi; psi += step) {
    ink.line([x0, y(psi)], [x1, y(psi)], { widthPt: 0.35, tone: 'hairline' });
    put(ink, figures.bare(psi, 'pressure'), x0 - 4, y(psi) + 3, { size: 8, tone: 'soft' }, 'right');
  }
  put(ink, figures.unit('pressure'), frame.x, y1 + 1, { size: 8, tone: 'soft' });
  const least = limitsFor(plan).hoseFedIntakePsi;
  ink.line([x0, y(least)], [x1, y(least)], { widthPt: 0.8, tone: 'ink', dash: [4, 2.5] });
  ink.path(
    [
      [x0, y1],
      [x0, y0],
      [x1, y0],
    ],
    { widthPt: 0.8, tone: 'ink' },
  );

  const points: Point[] = [];
  stops.forEach((stop, at) => {
    for (const { psi } of stop.stations) points.push([stop.x, y(psi)]);
    const next = stops[at + 1];
    for (const { alongFt, psi } of reaches[at]?.terrain ?? []) {
      if (!next) continue;
      const share = (alongFt - stop.alongFt) / (next.alongFt - stop.alongFt);
      points.push([stop.x + share * (next.x - stop.x), y(psi)]);
    }
  });
  ink.path(points, { widthPt: 2, tone: 'water' });

  const labels = new Labels({ x: x0, y: y1 - 8, width: x1 - x0, height: y0 - y1 + 8 });
  labels.keepOff(points);
  for (const stop of stops) {
    ink.line([stop.x, y0], [stop.x, y0 + 3], { widthPt: 0.6, tone: 'ink' });
    const ends = [stop.stations[0]!, stop.stations.at(-1)!];
    const told = Math.abs(ends[0]!.psi - ends[1]!.psi) < 8 ? ends.slice(0, 1) : ends;
    for (const { psi } of told)
      pressureLabel(sheet, labels, figures.bare(psi, 'pressure'), [stop.x, y(psi)]);
  }
  let written = Number.NEGATIVE_INFINITY;
  for (const stop of stops) {
    const text = figures.bare(stop.alongFt, 'length');
    const half = ink.widthOf(text, 8, false) / 2;
    if (stop.x - half < written + 5 || stop.x + half > x1) continue;
    put(ink, text, stop.x, y0 + 12, { size: 8, tone: 'soft' }, 'center');
    written = stop.x + half;
  }
  put(ink, figures.unit('length'), frame.x, y0 + 12, { size: 8, tone: 'soft' });
}

function pressureLabel(sheet: Sheet, labels: Labels, text: string, [x, y]: Point): void {
  const { ink } = sheet;
  const style = { size: 10, bold: true };
  const width = ink.widthOf(text, style.size, true);
  const places: Point[] = [
    [x + 4, y - 4],
    [x - width - 4, y - 4],
    [x + 4, y + 11],
    [x - width - 4, y + 11],
    [x - width / 2, y - 6],
    [x - width / 2, y + 14],
  ];
  const boxes = places.map(([left, baseline]): [Point, Box] => [
    [left, baseline],
    [left - 1, baseline - style.size * 0.78, left + width + 1, baseline + 1.5],
  ]);
  const found =
    boxes.find(([, box]) => labels.isOff(box) && labels.take(box)) ??
    boxes.find(([, box]) => labels.take(box));
  if (found) put(ink, text, found[0][0], found[0][1], style);
}
