/** All that was done, said and happened in a drill, in two columns over as many pages as it takes. */
import { clockText } from '@plugside/drill';
import type { Sheet } from '../sheet/sheet.ts';
import { put, type TextStyle, wrapped } from '../sheet/text.ts';
import { entryMark } from './charts.ts';
import type { ReportEntry } from './data.ts';

const SIZE = 8;
const LEAD = SIZE * 1.18;
const GAP_PT = 22;
const COLUMNS = 2;
/** Number, time, mark and who, from a column's left. */
const NUMBER_END = 20;
const TIME_END = 50;
const MARK_AT = 58;
const WHO_AT = 66;
const WHAT_AT = 134;
const SOFT: TextStyle = { size: SIZE, tone: 'soft' };

/** Draws the entries, each whole in its column. */
export function entryList(sheet: Sheet, entries: readonly ReportEntry[]): void {
  const { ink } = sheet;
  const columnPt = (sheet.width - GAP_PT * (COLUMNS - 1)) / COLUMNS;
  let top = sheet.y;
  let column = 0;
  let y = top;
  let lowest = top;
  entries.forEach((entry, index) => {
    const bold = entry.kind === 'caution' || entry.kind === 'fault';
    const own = entry.who === undefined;
    const whatAt = own ? WHO_AT : WHAT_AT;
    const what: TextStyle = { size: SIZE, bold };
    const lines = wrapped(ink, entry.what, columnPt - whatAt, what);
    const who = own ? [] : wrapped(ink, entry.who ?? '', WHAT_AT - WHO_AT - 3, SOFT);
    const heightPt = Math.max(lines.length, who.length, 1) * LEAD + 3.2;
    if (y + heightPt > sheet.bottom) {
      column += 1;
      if (column === COLUMNS) {
        sheet.breakPage();
        top = sheet.y + 4;
        column = 0;
      }
      y = top;
    }
    const x = sheet.left + column * (columnPt + GAP_PT);
    const base = y + SIZE * 1.05;
    put(ink, `${index + 1}`, x + NUMBER_END, base, { size: SIZE, bold: true }, 'right');
    put(ink, clockText(entry.timeS), x + TIME_END, base, { size: SIZE }, 'right');
    entryMark(ink, entry.kind, [x + MARK_AT, base - 2.7]);
    who.forEach((line, at) => {
      put(ink, line, x + WHO_AT, base + at * LEAD, SOFT);
    });
    lines.forEach((line, at) => {
      put(ink, line, x + whatAt, base + at * LEAD, what);
    });
    y += heightPt;
    ink.line([x, y - 0.6], [x + columnPt, y - 0.6], { widthPt: 0.3, tone: 'hairline' });
    lowest = Math.max(column === 0 ? top : lowest, y);
  });
  sheet.y = lowest;
}
