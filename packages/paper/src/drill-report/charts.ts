/** Pressures over a drill on one axis of time, with what was done and said above. */
import { clockText, compoundShare, fullVacuumInHg, fullVacuumKpa, isVacuum } from '@plugside/drill';
import { fromInside, toInside } from '@plugside/fireground';
import type { Ink, Point, Stroke } from '../sheet/ink.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { fitted, put, type TextStyle, wrappedTo } from '../sheet/text.ts';
import type { DrillReport, EntryKind, ReportEntry, ReportPanel } from './data.ts';
import { numberGroups, type TimeAxis, timeTicks, xAt } from './time-axis.ts';

const NAMES_PT = 128;
/** Right of the axis, for a number at its very end. */
const END_PT = 24;
const LANE_PT = 8;
const NUMBER_ROWS = 2;
const NUMBER: TextStyle = { size: 6.5 };
const AXIS: TextStyle = { size: 7, tone: 'soft' };
export const LANES_PT = NUMBER_ROWS * 8 + 3 * LANE_PT + 4;
const FOOT_PT = 14;
export const LEAST_PANEL_PT = 37;
const MOST_PANEL_PT = 78;
const GAP_PT = 9;

/** Told apart in black and white by weight and dashes. */
const STROKES: readonly Stroke[] = [
  { widthPt: 1.7, tone: 'water' },
  { widthPt: 0.7, tone: 'ink' },
  { widthPt: 1.1, tone: 'soft', dash: [1.2, 1.8] },
];

/** An axis goes at least so far [psi]: where nothing ever stood, its noughts are not drawn as a scale. */
const LEAST_TOP_PSI = 50;

/** From here on marks are smaller, and from this many seconds lines thinner. */
const CROWDED = 150;
const LONG_S = 600;

const LANES: readonly { name: string; kinds: readonly EntryKind[] }[] = [
  { name: 'done', kinds: ['done', 'refused'] },
  { name: 'said', kinds: ['said'] },
  { name: 'happened', kinds: ['fact', 'caution', 'fault'] },
];

/** Draws marks and panels, as high as the page's room allows; on more pages where one does not hold them. */
export function charts(sheet: Sheet, report: DrillReport): void {
  const { panels, entries, timesS } = report;
  const axis: TimeAxis = {
    x0: sheet.left + NAMES_PT,
    x1: sheet.right - END_PT,
    lastS: Math.max(1, report.lastedS),
  };
  for (let at = 0; at < panels.length; ) {
    const roomPt = sheet.room - LANES_PT - FOOT_PT;
    const fit = Math.max(1, Math.floor(roomPt / (LEAST_PANEL_PT + GAP_PT)));
    const shown = panels.slice(at, at + fit);
    const heightPt = Math.min(MOST_PANEL_PT, roomPt / shown.length - GAP_PT);
    lanes(sheet, axis, entries);
    for (const panel of shown) {
      sheet.y += GAP_PT;
      drawPanel(sheet, axis, panel, timesS, heightPt);
    }
    foot(sheet, axis);
    at += fit;
    if (at < panels.length) sheet.breakPage();
  }
}

function lanes(sheet: Sheet, axis: TimeAxis, entries: readonly ReportEntry[]): void {
  const { ink, left } = sheet;
  const top = sheet.y + 2;
  const lanesTop = top + NUMBER_ROWS * 8;
  put(ink, 'numbers as in the list', left, top + 6.5, AXIS);
  const places = entries.map(({ timeS }) => xAt(axis, timeS));
  const widthOf = (text: string) => ink.widthOf(text, 6.5, false);
  const groups = numberGroups(places, NUMBER_ROWS, widthOf, sheet.right);
  for (const { x, row, text } of groups) {
    const base = top + row * 8 + 6.5;
    put(ink, text, x + 2, base, NUMBER);
    const isUnder = (other: (typeof groups)[number]) =>
      other.row > row && other.x < x + 1 && other.endX > x - 1;
    const end = groups.some(isUnder) ? base + 1 : lanesTop + 3 * LANE_PT;
    ink.line([x, base - 5.5], [x, end], { widthPt: 0.35, tone: 'hairline' });
  }
  const share = entries.length > CROWDED ? 0.6 : 1;
  LANES.forEach(({ name, kinds }, lane) => {
    const middle = lanesTop + lane * LANE_PT + LANE_PT / 2;
    put(ink, name, axis.x0 - 6, middle + 2.4, AXIS, 'right');
    ink.line([axis.x0, middle], [axis.x1, middle], { widthPt: 0.3, tone: 'hairline' });
    entries.forEach(({ kind }, at) => {
      if (kinds.includes(kind)) entryMark(ink, kind, [places[at]!, middle], share);
    });
  });
  sheet.y = lanesTop + 3 * LANE_PT + 2;
}

/** The mark of an entry, on the axis and in the list. @param share of its full size [0 … 1] */
export function entryMark(ink: Ink, kind: EntryKind, [x, y]: Point, share = 1): void {
  const half = 2.9 * share;
  const triangle: Point[] = [
    [x, y - 3 * share],
    [x + half, y + 2.4 * share],
    [x - half, y + 2.4 * share],
    [x, y - 3 * share],
  ];
  switch (kind) {
    case 'done':
      ink.line([x, y - 3], [x, y + 3], { widthPt: 1.2 * share ** 2, tone: 'ink' });
      return;
    case 'refused':
      ink.line([x - 2.2, y - 2.2], [x + 2.2, y + 2.2], { widthPt: 1, tone: 'ink' });
      ink.line([x - 2.2, y + 2.2], [x + 2.2, y - 2.2], { widthPt: 1, tone: 'ink' });
      return;
    case 'said':
      ink.circle([x, y], 2.2 * share, { fill: 'paper', widthPt: 0.9 * share });
      return;
    case 'fact':
      ink.circle([x, y], 1.1 * share, { fill: 'soft', tone: 'soft', widthPt: 0.2 });
      return;
    case 'caution':
      ink.fill(triangle, 'paper');
      ink.path(triangle, { widthPt: 0.9 * share, tone: 'ink' });
      return;
    case 'fault':
      ink.fill(triangle, 'ink');
  }
}

function drawPanel(
  sheet: Sheet,
  axis: TimeAxis,
  panel: ReportPanel,
  timesS: readonly number[],
  heightPt: number,
): void {
  const { ink, left, figures } = sheet;
  const unit = figures.unit('pressure');
  const shown = (psi: number) => fromInside(psi, 'pressure', unit);
  const most = panel.lines.reduce(
    (high, { valuesPsi }) => valuesPsi.reduce((a, b) => Math.max(a, b), high),
    Math.max(LEAST_TOP_PSI, (panel.least?.psi ?? 0) * 1.5),
  );
  const least = panel.lines.reduce(
    (low, { valuesPsi }) => valuesPsi.reduce((a, b) => Math.min(a, b), low),
    0,
  );
  const half = roundOver(shown(most) / 2);
  const foot = sheet.y + heightPt;
  // Under a vacuum the scale goes on downwards as on a compound gauge.
  const vacuum = isVacuum(least);
  const topPsi = toInside(2 * half, 'pressure', unit);
  const y = (psi: number) =>
    foot - heightPt * (vacuum ? compoundShare(psi, topPsi) : Math.max(0, psi) / topPsi);
  for (const value of [0, half, 2 * half]) {
    const at = y(toInside(value, 'pressure', unit));
    ink.line([axis.x0, at], [axis.x1, at], {
      widthPt: value === 0 ? 0.7 : 0.35,
      tone: value === 0 ? 'line' : 'hairline',
    });
    put(ink, value.toLocaleString('en-US'), axis.x0 - 4, at + 2.5, AXIS, 'right');
  }
  if (vacuum) {
    const inHg = figures.unit('vacuum') === 'inHg';
    const end = String(inHg ? fullVacuumInHg : fullVacuumKpa);
    ink.line([axis.x0, foot], [axis.x1, foot], { widthPt: 0.35, tone: 'hairline' });
    put(ink, end, axis.x0 - 4, foot + 2.5, AXIS, 'right');
    put(ink, figures.unit('vacuum'), axis.x1 + 4, foot + 2.5, AXIS);
  }
  for (const timeS of timeTicks(axis)) {
    const x = xAt(axis, timeS);
    ink.line([x, sheet.y], [x, foot], { widthPt: 0.3, tone: 'hairline' });
  }
  put(ink, unit, axis.x1 + 4, y(topPsi) + 2.5, AXIS);
  if (panel.least) {
    const at = y(panel.least.psi);
    ink.line([axis.x0, at], [axis.x1, at], { widthPt: 0.8, tone: 'ink', dash: [4, 2.5] });
    put(ink, 'least', axis.x1 + 4, at + 2.5, AXIS);
  }
  panel.lines.forEach(({ valuesPsi }, index) => {
    const points = valuesPsi.map((psi, at): Point => [xAt(axis, timesS[at]!), y(psi)]);
    const stroke = STROKES[index]!;
    const { widthPt = 1 } = stroke;
    const thin = axis.lastS > LONG_S ? 0.6 : 1;
    ink.path(thinned(points), { ...stroke, widthPt: widthPt * thin });
  });
  const name = wrappedTo(ink, panel.name, NAMES_PT - 26, { size: 9, bold: true }, 2, 6.5);
  let nameY = sheet.y + 7;
  name.lines.forEach((line, index) => {
    nameY = sheet.y + 7 + index * name.style.size * 1.1;
    put(ink, line, left, nameY, name.style);
  });
  panel.lines.forEach(({ label }, index) => {
    const base = nameY + 10 + index * 9.2;
    ink.line([left, base - 2.4], [left + 15, base - 2.4], STROKES[index]!);
    const said = fitted(ink, label, NAMES_PT - 45, { size: 7.5 }, 5.5);
    put(ink, said.text, left + 19, base, said.style);
  });
  sheet.y = foot;
}

function foot(sheet: Sheet, axis: TimeAxis): void {
  for (const timeS of timeTicks(axis)) {
    put(sheet.ink, clockText(timeS), xAt(axis, timeS), sheet.y + 9, AXIS, 'center');
  }
  put(sheet.ink, 'min:s', axis.x0 - 16, sheet.y + 9, AXIS, 'right');
  sheet.y += FOOT_PT;
}

/** The first round number at or over a value. */
function roundOver(value: number): number {
  const scale = 10 ** Math.floor(Math.log10(Math.max(value, 0.1)));
  const found = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10].find((one) => one * scale >= value - 1e-9);
  return Math.round((found ?? 10) * scale * 1000) / 1000;
}

/** The least and the greatest of what falls on one place, so that no dip is lost and no line is long. */
function thinned(points: readonly Point[], everyPt = 0.4): Point[] {
  const kept: Point[] = [];
  for (let at = 0; at < points.length; ) {
    const bucket = Math.floor(points[at]![0] / everyPt);
    const from = at;
    while (at < points.length && Math.floor(points[at]![0] / everyPt) === bucket) at += 1;
    const within = points.slice(from, at);
    if (within.length <= 2) {
      kept.push(...within);
      continue;
    }
    const byHeight = [...within].sort((a, b) => a[1] - b[1]);
    const ends = [byHeight[0]!, byHeight.at(-1)!];
    kept.push(...ends.sort((a, b) => a[0] - b[0]));
  }
  return kept;
}
