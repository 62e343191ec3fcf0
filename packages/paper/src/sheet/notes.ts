/** Cautions and sources at the end of a document. */
import type { Sheet } from './sheet.ts';
import { put, type TextStyle, wrapped } from './text.ts';

/** Something that a number rests on. */
export interface Source {
  /** "5 in hose, coefficient 0.08" */
  what: string;
  /** "Own hose test, 5 readings, 2025-05-20" */
  from: string;
}

/** Cautions, each with its mark. */
export function cautions(sheet: Sheet, texts: readonly string[], size = 10): void {
  const indent = size * 1.3;
  for (const text of texts) {
    const style = { size };
    const lines = wrapped(sheet.ink, text, sheet.width - indent, style);
    sheet.need(lines.length * size * 1.25 + 3);
    sheet.y += 2;
    lines.forEach((line, index) => {
      sheet.y += size * 1.25;
      if (index === 0) sheet.ink.cautionMark(sheet.left, sheet.y, size);
      put(sheet.ink, line, sheet.left + indent, sheet.y, style);
    });
    sheet.y += 1;
  }
}

/** What is told and where it comes from, side by side in columns. */
export function sources(
  sheet: Sheet,
  list: readonly Source[],
  { size = 8.5, columns = 2 }: { size?: number; columns?: number } = {},
): void {
  const gap = 14;
  const width = (sheet.width - gap * (columns - 1)) / columns;
  const blocks = list.map(({ what, from }) => {
    const head = wrapped(sheet.ink, what, width, { size, bold: true });
    const body = wrapped(sheet.ink, from, width, { size, tone: 'soft' });
    return { head, body, height: (head.length + body.length) * size * 1.2 + 3 };
  });
  // What stands side by side keeps its order when a page ends.
  for (let at = 0; at < blocks.length; at += columns) {
    const row = blocks.slice(at, at + columns);
    const height = Math.max(...row.map((block) => block.height));
    sheet.need(height);
    row.forEach((block, column) => {
      let y = sheet.y;
      const x = sheet.left + column * (width + gap);
      const write = (lines: readonly string[], style: TextStyle) => {
        for (const line of lines) {
          y += size * 1.2;
          put(sheet.ink, line, x, y, style);
        }
      };
      write(block.head, { size, bold: true });
      write(block.body, { size, tone: 'soft' });
    });
    sheet.y += height;
  }
}
