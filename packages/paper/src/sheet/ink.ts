/** The one place that draws: lines, shapes and letters on a page, all of them vectors. */
import PDFDocument from 'pdfkit';
import { fontFiles } from './fonts.ts';
import { type PaperOptions, paperSizes } from './options.ts';

/** Everything reads in black and white: tones tell ranks, never meanings. */
export const tones = {
  ink: '#10161c',
  soft: '#4a545d',
  line: '#7d858c',
  hairline: '#b9bfc4',
  water: '#0a6c86',
  ground: '#e9e9e6',
  paper: '#ffffff',
} as const;

export type Tone = keyof typeof tones;

export interface Stroke {
  widthPt?: number;
  tone?: Tone;
  dash?: readonly [on: number, off: number];
}

export type Point = readonly [x: number, y: number];

export interface DocumentOptions extends PaperOptions {
  title: string;
  /** Pages stay open until the end, so that each can say how many there are. */
  keepPages: boolean;
}

interface OpenedFont {
  _font: { font: { hasGlyphForCodePoint(code: number): boolean } };
}

/** A document being drawn. Places and sizes in points from the top left corner of the page. */
export class Ink {
  readonly document: PDFKit.PDFDocument;
  readonly widthPt: number;
  readonly heightPt: number;
  #glyphs = new Map<string, boolean>();
  #widths = new Map<string, number>();

  constructor({ title, keepPages, printedAt, paper = 'letter', department }: DocumentOptions) {
    [this.widthPt, this.heightPt] = paperSizes[paper];
    this.document = new PDFDocument({
      autoFirstPage: false,
      bufferPages: keepPages,
      size: [this.widthPt, this.heightPt],
      margin: 0,
      lang: 'en-US',
      displayTitle: true,
      info: {
        Title: title,
        ...(department && { Author: department }),
        CreationDate: printedAt,
        ModDate: printedAt,
      },
    });
    const fonts = fontFiles();
    this.document.registerFont('regular', fonts.regular);
    this.document.registerFont('bold', fonts.bold);
  }

  addPage(): void {
    this.document.addPage({ size: [this.widthPt, this.heightPt], margin: 0 });
  }

  hasGlyph(letter: string): boolean {
    let has = this.#glyphs.get(letter);
    if (has === undefined) {
      this.document.font('regular');
      // pdfkit keeps the font that it read to itself, and offers no other way to ask.
      const { _font } = this.document as unknown as OpenedFont;
      has = _font.font.hasGlyphForCodePoint(letter.codePointAt(0)!);
      this.#glyphs.set(letter, has);
    }
    return has;
  }

  widthOf(text: string, size: number, bold: boolean): number {
    const key = `${bold ? 'b' : 'r'}${text}`;
    let perPoint = this.#widths.get(key);
    if (perPoint === undefined) {
      perPoint =
        this.document
          .font(bold ? 'bold' : 'regular')
          .fontSize(100)
          .widthOfString(text) / 100;
      if (this.#widths.size > 5000) this.#widths.clear();
      this.#widths.set(key, perPoint);
    }
    return perPoint * size;
  }

  write(text: string, x: number, y: number, size: number, bold: boolean, colour: string): void {
    if (text === '') return;
    this.document
      .font(bold ? 'bold' : 'regular')
      .fontSize(size)
      .fillColor(colour)
      .text(text, x, y, { lineBreak: false, baseline: 'alphabetic' });
  }

  line(from: Point, to: Point, stroke: Stroke = {}): void {
    this.path([from, to], stroke);
  }

  /** Joined points; closed where the last is the first. */
  path(points: readonly Point[], { widthPt = 0.5, tone = 'line', dash }: Stroke = {}): void {
    this.#trace(points);
    this.document.lineWidth(widthPt).lineJoin('round').strokeColor(tones[tone]);
    if (dash) this.document.dash(dash[0], { space: dash[1] });
    this.document.stroke();
    if (dash) this.document.undash();
  }

  fill(points: readonly Point[], tone: Tone): void {
    this.#trace(points);
    this.document.fillColor(tones[tone]).fill();
  }

  box(x: number, y: number, width: number, height: number, stroke: Stroke = {}): void {
    this.path(
      [
        [x, y],
        [x + width, y],
        [x + width, y + height],
        [x, y + height],
        [x, y],
      ],
      stroke,
    );
  }

  circle([x, y]: Point, radius: number, stroke: Stroke & { fill?: Tone } = {}): void {
    const { widthPt = 0.8, tone = 'ink', fill } = stroke;
    this.document.circle(x, y, radius).lineWidth(widthPt).strokeColor(tones[tone]);
    if (fill) this.document.fillColor(tones[fill]).fillAndStroke(tones[fill], tones[tone]);
    else this.document.stroke();
  }

  /** A triangle to draw the eye to a caution. */
  cautionMark(x: number, baseline: number, size: number): void {
    const height = size * 0.74;
    const half = height * 0.56;
    const top: Point = [x + half, baseline - height];
    this.path([top, [x + 2 * half, baseline], [x, baseline], top], {
      widthPt: size * 0.09,
      tone: 'ink',
    });
    this.line([x + half, baseline - height * 0.66], [x + half, baseline - height * 0.32], {
      widthPt: size * 0.11,
      tone: 'ink',
    });
    this.circle([x + half, baseline - height * 0.16], size * 0.045, { fill: 'ink', widthPt: 0.1 });
  }

  /** Draws turned about a point [rad, clockwise]. */
  turned(angle: number, about: Point, draw: () => void): void {
    this.document.save();
    this.document.rotate((angle * 180) / Math.PI, { origin: [about[0], about[1]] });
    draw();
    this.document.restore();
  }

  /** Draws inside a rectangle alone. */
  inside(x: number, y: number, width: number, height: number, draw: () => void): void {
    this.document.save();
    this.document.rect(x, y, width, height).clip();
    draw();
    this.document.restore();
  }

  #trace(points: readonly Point[]): void {
    const [first, ...rest] = points;
    if (!first) return;
    this.document.moveTo(first[0], first[1]);
    for (const [x, y] of rest) this.document.lineTo(x, y);
    const last = points.at(-1)!;
    if (points.length > 2 && first[0] === last[0] && first[1] === last[1])
      this.document.closePath();
  }
}
