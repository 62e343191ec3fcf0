import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvLine } from '../../export/csv-cell.ts';
import { csvRecords } from './csv-records.ts';

async function* inPieces(text: string, size: number) {
  for (let at = 0; at < text.length; at += size) yield text.slice(at, at + size);
}

async function recordsOf(text: string, delimiter = ',', size = 7): Promise<string[][]> {
  const records: string[][] = [];
  for await (const { cells } of csvRecords(inPieces(text, size), delimiter)) records.push(cells);
  return records;
}

const cell = fc.string({
  unit: fc.constantFrom('a', '1', ' ', '"', ',', '\n', '\r\n', 'ü', '=', '-'),
});

describe('csvRecords', () => {
  it('reads what csv-parse reads, whatever the pieces it comes in', async () => {
    const tables = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1 });
    await fc.assert(
      fc.asyncProperty(tables, fc.integer({ min: 1, max: 40 }), async (table, size) => {
        const width = table[0]!.length;
        const text = table
          .map((row) => csvLine(Array.from({ length: width }, (_, at) => row[at] ?? '')))
          .join('');
        const other = parse(text, {
          relax_column_count: true,
          skip_empty_lines: false,
        }) as string[][];
        expect(await recordsOf(text, ',', size)).toEqual(other);
      }),
    );
  });

  it('takes a quote that is never closed as a letter and loses no row', async () => {
    const text = 'id,size\n1,6" main\n2,"8\n3,10\n4,12\n';
    expect(await recordsOf(text)).toEqual([
      ['id', 'size'],
      ['1', '6" main'],
      ['2', '"8'],
      ['3', '10'],
      ['4', '12'],
    ]);
  });

  it('loses no row after it in a long file either', async () => {
    const lines = Array.from({ length: 5000 }, (_, at) => (at === 100 ? `${at},"open` : `${at},x`));
    const records = await recordsOf(lines.join('\n'), ',', 65_536);
    expect(records.map(([id]) => Number(id))).toEqual(lines.map((_, at) => at));
  });

  it('counts lines as an editor does, line ends inside quotes too', async () => {
    const lines: number[] = [];
    for await (const { line } of csvRecords(inPieces('a,b\r\n"1\r\n2",3\r\n4,5', 3), ',')) {
      lines.push(line);
    }
    expect(lines).toEqual([1, 2, 4]);
  });

  it.each(['\n', '\r\n', '\r'])('ends lines at %j', async (end) => {
    expect(await recordsOf(`a,b${end}1,2${end}`, ',', 1)).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });
});
