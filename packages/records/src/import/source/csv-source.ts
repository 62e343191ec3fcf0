import type { Bytes } from './bytes.ts';
import { csvRows, layoutOf } from './csv-rows.ts';
import { sniffEncoding } from './encoding.ts';
import { Sampler } from './sample.ts';
import { type Source, SourceRefusedError } from './source.ts';

const delimiterNames: Record<string, string> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'vertical bar',
};

/** @throws SourceRefusedError where there is no row in it */
export async function csvSource(name: string, bytes: Bytes): Promise<Source> {
  const encoding = await sniffEncoding(bytes);
  const layout = await layoutOf(bytes, encoding);
  const sampler = new Sampler();
  let total = 0;
  for await (const row of csvRows(bytes, encoding, layout)) {
    total += 1;
    sampler.add(row);
  }
  if (total === 0) {
    throw new SourceRefusedError(
      name,
      'There is no row in the file besides its heads.',
      'Give a table with a line of heads and a line for each record.',
    );
  }
  const notices: string[] = [];
  if (!layout.heads) notices.push('The first line holds data, no heads; columns are numbered.');
  if (encoding.faulty > 0) {
    notices.push(`${encoding.faulty} bytes are no UTF-8; their letters show as \uFFFD.`);
  }
  return {
    name,
    format: 'csv',
    encoding: encoding.name,
    delimiter: delimiterNames[layout.delimiter] ?? layout.delimiter,
    columns: layout.columns,
    hasGeometry: false,
    total,
    sample: sampler.rows,
    notices,
    rows: () => csvRows(bytes, encoding, layout),
    close: async () => {},
  };
}
