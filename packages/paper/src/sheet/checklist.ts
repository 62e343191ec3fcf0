/** Steps with a box to tick and a line to write on. */
import type { Sheet } from './sheet.ts';
import { put, wrapped } from './text.ts';

export interface CheckItem {
  text: string;
  /** Under it, with its mark. */
  hazard?: string;
  /** Beside the line at the right: "3 min". */
  target?: string;
}

export interface ChecklistOptions {
  size?: number;
  /** Numbers before the steps. */
  numbered?: boolean;
  /** A line at the right to write on: its head. */
  blank?: string;
}

const BOX = 9.5;
const BLANK_WIDTH = 62;

/** Draws a list over the sheet's width; an item is never parted by a page's end. */
export function checklist(
  sheet: Sheet,
  items: readonly CheckItem[],
  { size = 11, numbered = false, blank }: ChecklistOptions = {},
): void {
  const { ink } = sheet;
  const indent = BOX + 8 + (numbered ? 16 : 0);
  const right = blank ? BLANK_WIDTH + 10 : 0;
  items.forEach(({ text, hazard, target }, index) => {
    const lines = wrapped(ink, text, sheet.width - indent - right, { size });
    const small = size * 0.86;
    const hazards = hazard
      ? wrapped(ink, hazard, sheet.width - indent - right - small * 1.3, { size: small })
      : [];
    const height = lines.length * size * 1.22 + hazards.length * small * 1.25 + 5;
    sheet.need(height);
    const top = sheet.y + 2.5;
    ink.box(sheet.left + 0.5, top + (size * 1.22 - BOX) / 2, BOX, BOX, {
      widthPt: 0.9,
      tone: 'ink',
    });
    if (numbered) {
      const style = { size, bold: true };
      put(ink, `${index + 1}`, sheet.left + BOX + 20, top + size * 0.95, style, 'right');
    }
    let y = top + size * 0.95;
    for (const line of lines) {
      put(ink, line, sheet.left + indent, y, { size });
      y += size * 1.22;
    }
    hazards.forEach((line, at) => {
      y += at === 0 ? small * 0.05 : 0;
      if (at === 0) ink.cautionMark(sheet.left + indent, y, small);
      put(ink, line, sheet.left + indent + small * 1.3, y, { size: small, tone: 'soft' });
      y += small * 1.25;
    });
    if (blank) {
      const end = sheet.right;
      const base = top + size * 1.05;
      if (target)
        put(ink, target, end - BLANK_WIDTH - 6, base, { size: small, bold: true }, 'right');
      ink.line([end - BLANK_WIDTH, base + 1.5], [end, base + 1.5], { widthPt: 0.6, tone: 'line' });
    }
    sheet.y += height;
  });
}
