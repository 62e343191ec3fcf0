/** Tables: text wraps, numbers line up at their point, nothing leaves its column. Sizes in points. */
import type { Sheet } from './sheet.ts';
import { fitted, put, wrapped, wrappedTo } from './text.ts';

export interface Column {
  head: string;
  /** Size of the head where it is read as a figure. */
  headSize?: number;
  /** Under the head, small. */
  unit?: string;
  /** Share of the width that is left; numbers as a rule get equal shares. */
  share: number;
  /** Numbers line up at the point; left out: text. */
  number?: boolean;
  /** Text that shrinks into one line rather than wrap: names. */
  oneLine?: boolean;
  /** Larger than the table's text. */
  size?: number;
  bold?: boolean;
}

export interface MarkedCell {
  text: string;
  /** A letter behind a number, told in the legend. */
  mark?: string;
  /** Smaller, under the text. */
  below?: string;
}

export type Cell = string | MarkedCell;

export interface TableOptions {
  size?: number;
  /** Least height of a row. */
  rowPt?: number;
  /** A head over some columns: from, to (not included), text. */
  over?: readonly { from: number; to: number; text: string }[];
  /** Rows under which a stronger rule goes. */
  breaksAfter?: ReadonlySet<number>;
  /** Words above a row, under a stronger rule: what holds from there on. */
  wordsAbove?: ReadonlyMap<number, string>;
  /** A column that a strong upright line goes before. */
  barBefore?: number;
}

const PAD = 4;
const HEAD_SIZE = 8.5;
const BELOW = 0.72;
/** Words above a row: their size, and the room that they take. */
const WORDS_SIZE = 9;
export const WORDS_ROOM = 13;
/** Above and below a row's text together, of its size. */
const GAP = 0.22;

const cellOf = (cell: Cell | undefined): MarkedCell =>
  typeof cell === 'string' ? { text: cell } : (cell ?? { text: '' });

/** Draws a table over the sheet's width, on more pages where one does not hold it, with its head on each. */
export function table(
  sheet: Sheet,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  options: TableOptions = {},
): void {
  const { size = 10, rowPt = size * 1.5 } = options;
  const { ink } = sheet;
  const shares = columns.reduce((sum, { share }) => sum + share, 0);
  let at = sheet.left;
  const places = columns.map(({ share }) => {
    const width = (sheet.width * share) / shares;
    const place = { x: at, width };
    at += width;
    return place;
  });
  const numbers = columns.map((column, index) =>
    column.number
      ? numberPlace(
          sheet,
          rows.map((row) => cellOf(row[index])),
          places[index]!,
          {
            size: column.size ?? size,
            bold: column.bold ?? false,
          },
        )
      : undefined,
  );
  const heads = columns.map(({ head, headSize }, index) =>
    headSize
      ? wrappedTo(ink, head, places[index]!.width - PAD, { size: headSize }, 1)
      : wrappedTo(ink, head, places[index]!.width - PAD, { size: HEAD_SIZE, tone: 'soft' }, 2),
  );

  const drawHead = () => {
    if (options.over && options.over.length > 0) {
      sheet.y += 11;
      for (const { from, to, text } of options.over) {
        const left = places[from]!.x;
        const last = places[to - 1]!;
        const width = last.x + last.width - left;
        const shown = fitted(ink, text, width - 2 * PAD, { size: HEAD_SIZE, bold: true });
        put(ink, shown.text, left + width / 2, sheet.y, shown.style, 'center');
        ink.line([left + PAD, sheet.y + 3], [left + width - PAD, sheet.y + 3], { tone: 'line' });
      }
      sheet.y += 4;
    }
    const heights = heads.map(({ lines, style }) => lines.length * (style.size + 1.5));
    sheet.y += 2 + Math.max(...heights);
    heads.forEach(({ lines, style }, index) => {
      const { x, width } = places[index]!;
      lines.forEach((line, row) => {
        const y = sheet.y - (lines.length - 1 - row) * (style.size + 1.5);
        if (columns[index]!.number) put(ink, line, x + width - PAD, y, style, 'right');
        else put(ink, line, x + (index === 0 ? 0 : PAD), y, style);
      });
    });
    if (columns.some(({ unit }) => unit)) {
      sheet.y += 8.5;
      columns.forEach(({ unit, number }, index) => {
        if (!unit) return;
        const { x, width } = places[index]!;
        const shown = fitted(ink, unit, width - PAD, { size: 8, tone: 'soft' });
        if (number) put(ink, shown.text, x + width - PAD, sheet.y, shown.style, 'right');
        else put(ink, shown.text, x + (index === 0 ? 0 : PAD), sheet.y, shown.style);
      });
    }
    sheet.y += 3.5;
    ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], { widthPt: 0.7, tone: 'ink' });
  };

  let headed = false;
  rows.forEach((row, rowIndex) => {
    const laid = columns.map((column, index) => {
      const cell = cellOf(row[index]);
      const style = { size: column.size ?? size, bold: column.bold ?? false };
      const width = places[index]!.width - PAD - (index === 0 ? 0 : PAD);
      if (column.oneLine) {
        const one = fitted(ink, cell.text, width, style, style.size * 0.6);
        return { cell, style: { ...style, ...one.style }, lines: [one.text], below: [] };
      }
      return column.number
        ? { cell, style, lines: [cell.text], below: [] as string[] }
        : {
            cell,
            style,
            lines: cell.text === '' ? [] : wrapped(ink, cell.text, width, style),
            below: cell.below
              ? wrapped(ink, cell.below, width, { size: style.size * BELOW, tone: 'soft' })
              : [],
          };
    });
    const heights = laid.map(
      ({ lines, below, style }) =>
        lines.length * style.size * 1.12 +
        below.length * style.size * BELOW * 1.2 +
        style.size * GAP,
    );
    const height = Math.max(rowPt, ...heights);
    const headPt = headed ? 0 : 44;
    const said = options.wordsAbove?.get(rowIndex);
    if (sheet.need(height + headPt + (said ? WORDS_ROOM : 0)) || !headed) drawHead();
    headed = true;
    if (said) {
      const shown = fitted(ink, said, sheet.width - PAD, { size: WORDS_SIZE, bold: true });
      put(ink, shown.text, sheet.left, sheet.y + 9.5, shown.style);
      sheet.y += WORDS_ROOM;
    }
    const top = sheet.y;
    laid.forEach(({ cell, style, lines, below }, index) => {
      const place = places[index]!;
      const column = columns[index]!;
      const block = heights[index]! - style.size * GAP;
      let y = top + (height - block) / 2 + style.size * 0.86;
      if (column.number) {
        drawNumber(sheet, cell, y, numbers[index]!);
        return;
      }
      const x = place.x + (index === 0 ? 0 : PAD);
      for (const line of lines) {
        put(ink, line, x, y, style);
        y += style.size * 1.12;
      }
      y += style.size * (BELOW * 1.2 - 1.12);
      for (const line of below) {
        put(ink, line, x, y, { size: style.size * BELOW, tone: 'soft' });
        y += style.size * BELOW * 1.2;
      }
    });
    sheet.y += height;
    const strong =
      options.breaksAfter?.has(rowIndex) || options.wordsAbove?.has(rowIndex + 1) === true;
    ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], {
      widthPt: strong ? 0.8 : 0.4,
      tone: strong ? 'ink' : 'hairline',
    });
    if (options.barBefore !== undefined) {
      const { x } = places[options.barBefore]!;
      ink.line([x, top], [x, sheet.y], { widthPt: 1.2, tone: 'ink' });
    }
  });
}

interface NumberPlace {
  style: { size: number; bold: boolean };
  /** Right end of whole digits. */
  point: number;
  /** Left end of marks. */
  mark: number;
}

const MARK = 0.58;
/** The least size of anything printed [pt]. */
const LEAST_MARK_PT = 8;
const markPt = (size: number) => Math.max(LEAST_MARK_PT, size * MARK);

function split(text: string): [whole: string, part: string] {
  const point = text.indexOf('.');
  return point < 0 ? [text, ''] : [text.slice(0, point), text.slice(point)];
}

/** Where a column's numbers stand so that their points are above one another. */
function numberPlace(
  sheet: Sheet,
  cells: readonly MarkedCell[],
  { x, width }: { x: number; width: number },
  wanted: { size: number; bold: boolean },
): NumberPlace {
  const measure = (size: number) => {
    const style = { size, bold: wanted.bold };
    const ends = cells.map(({ text }) => split(text));
    const wide = (text: string) => sheet.ink.widthOf(text, size, style.bold);
    const whole = Math.max(0, ...ends.map(([text]) => wide(text)));
    const part = Math.max(0, ...ends.map(([, text]) => wide(text)));
    const mark = Math.max(
      0,
      ...cells.map((cell) =>
        cell.mark ? sheet.ink.widthOf(cell.mark, markPt(size), true) + 1.5 : 0,
      ),
    );
    return { style, whole, part, mark, all: whole + part + mark };
  };
  let found = measure(wanted.size);
  if (found.all > width - PAD - 1) found = measure((wanted.size * (width - PAD - 1)) / found.all);
  const end = x + width - PAD;
  return {
    style: found.style,
    point: end - found.mark - found.part,
    mark: end - found.mark + 1.5,
  };
}

function drawNumber(sheet: Sheet, cell: MarkedCell, y: number, place: NumberPlace): void {
  const [whole] = split(cell.text);
  const { style } = place;
  put(
    sheet.ink,
    cell.text,
    place.point - sheet.ink.widthOf(whole, style.size, style.bold),
    y,
    style,
  );
  if (cell.mark) {
    put(sheet.ink, cell.mark, place.mark, y - style.size * 0.26, {
      size: markPt(style.size),
      bold: true,
    });
  }
}
