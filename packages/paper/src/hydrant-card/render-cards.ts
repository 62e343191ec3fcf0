import { Ink } from '../sheet/ink.ts';
import type { PaperOptions } from '../sheet/options.ts';
import { Sheet } from '../sheet/sheet.ts';
import type { HydrantCard } from './data.ts';
import { drawHydrantCard } from './render.ts';

export interface CardsOptions extends PaperOptions {
  /** How many there will be, where it is known: printed on each. */
  total?: number;
  /** Ends the work; the stream then fails with the signal's reason. */
  signal?: AbortSignal;
  /** Called after each card with how many are drawn. */
  onProgress?(done: number): void;
}

/**
 * Many cards as one PDF, drawn one by one as they come and as fast as they are read: no more than
 * a card is held. A stream that was cut short is no PDF: write it aside, and take it when it ends.
 * @throws the signal's reason; whatever `cards` throws; RangeError where there is none
 */
export async function* renderHydrantCards(
  cards: AsyncIterable<HydrantCard> | Iterable<HydrantCard>,
  options: CardsOptions,
): AsyncGenerator<Uint8Array> {
  const { total, signal, onProgress } = options;
  const ink = new Ink({ ...options, title: 'Hydrant cards', keepPages: true });
  const pdf = ink.document;
  const drawn = () => pdf.read() as Buffer | null;
  let done = 0;
  for await (const card of cards) {
    signal?.throwIfAborted();
    const sheet = new Sheet(ink, options);
    drawHydrantCard(sheet, card);
    done += 1;
    const { start, count } = pdf.bufferedPageRange();
    for (let page = 0; page < count; page += 1) {
      pdf.switchToPage(start + page);
      sheet.block(
        page + 1,
        count,
        total === undefined ? `Card ${done}` : `Card ${done} of ${total}`,
      );
    }
    pdf.flushPages();
    onProgress?.(done);
    const bytes = drawn();
    if (bytes) yield bytes;
    // Others have their turn between cards, and a cancel can come through.
    await new Promise((resolve) => setImmediate(resolve));
  }
  signal?.throwIfAborted();
  if (done === 0)
    throw new RangeError('There is no hydrant to print a card of. Pick at least one.');
  pdf.end();
  for await (const bytes of pdf as unknown as AsyncIterable<Buffer>) yield bytes;
}
