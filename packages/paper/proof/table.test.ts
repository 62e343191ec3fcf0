import { describe, expect, it } from 'vitest';
import { documentOf } from '../src/sheet/sheet.ts';
import { table } from '../src/sheet/table.ts';
import { outside, overlaps, readBack } from './read-back.ts';

const printed = { printedAt: new Date('2026-11-25T12:00:00Z') };
const subject = { kind: 'Table', name: 'T', from: 'here', invented: false };

describe('a table', () => {
  it('has its numbers above one another at the point, marks or not', async () => {
    const numbers = ['5.4', '12.75', '1,204', '−3.1', '0.5'];
    const [page] = await readBack(
      documentOf('T', printed, (sheet) => {
        sheet.begin(subject);
        table(
          sheet,
          [
            { head: 'a', share: 1 },
            { head: 'n', share: 1, number: true },
          ],
          numbers.map((text, at) => ['row', at % 2 === 0 ? text : { text, mark: 'H' }]),
          { size: 14 },
        );
      }),
    );
    // All figures of the font are 0.54 of its size wide, a point 0.248, a comma too.
    const points = numbers.map((number) => {
      const run = page!.runs.find(({ text }) => text === number)!;
      const [whole = ''] = number.split('.');
      const wide = [...whole].reduce((sum, one) => sum + (one === ',' ? 0.248 : 0.54), 0);
      return run.box[0] + wide * run.sizePt;
    });
    for (const point of points) expect(point).toBeCloseTo(points[0]!, 1);
  });

  it('goes on over pages with its head on each, no row parted', async () => {
    const rows = Array.from({ length: 90 }, (_, at) => [`row ${at}`, `${at}`]);
    const pages = await readBack(
      documentOf('T', printed, (sheet) => {
        sheet.begin(subject);
        table(
          sheet,
          [
            { head: 'Name of the row', share: 1 },
            { head: 'n', share: 1, number: true },
          ],
          rows,
        );
      }),
    );
    expect(pages.length).toBeGreaterThan(1);
    const shown = pages.flatMap((page) => page.runs.map(({ text }) => text));
    for (const [name] of rows) expect(shown).toContain(name);
    for (const page of pages) {
      expect(page.runs.some(({ text }) => text === 'Name of the row')).toBe(true);
      expect(overlaps(page)).toEqual([]);
      expect(outside(page)).toEqual([]);
    }
  });

  it('wraps what is long and shrinks numbers that are wider than their column', async () => {
    const long = 'a very long name of a thing that does not fit into its column at all, twice over';
    const [page] = await readBack(
      documentOf('T', printed, (sheet) => {
        sheet.begin(subject);
        table(
          sheet,
          [
            { head: 'a', share: 1 },
            { head: 'b', share: 0.3, number: true, size: 20 },
            { head: 'c', share: 3 },
          ],
          [
            [long, '1,234,567,890', long],
            [long, '7.25', long],
          ],
        );
      }),
    );
    expect(overlaps(page!)).toEqual([]);
    expect(outside(page!)).toEqual([]);
  });
});
