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
      return [runOf(item.str, item.transform as number[], item.width, heightPt)];
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

/** A run's box; the box around it where it is turned. */
function runOf(
  text: string,
  transform: readonly number[],
  width: number,
  heightPt: number,
): TextRun {
  const [a = 0, b = 0, , , x = 0, y = 0] = transform;
  const sizePt = Math.hypot(a, b);
  const [cos, sin] = [a / sizePt, b / sizePt];
  const corners = [0, width].flatMap((along) =>
    [-TAILS * sizePt, CAPITALS * sizePt].map((up) => [
      x + along * cos - up * sin,
      heightPt - (y + along * sin + up * cos),
    ]),
  );
  const xs = corners.map(([across]) => across!);
  const ys = corners.map(([, down]) => down!);
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
  return { text, box, sizePt };
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
