/** A document's pages: head, title block, and a place that moves down as things are drawn. */
import type { Readable } from 'node:stream';
import { deferral } from '@plugside/fireground';
import { type Figures, figuresIn } from './figures.ts';
import { Ink } from './ink.ts';
import type { PaperOptions } from './options.ts';
import { fitted, LEAST_PT, put, wrapped, wrappedTo } from './text.ts';

const MARGIN = 36;
const BLOCK_HEIGHT = 30;
const DEFERRAL_SIZE = 8.5;
const ASIDE_LEAST = 8;
/** A title is shrunk to this share before it takes a second line. */
const LEAST_TITLE = 0.66;
/** Between what is drawn and the title block [pt]. */
const BLOCK_GAP = 8;

export interface SheetSubject {
  /** "Pump chart" */
  kind: string;
  /** "Engine 3" */
  name: string;
  /** In a word or two, at the right of the name: "1,500 gpm pump". */
  aside?: string;
  /** Where its numbers come from, in a few words, for the title block. */
  from: string;
  invented: boolean;
}

/** Pages of one document or of one card in a batch. */
export class Sheet {
  readonly ink: Ink;
  readonly figures: Figures;
  /** Between these drawing goes; `columns` narrows them for a while. */
  left = MARGIN;
  right: number;
  /** Where drawing must end. */
  readonly bottom: number;
  /** Where the next thing goes. */
  y = MARGIN;
  readonly #options: PaperOptions;
  #subject: SheetSubject | undefined;

  constructor(ink: Ink, options: PaperOptions) {
    this.ink = ink;
    this.#options = options;
    this.figures = figuresIn(options.units);
    this.right = ink.widthPt - MARGIN;
    this.bottom = ink.heightPt - MARGIN - BLOCK_HEIGHT - DEFERRAL_SIZE - 2 * BLOCK_GAP;
  }

  /** Begins a page for a subject. */
  begin(subject: SheetSubject): void {
    this.#subject = subject;
    this.#newPage();
  }

  get width(): number {
    return this.right - this.left;
  }

  /** Draws blocks side by side; what comes next goes under the longest. They must fit on this page. */
  columns(shares: readonly number[], draws: readonly (() => void)[], gapPt = 18): void {
    const { left, right, y } = this;
    const all = shares.reduce((sum, share) => sum + share, 0);
    const free = right - left - gapPt * (shares.length - 1);
    let at = left;
    let lowest = y;
    draws.forEach((draw, index) => {
      const width = (free * shares[index]!) / all;
      this.left = at;
      this.right = at + width;
      this.y = y;
      draw();
      lowest = Math.max(lowest, this.y);
      at += width + gapPt;
    });
    this.left = left;
    this.right = right;
    this.y = lowest;
  }

  /** Room left on this page [pt]. */
  get room(): number {
    return this.bottom - this.y;
  }

  /** Goes on to another page where less than this is left [pt]. @returns whether it did */
  need(heightPt: number): boolean {
    if (heightPt <= this.room) return false;
    this.#newPage();
    return true;
  }

  /** Ends this page whatever room it has. */
  breakPage(): void {
    this.#newPage();
  }

  /** A heading over a block, with a rule, at least `withPt` of its block on the same page. */
  heading(text: string, { aside = '', withPt = 40, abovePt = 19 } = {}): void {
    this.need(abovePt + 7 + withPt);
    this.y += abovePt;
    const head = fitted(this.ink, text, this.width, { size: 12.5, bold: true }, 8);
    const end = put(this.ink, head.text, this.left, this.y, head.style);
    const room = this.right - end - 12;
    // An aside without room says less than none.
    if (aside !== '' && this.ink.widthOf(aside, ASIDE_LEAST, false) <= room) {
      const said = fitted(this.ink, aside, room, { size: 9.5, tone: 'soft' }, ASIDE_LEAST);
      put(this.ink, said.text, this.right, this.y, said.style, 'right');
    }
    this.y += 4.5;
    this.ink.line([this.left, this.y], [this.right, this.y], { widthPt: 0.9, tone: 'ink' });
    this.y += 3;
  }

  /** Lines of text over the page's width. */
  paragraph(text: string, { size = 9.5, bold = false, tone = 'ink' as 'ink' | 'soft' } = {}): void {
    const style = { size, bold, tone };
    for (const line of wrapped(this.ink, text, this.width, style)) {
      this.need(size * 1.3);
      this.y += size * 1.3;
      put(this.ink, line, this.left, this.y, style);
    }
  }

  #newPage(): void {
    const subject = this.#subject!;
    const first = this.y === MARGIN;
    this.ink.addPage();
    this.y = MARGIN;
    this.#head(subject, first);
  }

  #head({ kind, name, aside = '', invented }: SheetSubject, first: boolean): void {
    const { ink, left, right } = this;
    this.y += 9;
    put(ink, kind.toUpperCase(), left, this.y, { size: 9.5, bold: true, tone: 'soft' });
    if (invented) this.#inventedMark();
    const size = first ? 27 : 18;
    const beside =
      aside === '' ? 0 : Math.min(this.width * 0.4, ink.widthOf(aside, 12.5, false) + 14);
    const title = titleOf(ink, name, this.width - beside, size);
    for (const line of title.lines) {
      this.y += title.style.size * 1.06;
      put(ink, line, left, this.y, title.style);
    }
    if (aside !== '') {
      const said = fitted(ink, aside, beside, { size: 12.5, tone: 'soft' }, 8);
      put(ink, said.text, right, this.y, said.style, 'right');
    }
    this.y += 7;
    ink.line([left, this.y], [right, this.y], { widthPt: 1.6, tone: 'ink' });
    this.y += 2;
  }

  #inventedMark(): void {
    const text = 'INVENTED FOR PRACTICE';
    const style = { size: 9.5, bold: true };
    const width = this.ink.widthOf(text, style.size, true) + 12;
    this.ink.box(this.right - width, this.y - 10.5, width, 14, { widthPt: 1, tone: 'ink' });
    put(this.ink, text, this.right - width / 2, this.y, style, 'center');
  }

  /** The title block of the page that is open. */
  block(page: number, pages: number, aside = ''): void {
    const { ink, left, right } = this;
    const subject = this.#subject!;
    const top = ink.heightPt - MARGIN - BLOCK_HEIGHT;
    const said = fitted(ink, deferral, this.width, { size: DEFERRAL_SIZE, tone: 'soft' });
    put(ink, said.text, left, top - BLOCK_GAP + 2, said.style);
    ink.box(left, top, this.width, BLOCK_HEIGHT, { widthPt: 0.8, tone: 'ink' });
    const cells: [head: string, text: string, share: number][] = [
      [subject.kind, subject.name, 0.27],
      ['Department', this.#options.department ?? 'not named', 0.22],
      ['Numbers from', subject.from, 0.25],
      ['Printed', this.#options.printedAt.toISOString().slice(0, 10), 0.12],
      [aside === '' ? 'Page' : aside, `Page ${page} of ${pages}`, 0.14],
    ];
    let x: number = left;
    for (const [head, text, share] of cells) {
      const width = this.width * share;
      if (x > left) ink.line([x, top], [x, top + BLOCK_HEIGHT], { widthPt: 0.5, tone: 'line' });
      const heading = fitted(ink, head, width - 10, { size: 8, tone: 'soft' });
      put(ink, heading.text, x + 5, top + 10.5, heading.style);
      const shown = fitted(ink, text, width - 10, { size: 10.5, bold: true }, LEAST_PT);
      put(ink, shown.text, x + 5, top + 24, shown.style);
      x += width;
    }
    ink.line([right, top], [right, top + BLOCK_HEIGHT], { widthPt: 0.8, tone: 'ink' });
  }
}

/** A name on one line as long as it can be read from afar, else on two. */
function titleOf(ink: Ink, name: string, widthPt: number, size: number) {
  const bold = true;
  const one = wrappedTo(ink, name, widthPt, { size, bold }, 1, size * LEAST_TITLE);
  const isCut = one.lines[0]?.endsWith('…');
  return isCut ? wrappedTo(ink, name, widthPt, { ...one.style, bold }, 2, size * 0.45) : one;
}

/**
 * A document of its own: drawn, its pages counted, and sent.
 * @returns the PDF as it is made
 */
export function documentOf(
  title: string,
  options: PaperOptions,
  draw: (sheet: Sheet) => void,
): Readable {
  const ink = new Ink({ ...options, title, keepPages: true });
  const sheet = new Sheet(ink, options);
  draw(sheet);
  const { count } = ink.document.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    ink.document.switchToPage(page);
    sheet.block(page + 1, count);
  }
  ink.document.end();
  return ink.document as unknown as Readable;
}
