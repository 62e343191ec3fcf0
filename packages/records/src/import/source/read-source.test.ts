import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import iconv from 'iconv-lite';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { readSource } from './read-source.ts';
import { type Source, SourceRefusedError, type SourceRow } from './source.ts';

// Time for a slow machine: nothing here is about speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-source-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function sourceOf(content: string | Uint8Array, name = 'list.csv'): Promise<Source> {
  const path = join(folder, name);
  await writeFile(path, content);
  return readSource(path);
}

async function rowsOf(source: Source): Promise<SourceRow[]> {
  const rows: SourceRow[] = [];
  for await (const row of source.rows()) rows.push(row);
  return rows;
}

const values = async (source: Source) => (await rowsOf(source)).map((row) => row.values);

describe('tables', () => {
  const table = 'Straße;Größe\nÄußere Nürnberger Straße;100\n';
  it.each([
    ['UTF-8', Buffer.from(table, 'utf8')],
    ['UTF-8', Buffer.from(`\uFEFF${table}`, 'utf8')],
    ['UTF-16 LE', iconv.encode(table, 'utf-16le', { addBOM: true })],
    ['UTF-16 BE', iconv.encode(table, 'utf-16be', { addBOM: true })],
    ['UTF-16 LE', iconv.encode(table, 'utf-16le')],
    ['Windows-1252', iconv.encode(table, 'win1252')],
  ])('are read as %s', async (encoding, bytes) => {
    const source = await sourceOf(bytes);
    expect(source.encoding).toBe(encoding);
    expect(await values(source)).toEqual([{ Straße: 'Äußere Nürnberger Straße', Größe: '100' }]);
  });

  it('are read as UTF-8 though the first letter beyond ASCII comes late', async () => {
    const lines = Array.from({ length: 20_000 }, (_, at) => `${at},plain`);
    const source = await sourceOf(`id,name\n${lines.join('\n')}\n20000,Ü\n`);
    expect(source.encoding).toBe('UTF-8');
    expect((await values(source)).at(-1)).toEqual({ id: '20000', name: 'Ü' });
  });

  it.each([',', ';', '\t', '|'])('are split at %j', async (delimiter) => {
    const source = await sourceOf(
      `${['a', 'b', 'c'].join(delimiter)}\n${['1', '2', '3'].join(delimiter)}`,
    );
    expect(source.columns).toEqual(['a', 'b', 'c']);
  });

  it('with decimal commas are split at the semicolons', async () => {
    const source = await sourceOf('id;x;y\n1;11,26;49,52\n2;11,27;49,53\n');
    expect(source.columns).toEqual(['id', 'x', 'y']);
  });

  it('have blank and repeated heads told apart', async () => {
    const source = await sourceOf('id,size,,size\n1,2,3,4\n');
    expect(source.columns).toEqual(['id', 'size', 'column 3', 'size (2)']);
  });

  it('may have a title of two cells above their heads', async () => {
    const title = 'Water works,,,,\nHydrants,,printed 1/2/2024,,\n';
    const source = await sourceOf(`${title}No,Lat,Long,Main,Note\n1,38.9,-77,8,\n2,38.8,-77,8,x\n`);
    expect(source.columns).toEqual(['No', 'Lat', 'Long', 'Main', 'Note']);
    expect(source.total).toBe(2);
  });

  it('keep heads of which most are blank', async () => {
    const source = await sourceOf('No,Main,,,\n1,8,2,3,4\n2,8,2,3,4\n');
    expect(source.columns.slice(0, 2)).toEqual(['No', 'Main']);
    expect(source.total).toBe(2);
  });

  it('may have a title above their heads, and lines of blanks', async () => {
    const source = await sourceOf('Hydrants of the district,,\n\nid,x,y\n,,\n1,2,3\n');
    expect(source.columns).toEqual(['id', 'x', 'y']);
    expect(source.total).toBe(1);
  });

  it('keep rows of the wrong width, each with its line and its fault', async () => {
    const rows = await rowsOf(await sourceOf('id,x\n1\n2,3\n4,5,6\n7,8,\n'));
    expect(rows.map(({ number, fault }) => [number, fault?.code])).toEqual([
      [2, 'column count'],
      [3, undefined],
      [4, 'column count'],
      [5, undefined],
    ]);
    expect(rows[0]!.raw).toBe('1');
  });

  it('take the apostrophe off that marks a formula as text', async () => {
    expect(await values(await sourceOf("id,name\n1,'=1+1\n2,=1+1\n"))).toEqual([
      { id: '1', name: '=1+1' },
      { id: '2', name: '=1+1' },
    ]);
  });
});

describe('GeoJSON', () => {
  const feature = (id: number) =>
    JSON.stringify({
      type: 'Feature',
      properties: { n: id, text: 'a ] } " \\ [ { b', list: [1, { features: [] }] },
      geometry: { type: 'Point', coordinates: [11 + id / 1000, 49] },
    });
  const forms: [string, string][] = [
    ['a collection', `{"type":"FeatureCollection","features":[${feature(1)},${feature(2)}]}`],
    [
      'a collection with members before and after',
      `{"features" : [\n${feature(1)} , ${feature(2)}\n], "type":"FeatureCollection","name":"x"}`,
    ],
    ['a feature on each line', `${feature(1)}\n${feature(2)}\n`],
    ['a text sequence (RFC 8142)', `\u001e${feature(1)}\n\u001e${feature(2)}\n`],
    ['a bare list', `[${feature(1)},${feature(2)}]`],
  ];
  it.each(forms)('is read as %s', async (_, text) => {
    const rows = await rowsOf(await sourceOf(text, 'x.geojson'));
    expect(rows.map((row) => row.values.n)).toEqual([1, 2]);
    expect(rows[1]!.geometry).toEqual({ type: 'Point', coordinates: [11.002, 49] });
    expect(rows[0]!.values.text).toBe('a ] } " \\ [ { b');
  });

  it('cut off in the middle keeps the features before the cut and tells of the one after', async () => {
    const text = forms[0]![1];
    const rows = await rowsOf(await sourceOf(text.slice(0, -30), 'x.geojson'));
    expect(rows.map(({ fault }) => fault?.code)).toEqual([undefined, 'unreadable row']);
  });

  it.each(['utf-16le', 'utf-16be', 'utf8'])('is read with the mark of %s', async (encoding) => {
    const bytes = iconv.encode(feature(1), encoding, { addBOM: true });
    expect((await rowsOf(await sourceOf(bytes, 'x.geojson')))[0]!.values.n).toBe(1);
  });

  it('has no place where a geometry has no coordinates, and a reason for one of several shapes', async () => {
    // RFC 7946, section 3.1: empty coordinates may be taken for a null geometry; 3.1.8: collections.
    const point = '{"type":"Point","coordinates":[1,2]}';
    const geometries = [
      '{"type":"Point","coordinates":[]}',
      '{"type":"Point","coordinates":[null,null]}',
      '{"type":"GeometryCollection","geometries":[]}',
      `{"type":"GeometryCollection","geometries":[${point}]}`,
      `{"type":"GeometryCollection","geometries":[${point},${point}]}`,
    ];
    const text = geometries.map((one) => `{"type":"Feature","properties":{},"geometry":${one}}`);
    const rows = await rowsOf(await sourceOf(text.join('\n'), 'x.geojson'));
    expect(rows.map(({ geometry }) => geometry)).toEqual([
      null,
      null,
      null,
      { type: 'Point', coordinates: [1, 2] },
      null,
    ]);
    expect(rows.map(({ fault }) => fault?.reason ?? '')).toEqual([
      '',
      '',
      '',
      '',
      expect.stringContaining('several shapes'),
    ]);
  });

  it('may be what a map service writes: attributes, and a geometry by its members', async () => {
    // "GeoServices REST Specification" 1.0, "Geometry objects": outer rings run clockwise.
    const square = (x: number, d: number) => [
      [x, 0],
      [x, d],
      [x + d, d],
      [x + d, 0],
      [x, 0],
    ];
    const source = await sourceOf(
      JSON.stringify({
        geometryType: 'esriGeometryPoint',
        spatialReference: { wkid: 102_100, latestWkid: 3857 },
        features: [
          { attributes: { id: 'H-1' }, geometry: { x: 5, y: 6 } },
          { attributes: { id: 'H-2' }, geometry: { x: 'NaN', y: 'NaN' } },
          {
            attributes: { id: 'S-1' },
            geometry: {
              paths: [
                [
                  [0, 0],
                  [1, 1],
                ],
              ],
            },
          },
          {
            attributes: { id: 'B-1' },
            geometry: { rings: [square(0, 9), square(2, 3).reverse(), square(20, 5)] },
          },
        ],
      }),
      'x.json',
    );
    expect(source.crs?.crs).toBe('EPSG:3857');
    const rows = await rowsOf(source);
    expect(rows.map(({ values: { id } }) => id)).toEqual(['H-1', 'H-2', 'S-1', 'B-1']);
    expect(rows.map(({ geometry }) => geometry)).toEqual([
      { type: 'Point', coordinates: [5, 6] },
      null,
      {
        type: 'MultiLineString',
        coordinates: [
          [
            [0, 0],
            [1, 1],
          ],
        ],
      },
      {
        type: 'MultiPolygon',
        coordinates: [[square(0, 9), square(2, 3).reverse()], [square(20, 5)]],
      },
    ]);
  });

  it('names its coordinate system by an old crs member', async () => {
    const crs = '"crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::2240"}}';
    const source = await sourceOf(
      `{"type":"FeatureCollection",${crs},"features":[${feature(1)}]}`,
      'x.geojson',
    );
    expect(source.crs?.crs).toBe('EPSG:2240');
    const code = crs.replace('"name":"urn:ogc:def:crs:EPSG::2240"', '"code":2240');
    const other = await sourceOf(`{${code},"features":[${feature(1)}]}`, 'x.geojson');
    expect(other.crs?.crs).toBe('EPSG:2240');
  });

  it('has the columns of all its features, and an id of its own', async () => {
    const one = '{"type":"Feature","id":"n1","properties":{"a":1},"geometry":null}';
    const two = '{"type":"Feature","id":"n2","properties":{"b":1},"geometry":null}';
    expect((await sourceOf(`${one}\n${two}`, 'x.geojson')).columns).toEqual(['id', 'a', 'b']);
  });
});

describe('an archive', () => {
  it('has its table read, and not the texts beside it', async () => {
    const text = (words: string) => Buffer.from(words);
    const zipped = zipSync({
      'hydrants.csv': text('id,lat,lon\n1,38.91,-77.01\n'),
      'README.txt': text('Data of 2024.'),
      'metadata/licence.txt': text('Free to use.'),
    });
    const source = await sourceOf(Buffer.from(zipped), 'x.zip');
    expect(source.columns).toEqual(['id', 'lat', 'lon']);
  });
});

describe('what is no list', () => {
  it.each([
    ['an empty file', '', 'x.csv', '0 bytes'],
    ['heads alone', 'id,name\n', 'x.csv', 'no row'],
    ['a workbook', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 1, 2]), 'x.xls', 'CSV'],
    ['a web page', '<!DOCTYPE html><html></html>', 'x.csv', 'page'],
    ['a picture', Buffer.from('II*\0\u0008'), 'x.tif', 'TIFF'],
    ['a damaged archive', Buffer.from([0x50, 0x4b, 3, 4, 9, 9, 9]), 'x.zip', 'damaged'],
    ['JSON without features', '{"type":"FeatureCollection","features":[]}', 'x.json', 'no feature'],
    ['rows inside a member', '{"data":[{"id":1,"lat":38.9,"lon":-77}]}', 'x.json', 'neither'],
    [
      'a topology',
      '{"type":"Topology","objects":{"h":{"type":"Point"}},"arcs":[]}',
      'x.json',
      'neither',
    ],
    ['a shapefile in name alone', 'hello', 'x.shp', 'no shapefile'],
  ])('%s is refused with a remedy', async (_, content, name, words) => {
    await expect(sourceOf(content, name)).rejects.toThrow(SourceRefusedError);
    await expect(sourceOf(content, name)).rejects.toThrow(words);
  });

  it('any bytes whatever are read or refused, never a crash', async () => {
    const starts = fc.constantFrom(
      '',
      '{',
      '[',
      '{"features":[',
      'a,b\n',
      '\uFEFF',
      'PK\u0003\u0004',
      '\0\0\u0027\n',
    );
    await fc.assert(
      fc.asyncProperty(
        starts,
        fc.uint8Array({ maxLength: 400 }),
        fc.constantFrom('x.csv', 'x.geojson', 'x.shp', 'x.zip'),
        async (start, bytes, name) => {
          const content = Buffer.concat([Buffer.from(start, 'utf8'), bytes]);
          try {
            const source = await sourceOf(content, name);
            expect((await rowsOf(source)).length).toBe(source.total);
          } catch (error) {
            expect(error).toBeInstanceOf(SourceRefusedError);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
