import { createWriteStream } from 'node:fs';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore } from '../store/index.ts';
import { guessMapping } from './mapping/guess-mapping.ts';
import { runImport } from './run-import.ts';
import { readSource } from './source/read-source.ts';

const ROWS = 100_000;
let folder = '';
let file = '';

/** Invented hydrants on a grid. */
function* lines() {
  yield 'hydrant id,lon,lat,main size (in),status,remarks\n';
  for (let at = 0; at < ROWS; at += 1) {
    const [x, y] = [-84.5 + (at % 400) / 1000, 33.5 + Math.floor(at / 400) / 1000];
    yield `H-${at},${x.toFixed(4)},${y.toFixed(4)},${[6, 8, 12][at % 3]},active,"made up, for a test"\n`;
  }
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-large-'));
  file = join(folder, 'large.csv');
  await pipeline(Readable.from(lines()), createWriteStream(file));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('100,000 rows', () => {
  it('can be cancelled in the middle with nothing written, and then come in whole', async () => {
    const store = await openStore({ file: join(folder, 'records.sqlite') });
    try {
      const source = await readSource(file);
      expect(source.total).toBe(ROWS);
      const mapping = guessMapping('hydrants', source);
      const cancel = new AbortController();
      const refusedFile = join(folder, 'refused.csv');
      const cancelled = runImport(store, source, mapping, {
        signal: cancel.signal,
        refusedFile,
        onProgress: ({ done }) => done > ROWS / 2 && cancel.abort(new Error('cancelled by hand')),
      });
      await expect(cancelled).rejects.toThrow('cancelled by hand');
      expect(await store.count('hydrants')).toBe(0);
      expect(await readdir(folder)).not.toContain('refused.csv');

      const seen: number[] = [];
      const report = await runImport(store, source, mapping, {
        onProgress: ({ done, total }) => seen.push(done / total),
      });
      expect(report).toMatchObject({ rows: ROWS, added: ROWS, refusedCount: 0 });
      expect(await store.count('hydrants')).toBe(ROWS);
      expect(seen.at(-1)).toBe(1);
      expect(seen).toEqual([...seen].sort((a, b) => a - b));
    } finally {
      await store.close();
    }
  }, 180_000);

  it('are read without being held', async () => {
    const source = await readSource(file);
    setFlagsFromString('--expose-gc');
    const collect = runInNewContext('gc') as () => void;
    const reached = () => {
      collect();
      return process.memoryUsage().heapUsed;
    };
    const before = reached();
    let greatest = before;
    let rows = 0;
    for await (const _ of source.rows()) {
      rows += 1;
      if (rows % 20_000 === 0) greatest = Math.max(greatest, reached());
    }
    expect(rows).toBe(ROWS);
    // Held all at once, the rows' objects and texts would take more than 60 MB.
    expect(greatest - before).toBeLessThan(20e6);
  }, 60_000);
});
