/** A PDF read back as another program reads it. Places in points from the top left corner. */
import { buffer } from 'node:stream/consumers';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface TextRun {
  text: string;
  /** Left, top, right and bottom of its letters. */
  box: readonly [left: number, top: number, right: number, bottom: number];
  sizePt: number;
}

export interface ReadPage {
  widthPt: number;
  heightPt: number;
  runs: TextRun[];
  /** Raster images drawn. */
  images: number;
}

const IMAGES = new Set<number>([
  OPS.paintImageXObject,
  OPS.paintInlineImageXObject,
  OPS.paintImageMaskXObject,
]);

/** Share of the size that capital letters stand above the baseline, and that tails hang below. */
const CAPITALS = 0.7;
const TAILS = 0.2;

export async function readBack(pdf: AsyncIterable<Uint8Array> | Uint8Array): Promise<ReadPage[]> {
  const bytes = pdf instanceof Uint8Array ? pdf : await buffer(pdf);
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , widthPt = 0, heightPt = 0] = page.view;
    const { items } = await page.getTextContent();
    const { fnArray } = await page.getOperatorList();
    const runs = items.flatMap((item): TextRun[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [, , , sizePt, x, y] = item.transform as number[];
      const top = heightPt - y! - CAPITALS * sizePt!;
      const bottom = heightPt - y! + TAILS * sizePt!;
      return [{ text: item.str, box: [x!, top, x! + item.width, bottom], sizePt: sizePt! }];
    });
    pages.push({
      widthPt,
      heightPt,
      runs,
      images: fnArray.filter((each) => IMAGES.has(each)).length,
    });
  }
  await task.destroy();
  return pages;
}

/** All text of a page, run by run. */
export function textOf(page: ReadPage): string {
  return page.runs.map(({ text }) => text).join(' ');
}

/** Pairs of runs whose letters lie over one another. */
export function overlaps({ runs }: ReadPage): [string, string][] {
  const found: [string, string][] = [];
  for (const [at, one] of runs.entries()) {
    for (const other of runs.slice(at + 1)) {
      const [left, top, right, bottom] = one.box;
      const across = Math.min(right, other.box[2]) - Math.max(left, other.box[0]);
      const down = Math.min(bottom, other.box[3]) - Math.max(top, other.box[1]);
      if (across > 0.5 && down > 0.5) found.push([one.text, other.text]);
    }
  }
  return found;
}

/** Runs that leave the page's margins. */
export function outside({ runs, widthPt, heightPt }: ReadPage, marginPt = 30): string[] {
  return runs
    .filter(
      ({ box: [left, top, right, bottom] }) =>
        left < marginPt ||
        top < marginPt ||
        right > widthPt - marginPt ||
        bottom > heightPt - marginPt,
    )
    .map(({ text }) => text);
}

/** Numbers that stand on one line with a text, left to right. */
export function rowOf(page: ReadPage, text: string, nth = 0): string[] {
  const label = page.runs.filter((run) => run.text === text)[nth];
  if (!label) throw new Error(`"${text}" is not on the page.`);
  const middle = (label.box[1] + label.box[3]) / 2;
  return page.runs
    .filter(
      ({ box, text: other }) =>
        box[0] > label.box[2] &&
        box[1] - 8 < middle &&
        box[3] + 8 > middle &&
        /^[\d,.—−]+$/.test(other),
    )
    .sort((a, b) => a.box[0] - b.box[0])
    .map((run) => run.text);
}
