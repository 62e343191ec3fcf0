import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createApp } from '../app.ts';
import { listen, type RunningServer } from '../listen.ts';
import { type TestServer, testServer } from '../test-server.ts';
import { sourceOfTemplate } from './base-map-setting.ts';
import type { BaseMapAnswer } from './base-maps.ts';
import { checkTilesFile, rangeIn } from './tiles-file.ts';

let server: TestServer;

beforeEach(async () => {
  server = await testServer();
});
afterEach(() => server.close());

const policyOf = async (url: string) =>
  (await fetch(url)).headers.get('content-security-policy') ?? '';
const answerIn = async (answer: Response) => (await answer.json()) as BaseMapAnswer;
const baseMap = async () => answerIn(await server.ask('/map/base-map'));
const set = (value: unknown) => server.add('settings', { name: 'base map', value });

const template = 'https://tiles.example.org/v1/streets/{z}/{x}/{y}.png?style=plain';

describe('a base map', () => {
  it('is off until somebody names one, and pages may ask this server alone', async () => {
    expect(await baseMap()).toEqual({ baseMap: null, problem: null });
    expect(await policyOf(server.url)).not.toMatch(/https?:/);
  });

  it('is what the setting names, and the policy opens to that path alone', async () => {
    const { id, version } = await set({ url: template, attribution: 'Example survey' });
    expect(await baseMap()).toEqual({
      baseMap: {
        kind: 'tiles',
        url: template,
        attribution: 'Example survey',
        tileSize: 256,
        minZoom: 0,
        maxZoom: 19,
      },
      problem: null,
    });
    const policy = await policyOf(server.url);
    expect(policy.match(/https?:\S+/g)).toEqual([
      'https://tiles.example.org/v1/streets/;',
      'https://tiles.example.org/v1/streets/;',
    ]);
    expect(policy).toMatch(/connect-src 'self' https/);
    expect(policy).toMatch(/img-src 'self' data: blob: https/);
    expect(policy).toMatch(/default-src 'self';/);
    await server.ask(`/records/settings/${id}`, { method: 'DELETE', version });
    expect((await baseMap()).baseMap).toBeNull();
    expect(await policyOf(server.url)).not.toMatch(/https?:/);
  });

  it.each([
    { url: 'https://tiles.example.org/{z}/{x}.png', attribution: 'A' },
    { url: 'ftp://tiles.example.org/{z}/{x}/{y}.png', attribution: 'A' },
    { url: 'https://a:b@tiles.example.org/{z}/{x}/{y}.png', attribution: 'A' },
    {
      url: "https://tiles.example.org/{z}/{x}/{y}.png; script-src 'unsafe-eval'",
      attribution: 'A',
    },
    { url: 'https://{x}.example.org/{z}/{x}/{y}.png', attribution: 'A' },
    { url: template },
    { url: template, attribution: 'A', minZoom: 12, maxZoom: 3 },
    'https://tiles.example.org',
  ])('that cannot be used is told, and opens nothing: %j', async (value) => {
    await set(value);
    const answer = await baseMap();
    expect(answer.baseMap).toBeNull();
    expect(answer.problem).toMatch(/The setting "base map" is not understood: .*Mend it/);
    expect(await policyOf(server.url)).not.toMatch(/https?:|unsafe-eval/);
  });

  it('opens no more of a server than its tiles have in common', () => {
    expect(sourceOfTemplate('http://127.0.0.1:9000/{z}/{x}/{y}.png')).toBe(
      'http://127.0.0.1:9000/',
    );
    expect(sourceOfTemplate('https://a.example/b/c-{z}/{x}/{y}')).toBe('https://a.example/b/');
  });
});

describe('a file of tiles', () => {
  /** A header as "PMTiles Version 3 Specification" lays it out, as far as it is looked at, and 1,000 bytes. */
  const tilesFile = (tileType: number) => {
    const header = Buffer.alloc(127);
    header.write('PMTiles', 'latin1');
    header[7] = 3;
    header[99] = tileType;
    return Buffer.concat([header, Buffer.from(Array.from({ length: 1000 }, (_, i) => i % 251))]);
  };
  const [VECTOR, PNG] = [1, 2];
  const bytes = tilesFile(PNG);
  let withFile: RunningServer;

  beforeEach(async () => {
    const baseMapFile = join(server.folder, 'town.pmtiles');
    writeFileSync(baseMapFile, bytes);
    const app = createApp({
      webRoot: server.folder,
      version: '1',
      store: server.store,
      baseMapFile,
    });
    withFile = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
  });
  afterEach(() => withFile.close());

  const ask = (range?: string) =>
    fetch(`${withFile.url}api/map/base-map.pmtiles`, { headers: range ? { range } : {} });

  it('is served part by part', async () => {
    const part = await ask('bytes=0-126');
    expect(part.status).toBe(206);
    expect(part.headers.get('content-range')).toBe(`bytes 0-126/${bytes.length}`);
    expect(Buffer.from(await part.arrayBuffer())).toEqual(bytes.subarray(0, 127));
    const end = await ask('bytes=-300');
    expect(Buffer.from(await end.arrayBuffer())).toEqual(bytes.subarray(-300));
    const whole = await ask();
    expect(whole.status).toBe(200);
    expect(Buffer.from(await whole.arrayBuffer())).toEqual(bytes);
    const past = await ask(`bytes=${bytes.length}-`);
    expect(past.status).toBe(416);
    expect(past.headers.get('content-range')).toBe(`bytes */${bytes.length}`);
  });

  it('is drawn without asking anybody else', async () => {
    const answer = await answerIn(await fetch(`${withFile.url}api/map/base-map`));
    expect(answer.baseMap).toMatchObject({ kind: 'file', url: '/api/map/base-map.pmtiles' });
    expect(await policyOf(withFile.url)).not.toMatch(/https?:/);
  });

  it('is not there where the server was given none', async () => {
    const answer = await server.ask('/map/base-map.pmtiles');
    expect(answer.status).toBe(404);
  });

  it('is refused at the start where it cannot be drawn, by name and with the remedy', async () => {
    const path = (name: string) => join(server.folder, name);
    writeFileSync(path('vector.pmtiles'), tilesFile(VECTOR));
    writeFileSync(path('words.pmtiles'), 'not a file of tiles');
    await expect(checkTilesFile(path('vector.pmtiles'))).rejects.toThrow(
      /vector.*PLUGSIDE_BASE_MAP/,
    );
    await expect(checkTilesFile(path('words.pmtiles'))).rejects.toThrow(/words\.pmtiles is not a/);
    await expect(checkTilesFile(path('none.pmtiles'))).rejects.toThrow(
      /none\.pmtiles cannot be read/,
    );
    await expect(checkTilesFile(path('town.pmtiles'))).resolves.toMatchObject({
      bytes: bytes.length,
    });
  });
});

describe('a range (RFC 9110, section 14.1.2: of 10,000 bytes)', () => {
  it.each([
    ['bytes=0-499', { first: 0, last: 499 }],
    ['bytes=500-999', { first: 500, last: 999 }],
    ['bytes=-500', { first: 9500, last: 9999 }],
    ['bytes=9500-', { first: 9500, last: 9999 }],
    ['bytes=0-0,-1', 'all'],
    ['bytes=10000-', 'none'],
    ['bytes=-0', 'none'],
    ['bytes=600-500', 'all'],
    ['lines=1-2', 'all'],
    [undefined, 'all'],
  ])('%s', (header, range) => {
    expect(rangeIn(header, 10_000)).toEqual(range);
  });
});
