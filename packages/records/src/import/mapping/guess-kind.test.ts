import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSource } from '../source/read-source.ts';
import { guessKind } from './guess-kind.ts';
import type { ImportKind } from './mapping.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-kind-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function kindOf(text: string, asked?: ImportKind) {
  const path = join(folder, 'list.csv');
  await writeFile(path, text);
  return guessKind(await readSource(path), asked);
}

describe('the kind that columns tell of', () => {
  const tests =
    'Hydrant No,Test Date,Static,Residual,Pitot 1\nH-1,2026-05-01,60,40,20\nH-2,2026-05-02,62,44,18\n';

  it('is flow tests where pressures and a date stand by a hydrant, whatever was asked', async () => {
    expect(await kindOf(tests)).toBe('flow-tests');
    expect(await kindOf(tests, 'hydrants')).toBe('flow-tests');
  });

  it('is hydrants where outlets and mains stand by a place', async () => {
    const list =
      'Hydrant No,Lat,Long,Main size,Status\nA-1,42.3001,-71.1001,8 in,in service\nA-2,42.3,-71.1,6 in,in service\n';
    expect(await kindOf(list)).toBe('hydrants');
    expect(await kindOf(list, 'hydrants')).toBe('hydrants');
  });

  it('is rigs where pumps and tanks stand', async () => {
    const list = 'Unit,Type,Pump GPM,Tank Size (gal)\nE1,engine,1500,750\nE2,engine,1250,500\n';
    expect(await kindOf(list)).toBe('rigs');
  });

  it('is left as asked where columns tell nothing', async () => {
    expect(await kindOf('a,b\n1,2\n3,4\n', 'stations')).toBe('stations');
  });

  it.each([
    ['hydrants.geojson', 'hydrants'],
    ['streets.geojson', 'streets'],
    ['buildings.geojson', 'buildings'],
    ['water_and_stations.geojson', 'water-sources'],
  ] as const)('of %s of a town map is %s', async (name, kind) => {
    const path = fileURLToPath(new URL(`../../../test-data/${name}`, import.meta.url));
    expect(guessKind(await readSource(path))).toBe(kind);
  });
});
