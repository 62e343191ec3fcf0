import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import iconv from 'iconv-lite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSource } from './read-source.ts';
import { SourceRefusedError, type SourceRow } from './source.ts';

/** A shapefile of points as "ESRI Shapefile Technical Description" (1998) lays it out; null for a blank shape. */
function pointShapes(points: readonly ([number, number] | null)[]): Uint8Array {
  const records = points.map((point, at) => {
    const content = Buffer.alloc(point ? 20 : 4);
    content.writeInt32LE(point ? 1 : 0, 0);
    if (point) {
      content.writeDoubleLE(point[0], 4);
      content.writeDoubleLE(point[1], 12);
    }
    const head = Buffer.alloc(8);
    head.writeInt32BE(at + 1, 0);
    head.writeInt32BE(content.length / 2, 4);
    return Buffer.concat([head, content]);
  });
  const body = Buffer.concat(records);
  const head = Buffer.alloc(100);
  head.writeInt32BE(9994, 0);
  head.writeInt32BE((100 + body.length) / 2, 24);
  head.writeInt32LE(1000, 28);
  head.writeInt32LE(1, 32);
  return Buffer.concat([head, body]);
}

interface Field {
  name: string;
  type: string;
  length: number;
}

/** A dBASE III table with cells as text. */
function table(fields: readonly Field[], rows: readonly (readonly string[])[], encoding: string) {
  const width = 1 + fields.reduce((sum, { length }) => sum + length, 0);
  const head = Buffer.alloc(32 + 32 * fields.length + 1);
  head[0] = 3;
  head.writeUInt32LE(rows.length, 4);
  head.writeUInt16LE(head.length, 8);
  head.writeUInt16LE(width, 10);
  fields.forEach(({ name, type, length }, at) => {
    head.write(name, 32 + 32 * at, 'latin1');
    head.write(type, 43 + 32 * at, 'latin1');
    head[48 + 32 * at] = length;
  });
  head[head.length - 1] = 0x0d;
  const body = rows.map((row) =>
    Buffer.concat([
      Buffer.from(' '),
      ...row.map((cell, at) => {
        const bytes = Buffer.alloc(fields[at]!.length, ' ');
        iconv.encode(cell, encoding).copy(bytes);
        return bytes;
      }),
    ]),
  );
  return Buffer.concat([head, ...body, Buffer.from([0x1a])]);
}

const fields: Field[] = [
  { name: 'HYDID', type: 'N', length: 6 },
  { name: 'STREET', type: 'C', length: 20 },
  { name: 'TESTED', type: 'D', length: 8 },
  { name: 'WORKS', type: 'L', length: 1 },
  { name: 'STAMP', type: '@', length: 8 },
];
const rows = [
  ['1', 'Höhe', '20240331', 'T', 'x'],
  ['2', '', '', '?', ''],
  ['***', 'Weg', '20240401', 'F', ''],
];
const prj =
  'GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]]';
const points: ([number, number] | null)[] = [[11.26, 49.52], null, [11.27, 49.53]];

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-shape-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function read(path: string): Promise<{ rows: SourceRow[]; crs: string | undefined }> {
  const source = await readSource(path);
  const read: SourceRow[] = [];
  for await (const row of source.rows()) read.push(row);
  return { rows: read, crs: source.crs?.crs };
}

describe('shapefiles', () => {
  it.each([
    ['UTF-8', 'utf8'],
    ['1252', 'win1252'],
    ['ISO 88591', 'latin1'],
    ['CP850', 'cp850'],
  ])('zipped, with a table in %s, are read with their blank shapes', async (cpg, encoding) => {
    const path = join(folder, 'zipped.zip');
    const zip = zipSync({
      'layer/Hydrants.shp': pointShapes(points),
      'layer/Hydrants.dbf': table(fields, rows, encoding),
      'layer/Hydrants.prj': strToU8(prj),
      'layer/Hydrants.cpg': strToU8(cpg),
    });
    await writeFile(path, zip);
    const { rows: found, crs } = await read(path);
    expect(crs).toBe(prj);
    expect(found.map(({ values }) => values)).toEqual([
      { HYDID: 1, STREET: 'Höhe', TESTED: '2024-03-31', WORKS: true, STAMP: 'x' },
      { HYDID: 2, STREET: null, TESTED: null, WORKS: null, STAMP: null },
      { HYDID: null, STREET: 'Weg', TESTED: '2024-04-01', WORKS: false, STAMP: null },
    ]);
    expect(found.map(({ geometry }) => geometry?.coordinates ?? null)).toEqual(points);
  });

  it('loose, with their parts beside them in any case, are read', async () => {
    await writeFile(join(folder, 'loose.shp'), pointShapes(points));
    await writeFile(join(folder, 'loose.DBF'), table(fields, rows, 'win1252'));
    const { rows: found, crs } = await read(join(folder, 'loose.shp'));
    expect(found).toHaveLength(3);
    expect(found[0]!.values.STREET).toBe('Höhe');
    expect(crs).toBeUndefined();
  });

  it('without their table are refused with what is missing', async () => {
    await writeFile(join(folder, 'alone.shp'), pointShapes(points));
    await expect(readSource(join(folder, 'alone.shp'))).rejects.toThrow('.dbf');
  });

  it('cut off anywhere keep a row for every row of the table, or are refused', async () => {
    const shp = pointShapes(points);
    const dbf = table(fields, rows, 'utf8');
    for (let length = 0; length < shp.length; length += 3) {
      const path = join(folder, 'cut.zip');
      await writeFile(path, zipSync({ 'a.shp': shp.subarray(0, length), 'a.dbf': dbf }));
      try {
        expect((await read(path)).rows, `cut at ${length}`).toHaveLength(3);
      } catch (error) {
        expect(error, `cut at ${length}`).toBeInstanceOf(SourceRefusedError);
      }
    }
  });

  it('several in one archive are refused by name, and one of them can be chosen', async () => {
    const path = join(folder, 'two.zip');
    const dbf = table(fields, rows, 'utf8');
    const shp = pointShapes(points);
    await writeFile(path, zipSync({ 'a.shp': shp, 'a.dbf': dbf, 'b.shp': shp, 'b.dbf': dbf }));
    await expect(readSource(path)).rejects.toThrow('a.shp, b.shp');
    expect((await readSource(path, 'two.zip', { layer: 'b.shp' })).total).toBe(3);
  });
});
