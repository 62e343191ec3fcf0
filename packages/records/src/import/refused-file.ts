import { once } from 'node:events';
import { createWriteStream, type WriteStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { csvLine } from '../export/csv-cell.ts';
import { refusedColumns } from './mapping/known-columns.ts';
import type { Mapping } from './mapping/mapping.ts';
import { statedText } from './mapping/stated-mapping.ts';
import { writeWkt } from './place/wkt.ts';
import type { Refusal } from './report.ts';
import type { Source, SourceRow } from './source/source.ts';

/**
 * The refused rows as a CSV: the file's own columns, a geometry as text, then what was wrong and
 * what to do, and how the columns were read. Mended in a spreadsheet it can be imported as it is: the
 * added columns are known.
 */
export class RefusedFile {
  readonly #path: string;
  readonly #source: Source;
  readonly #mapping: Mapping;
  readonly #stated: string;
  #stream: WriteStream | undefined;

  constructor(path: string, source: Source, mapping: Mapping) {
    this.#path = path;
    this.#source = source;
    this.#mapping = mapping;
    this.#stated = statedText(mapping);
  }

  async add(row: SourceRow, refusal: Refusal): Promise<void> {
    const own = this.#source.columns.filter((one) => !refusedColumns.some((two) => two === one));
    if (!this.#stream) {
      this.#stream = createWriteStream(this.#path);
      await once(this.#stream, 'open');
      // The mark by which spreadsheets know UTF-8.
      this.#stream.write(`\uFEFF${csvLine([...own, ...refusedColumns])}`);
    }
    const line = csvLine([
      ...own.map((column) => row.values[column] ?? ''),
      refusal.row,
      refusal.column,
      refusal.reason,
      refusal.remedy,
      row.raw,
      this.#mapping.sourceName,
      this.#mapping.place?.crs,
      row.geometry ? writeWkt(row.geometry) : (row.values.refused_geometry ?? ''),
      refusal.key,
      this.#stated,
    ]);
    if (!this.#stream.write(line)) await once(this.#stream, 'drain');
  }

  async close(): Promise<void> {
    if (!this.#stream) return;
    this.#stream.end();
    await once(this.#stream, 'close');
  }

  /** For an import that was stopped. */
  async discard(): Promise<void> {
    await this.close();
    if (this.#stream) await rm(this.#path, { force: true });
  }
}
