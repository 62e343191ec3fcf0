/** A drill's report on paper: the score and the pressures on one page, then all that happened. */
import type { Readable } from 'node:stream';
import { clockText } from '@plugside/drill';
import { cautions } from '../sheet/notes.ts';
import type { PaperOptions } from '../sheet/options.ts';
import { documentOf, type Sheet } from '../sheet/sheet.ts';
import { table } from '../sheet/table.ts';
import { fitted, put } from '../sheet/text.ts';
import { capital } from '../words.ts';
import { charts, entryMark, LANES_PT, LEAST_PANEL_PT } from './charts.ts';
import type { DrillReport, EntryKind, ReportFault } from './data.ts';
import { entryList } from './entry-list.ts';
import { cutShort, momentText, scoreRows } from './score-rows.ts';

/** More than this no crew does or says in an hour; a log beyond it would tie up the printer. */
const MOST_ENTRIES = 4000;

/**
 * A drill's report as a PDF.
 * @param report in the same units as the options' (see `drillReportFor`)
 * @returns the PDF as it is made
 */
export function renderDrillReport(report: DrillReport, options: PaperOptions): Readable {
  return documentOf(`Drill report, ${report.title}`, options, (sheet) => {
    const judged = report.score.filter(({ stands }) => stands !== 'not judged');
    const met = judged.filter(({ stands }) => stands === 'met').length;
    sheet.begin({
      kind: 'Drill report',
      name: report.title,
      aside: `${met} of ${judged.length} benchmarks met`,
      from: 'the drill’s log, played again',
      invented: report.invented,
    });
    facts(sheet, report);
    sheet.heading('Score', {
      aside: 'benchmarks: the department’s, or ours where it gives none',
      abovePt: 17,
    });
    scoreRows(sheet, report.score);
    sheet.heading('Pressure over the drill', {
      aside: 'as the gauges read, the main as it was; dashed: the least to be kept',
      abovePt: 17,
      withPt: LANES_PT + LEAST_PANEL_PT,
    });
    charts(sheet, report);
    sheet.breakPage();
    sheet.heading('Beware', { withPt: 40, abovePt: 15 });
    cautions(sheet, report.cautions, 9.5);
    faults(sheet, report.faults);
    moments(sheet, report);
    list(sheet, report);
  });
}

type Fact = [head: string, text: string, share: number];

function facts(sheet: Sheet, report: DrillReport): void {
  const { drilled, crew, startedAt, lastedS, beganWith, seed } = report;
  const began = `${startedAt.slice(0, 10)}, ${startedAt.slice(11, 16)} UTC`;
  const who = crew ?? 'not given';
  const isLong = sheet.ink.widthOf(who, 8, true) > sheet.width * 0.4 - 45;
  const drill: Fact = [capital(drilled.as), drilled.name, isLong ? 1 : 0.6];
  const rows: Fact[][] = [
    ...(isLong ? [[drill], [['Crew', who, 1] as Fact]] : [[drill, ['Crew', who, 0.4] as Fact]]),
    [
      ['Run on', began, 0.3],
      ['Lasted', clockText(lastedS), 0.3],
      ['Began with', beganWith, 0.22],
      ['Seed', `${seed}`, 0.18],
    ],
  ];
  for (const row of rows) {
    sheet.y += 14;
    let x = sheet.left;
    for (const [head, text, share] of row) {
      const width = sheet.width * share - 10;
      const end = put(sheet.ink, head, x, sheet.y, { size: 9, tone: 'soft' }) + 6;
      const shown = fitted(sheet.ink, text, x + width - end, { size: 10.5, bold: true }, 6.5);
      put(sheet.ink, shown.text, end, sheet.y, shown.style);
      x += sheet.width * share;
    }
  }
}

function faults(sheet: Sheet, list: readonly ReportFault[]): void {
  sheet.heading('What was made to go wrong', { withPt: list.length > 0 ? 60 : 20 });
  if (list.length === 0) {
    sheet.paragraph('Nothing: neither set before the drill nor put in by the instructor.');
    return;
  }
  table(
    sheet,
    [
      { head: 'From', share: 0.8, bold: true },
      { head: 'Fault', share: 4 },
      { head: 'Put in', share: 1.6 },
      { head: 'Lifted', share: 1 },
    ],
    list.map(({ what, fromS, liftedS, by }) => [
      fromS === undefined ? 'never' : clockText(fromS),
      what,
      by === 'scene' ? 'before the drill' : 'by the instructor',
      liftedS === undefined ? 'not lifted' : clockText(liftedS),
    ]),
    { size: 9.5 },
  );
}

/** All moments of those criteria that have more of them than their row on the first page holds. */
function moments(sheet: Sheet, { score }: DrillReport): void {
  const short = cutShort(sheet, score);
  if (short.length === 0) return;
  sheet.heading('Every moment', { aside: 'of criteria with more than the score has room for' });
  for (const { label, moments: all } of short) {
    sheet.need(30);
    sheet.y += 3;
    sheet.paragraph(label, { bold: true, size: 9 });
    sheet.paragraph(all.map(momentText).join('; '), { size: 8.5 });
  }
}

const KEY: readonly [EntryKind, string][] = [
  ['done', 'done'],
  ['refused', 'not possible'],
  ['said', 'said'],
  ['fact', 'happened'],
  ['caution', 'went wrong'],
  ['fault', 'fault, by the instructor'],
];

function list(sheet: Sheet, { entries }: DrillReport): void {
  sheet.heading('What was done, said and happened', { aside: 'times in min:s', withPt: 60 });
  if (entries.length === 0) {
    sheet.paragraph('Nothing was done in this drill.');
    return;
  }
  sheet.y += 11;
  let x = sheet.left + 3;
  for (const [kind, text] of KEY) {
    entryMark(sheet.ink, kind, [x, sheet.y - 2.7]);
    x = put(sheet.ink, text, x + 6, sheet.y, { size: 8, tone: 'soft' }) + 16;
  }
  put(
    sheet.ink,
    '* played by the computer',
    sheet.right,
    sheet.y,
    { size: 8, tone: 'soft' },
    'right',
  );
  sheet.y += 7;
  if (entries.length > MOST_ENTRIES) {
    sheet.paragraph(
      `The first ${MOST_ENTRIES.toLocaleString('en-US')} of ${entries.length.toLocaleString('en-US')}; the replay shows all of them.`,
    );
    sheet.y += 4;
  }
  entryList(sheet, entries.slice(0, MOST_ENTRIES));
}
