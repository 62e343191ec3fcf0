/** A drill's score on paper: each criterion with its mark, its benchmark and its moments. */
import { amountWords, clockText } from '@plugside/drill';
import type { Ink } from '../sheet/ink.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { fitted, put, type TextStyle, wrapped } from '../sheet/text.ts';
import type { ReportCriterion, ReportMoment, Stands } from './data.ts';

const ROW_PT = 20;
const LINES = 2;
const MARK_PT = 8.5;
const HEAD: TextStyle = { size: 8.5, tone: 'soft' };
const SMALL: TextStyle = { size: 7.5, tone: 'soft' };

/** Shares of the width: mark, criterion, value, benchmark, moments. */
const SHARES = [0.13, 0.34, 0.09, 0.16, 0.28] as const;
const HEADS = ['', 'Criterion', 'Came to', 'At most', 'When'] as const;

/** Draws the rows; all moments that have no room here are the caller's to print. */
export function scoreRows(sheet: Sheet, score: readonly ReportCriterion[]): void {
  const { ink } = sheet;
  let at = sheet.left;
  const places = SHARES.map((share) => {
    const place = { x: at, width: sheet.width * share - 8 };
    at += sheet.width * share;
    return place;
  });
  sheet.y += 10;
  HEADS.forEach((head, index) => {
    const { x, width } = places[index]!;
    if (index === 2) put(ink, head, x + width, sheet.y, HEAD, 'right');
    else put(ink, head, x, sheet.y, HEAD);
  });
  sheet.y += 3.5;
  ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], { widthPt: 0.7, tone: 'ink' });
  for (const one of score.filter((one) => notJudgedFor(one) === undefined)) {
    row(sheet, one, places);
    ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], { widthPt: 0.4, tone: 'hairline' });
  }
  const without = score.flatMap((one) => {
    const why = notJudgedFor(one);
    return why === undefined ? [] : [`${one.label} (${why.replace(/\.$/, '').toLowerCase()})`];
  });
  if (without.length > 0)
    sheet.paragraph(`Not judged: ${without.join('; ')}.`, { size: SMALL.size, tone: 'soft' });
}

/** Why a criterion is named below the rows; what never came and has no benchmark would be an empty row. */
function notJudgedFor({
  notJudged,
  value,
  benchmark,
  stands,
}: ReportCriterion): string | undefined {
  if (notJudged !== undefined) return notJudged;
  const isEmpty = value === undefined && benchmark === undefined && stands === 'not judged';
  return isEmpty ? 'It never came about.' : undefined;
}

interface Place {
  x: number;
  width: number;
}

function row(sheet: Sheet, one: ReportCriterion, places: readonly Place[]): void {
  const { ink } = sheet;
  const [mark, criterion, value, benchmark, when] = places as [Place, Place, Place, Place, Place];
  const missed = one.stands === 'missed';
  const first = sheet.y + 9.2;
  const second = sheet.y + 17.2;
  const middle = sheet.y + 13.1;
  markOf(ink, one.stands, mark.x, middle);
  put(ink, one.stands, mark.x + MARK_PT + 5, middle, { size: 10, bold: missed });

  const label = fitted(ink, one.label, criterion.width, { size: 9.5, bold: missed }, 6.5);
  put(ink, label.text, criterion.x, one.detail === undefined ? middle : first, label.style);
  if (one.detail !== undefined) {
    const worst = fitted(ink, one.detail, criterion.width, SMALL, 6);
    put(ink, worst.text, criterion.x, second, worst.style);
  }

  const came = one.value === undefined ? 'never' : amountWords(one.value, one.unit);
  const shown = fitted(ink, came, value.width, { size: 11, bold: true }, 7);
  put(ink, shown.text, value.x + value.width, middle, shown.style, 'right');

  if (one.benchmark === undefined) {
    put(ink, 'no benchmark set', benchmark.x, middle, SMALL);
  } else {
    const whose = one.benchmarkFrom === 'department' ? 'the department’s' : 'ours, none given';
    const most = amountWords(one.benchmark, one.unit);
    put(ink, most, benchmark.x, first, { size: 9.5 });
    put(ink, whose, benchmark.x, second, SMALL);
  }

  const { lines } = momentLines(ink, one.moments, when.width);
  const style = { size: SMALL.size };
  const top = lines.length > 1 ? first : middle;
  lines.forEach((line, index) => {
    put(ink, line, when.x, top + index * 8.5, style);
  });
  sheet.y += ROW_PT;
}

/** "1:05–1:12 Attack engine" */
export function momentText(moment: ReportMoment): string {
  return `${timesOf(moment)} ${moment.what}`.trim();
}

function timesOf({ fromS, toS }: ReportMoment): string {
  if (fromS === undefined) return '';
  const from = clockText(fromS);
  const to = clockText(toS ?? fromS);
  return from === to ? from : `${from}–${to}`;
}

/** As many moments as two lines hold, without their words where these are long; the rest counted. */
function momentLines(
  ink: Ink,
  moments: readonly ReportMoment[],
  widthPt: number,
): { lines: string[]; all: boolean } {
  const [first] = moments;
  if (!first) return { lines: [], all: true };
  const whole = linesOf(ink, moments.map(momentText), widthPt);
  if (whole) return whole;
  const bare = first.fromS === undefined ? [] : moments.map(timesOf);
  const times = linesOf(ink, bare, widthPt);
  if (times) return { ...times, all: false };
  return { lines: [`${moments.length}, listed overleaf`], all: false };
}

function linesOf(ink: Ink, texts: readonly string[], widthPt: number) {
  let found: { lines: string[]; all: boolean } | undefined;
  for (let shown = 1; shown <= texts.length; shown += 1) {
    const more = texts.length - shown;
    const told = texts.slice(0, shown).join('; ');
    const text = more > 0 ? `${told}; and ${more} more` : told;
    const lines = wrapped(ink, text, widthPt, { size: SMALL.size });
    if (lines.length > LINES) break;
    found = { lines, all: more === 0 };
  }
  return found;
}

/** Criteria of which not every moment found room in its row. */
export function cutShort(sheet: Sheet, score: readonly ReportCriterion[]): ReportCriterion[] {
  const width = sheet.width * SHARES[4] - 8;
  return score.filter(({ moments }) => !momentLines(sheet.ink, moments, width).all);
}

/** A ticked box, a full one with a cross, or a stroke: told apart without colour. */
function markOf(ink: Ink, stands: Stands, x: number, baseline: number): void {
  const top = baseline - MARK_PT + 1;
  const [left, right, bottom] = [x + 0.5, x + 0.5 + MARK_PT, top + MARK_PT];
  if (stands === 'not judged') {
    const middle = top + MARK_PT / 2;
    ink.line([left + 1, middle], [right - 1, middle], { widthPt: 1, tone: 'line' });
    return;
  }
  if (stands === 'met') {
    ink.box(left, top, MARK_PT, MARK_PT, { widthPt: 0.8, tone: 'ink' });
    ink.path(
      [
        [left + 1.9, top + 4.4],
        [left + 3.7, bottom - 2.1],
        [right - 1.7, top + 2],
      ],
      { widthPt: 1.2, tone: 'ink' },
    );
    return;
  }
  ink.fill(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
      [left, top],
    ],
    'ink',
  );
  for (const [from, to] of [
    [left + 2, right - 2],
    [right - 2, left + 2],
  ] as const) {
    ink.line([from, top + 2], [to, bottom - 2], { widthPt: 1.3, tone: 'paper' });
  }
}
