/** Text that stays where it is put: measured, shrunk, wrapped, and only then cut. Sizes and places in points. */
import type { Ink } from './ink.ts';
import { tones } from './ink.ts';

export interface TextStyle {
  size: number;
  bold?: boolean;
  tone?: keyof typeof tones;
}

export type Align = 'left' | 'right' | 'center';

/** Nothing is shrunk under this to make room [pt]: it takes more lines, or is cut with an ellipsis. */
export const LEAST_PT = 8;

/** A size wanted, no less than can be read where the text itself is larger. */
const readable = (style: TextStyle, leastSize: number) =>
  Math.min(style.size, Math.max(LEAST_PT, leastSize));

/** Characters that the font has no drawing for would print as empty boxes. */
export function printable(ink: Ink, text: string): string {
  const plain = text.normalize('NFC').replace(/\s+/g, ' ');
  return [...plain].map((one) => (ink.hasGlyph(one) ? one : '?')).join('');
}

/** Width of a line of text [pt]. */
export function widthOf(ink: Ink, text: string, { size, bold = false }: TextStyle): number {
  return ink.widthOf(text, size, bold);
}

/**
 * Puts one line with its baseline at `y`.
 * @returns where it ends [pt]
 */
export function put(
  ink: Ink,
  text: string,
  x: number,
  y: number,
  style: TextStyle,
  align: Align = 'left',
): number {
  const shown = printable(ink, text);
  const width = widthOf(ink, shown, style);
  const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  ink.write(shown, left, y, style.size, style.bold ?? false, tones[style.tone ?? 'ink']);
  return left + width;
}

/** A line in a width: as large as fits between `style.size` and `leastSize`, else cut with an ellipsis. */
export function fitted(
  ink: Ink,
  text: string,
  widthPt: number,
  style: TextStyle,
  leastSize = style.size * 0.7,
): { text: string; style: TextStyle } {
  const shown = printable(ink, text);
  const width = widthOf(ink, shown, style);
  if (width <= widthPt) return { text: shown, style };
  const size = Math.max(readable(style, leastSize), (style.size * widthPt) / width);
  const smaller = { ...style, size };
  if (widthOf(ink, shown, smaller) <= widthPt + 0.01) return { text: shown, style: smaller };
  return { text: cut(ink, shown, widthPt, smaller), style: smaller };
}

function cut(ink: Ink, text: string, widthPt: number, style: TextStyle): string {
  const letters = [...text];
  while (letters.length > 0 && widthOf(ink, `${letters.join('').trimEnd()}…`, style) > widthPt)
    letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** Lines of a text in a width, broken between words, and inside a word that is wider than the line. */
export function wrapped(ink: Ink, text: string, widthPt: number, style: TextStyle): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of printable(ink, text)
    .split(' ')
    .flatMap((one) => pieces(ink, one, widthPt, style))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (widthOf(ink, longer, style) <= widthPt) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
  }
  if (line !== '') lines.push(line);
  return lines;
}

function pieces(ink: Ink, word: string, widthPt: number, style: TextStyle): string[] {
  if (widthOf(ink, word, style) <= widthPt) return [word];
  const parts: string[] = [];
  let part = '';
  for (const letter of word) {
    if (part !== '' && widthOf(ink, part + letter, style) > widthPt) {
      parts.push(part);
      part = '';
    }
    part += letter;
  }
  return part === '' ? parts : [...parts, part];
}

/** Lines of a text in a width, at most `most` of them: smaller first, then the last line is cut. */
export function wrappedTo(
  ink: Ink,
  text: string,
  widthPt: number,
  style: TextStyle,
  most: number,
  leastSize = style.size * 0.7,
): { lines: string[]; style: TextStyle } {
  const least = readable(style, leastSize);
  let smaller = style;
  for (;;) {
    const lines = wrapped(ink, text, widthPt, smaller);
    if (lines.length <= most) return { lines, style: smaller };
    if (smaller.size <= least) {
      const kept = lines.slice(0, most - 1);
      const rest = lines.slice(most - 1).join(' ');
      return { lines: [...kept, cut(ink, rest, widthPt, smaller)], style: smaller };
    }
    smaller = { ...smaller, size: Math.max(least, smaller.size - 0.5) };
  }
}
