import { readFileSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { strFromU8, unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  guessMapping,
  type ImportKind,
  importKinds,
  readSource,
  runImport,
} from '../import/index.ts';
import type { Stored } from '../model/index.ts';
import { openStore, type RecordStore } from '../store/index.ts';
import { csvCell } from './csv-cell.ts';
import { exportAll } from './export-all.ts';
import { exportCsv } from './export-csv.ts';
import { exportGeoJson } from './export-geojson.ts';

// Time for a slow machine: nothing here is about speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const data = (name: string) => fileURLToPath(new URL(`../../test-data/${name}`, import.meta.url));

let folder = '';
let store: RecordStore;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-export-'));
  store = await openStore({ memory: true });
  for (const [name, kind] of [
    ['hydrants', 'hydrants'],
    ['water_and_stations', 'stations'],
    ['water_and_stations', 'water-sources'],
    ['streets', 'streets'],
    ['buildings', 'buildings'],
  ] as const) {
    const source = await readSource(data(`${name}.geojson`));
    await runImport(store, source, guessMapping(kind, source));
  }
  const [hydrant] = (await store.list('hydrants', { limit: 1 })).records;
  const [station] = (await store.list('stations', { limit: 1 })).records;
  // What spreadsheets and separators could spoil, and lists inside records.
  await store.create('hydrants', {
    name: '=cmd()|x',
    longitude: -84.123456789,
    latitude: 33.7,
    elevationFt: -3.25,
    note: '+1 555\n"quoted"; semi,\ttab, \'odd\'',
    steamerLoss: { lossPsi: 5, atGpm: 1000 },
    origins: { elevationFt: { kind: 'measured', text: 'own survey' } },
  });
  await store.create('hydrants', {
    name: "'=odd",
    longitude: 11.2,
    latitude: 49.5,
    status: 'out of service',
    statusReason: 'frozen',
  });
  await store.create('buildings', {
    name: 'A point',
    longitude: 11.25,
    latitude: 49.52,
    sprinklered: true,
    neededGpm: 0,
  });
  await store.create('rigs', {
    name: 'Engine 1',
    stationId: station!.id,
    ratedGpm: 1500,
    hose: [{ size: '5', lengthFt: 1000, where: 'supply bed' }],
  });
  for (const staticPsi of [60, 61]) {
    await store.create('flow-tests', {
      hydrantId: hydrant!.id,
      testedOn: '2024-03-04',
      staticPsi,
      residualPsi: 40,
      flowing: [{ pitotPsi: 20, outletIn: 2.5, coefficient: 0.9 }],
    });
  }
  // What would be a slip or "not known" in another's list.
  const odd = await store.create('hydrants', {
    name: '12.0',
    longitude: 0,
    latitude: 0,
    elevationFt: 9999,
    mainIn: 1,
    steamerIn: 0.9,
    main: '8',
    owner: 'N/A',
    note: '  indented',
  });
  await store.create('hydrants', { name: 'Total', longitude: 38.9, latitude: -77 });
  await store.create('rigs', { name: 'Total', inService: false });
  await store.create('buildings', { name: '1/2', longitude: -77, latitude: 38, areaFt2: 9999 });
  await store.create('streets', {
    name: 'Mill Walk',
    path: [
      [-77, 38],
      [-77.1, 38.1],
    ],
    class: 'S1710',
  });
  await store.create('flow-tests', {
    hydrantId: odd.id,
    testedOn: '1970-01-01',
    staticPsi: 0.1,
    residualPsi: 0,
    flowing: [{ pitotPsi: 0, outletIn: 0.3 }],
    statedFlowGpm: 9999,
  });
});
afterEach(async () => {
  await store.close();
  await rm(folder, { recursive: true, force: true });
});

const forms = { csv: exportCsv, geojson: exportGeoJson } as const;

async function written(
  from: RecordStore,
  kind: ImportKind,
  form: keyof typeof forms,
): Promise<string> {
  let text = '';
  for await (const piece of forms[form](from, kind)) text += piece;
  const path = join(folder, `${kind}.${form}`);
  await writeFile(path, text);
  return path;
}

async function bring(into: RecordStore, path: string, kind: ImportKind) {
  const source = await readSource(path);
  return runImport(into, source, guessMapping(kind, source));
}

/** Without what each store gives by itself; a reference by the name of what it refers to. */
async function everyRecord(from: RecordStore, kind: ImportKind) {
  const records: unknown[] = [];
  for await (const record of from.all(kind)) {
    const {
      id: _,
      version: __,
      createdAt: ___,
      updatedAt: ____,
      ...fields
    } = record as Stored<'hydrants'>;
    const {
      externalSource: _____,
      externalId: ______,
      hydrantId,
      stationId,
      ...own
    } = fields as Record<string, unknown>;
    const hydrant = hydrantId && (await from.get('hydrants', String(hydrantId)))?.name;
    const station = stationId && (await from.get('stations', String(stationId)))?.name;
    records.push({ ...own, hydrant, station });
  }
  return records;
}

describe.each(['csv', 'geojson'] as const)('exported as %s', (form) => {
  it('and imported elsewhere, records are the same, and nothing doubles', async () => {
    const other = await openStore({ memory: true });
    for (const kind of importKinds) {
      const path = await written(store, kind, form);
      const report = await bring(other, path, kind);
      expect(report, kind).toMatchObject({ added: await store.count(kind), refusedCount: 0 });
      expect(await everyRecord(other, kind), kind).toEqual(await everyRecord(store, kind));
      expect(await bring(other, path, kind), kind).toMatchObject({
        added: 0,
        changed: 0,
        refusedCount: 0,
      });
    }
    await other.close();
  });

  it('by way of another store they are themselves again, and a value of the department stays', async () => {
    const other = await openStore({ memory: true });
    for (const kind of ['stations', 'hydrants'] as const) {
      const count = await store.count(kind);
      await bring(other, await written(store, kind, form), kind);
      const [mine] = (await store.list(kind, { where: { externalId: null }, limit: 1 })).records;
      const path = await written(other, kind, form);
      const report = await bring(store, path, kind);
      expect(report, kind).toMatchObject({ added: 0, changed: 0, refusedCount: 0 });
      expect(await store.count(kind), kind).toBe(count);
      if (!mine) continue;
      await store.change(kind, mine.id, mine.version, { note: 'seen since' });
      expect(await bring(store, path, kind), kind).toMatchObject({ added: 0 });
      expect((await store.get(kind, mine.id))?.note, kind).toBe('seen since');
    }
    await other.close();
  });

  it('and imported where they came from, nothing changes', async () => {
    for (const kind of importKinds) {
      const before = await everyRecord(store, kind);
      const report = await bring(store, await written(store, kind, form), kind);
      expect(report, kind).toMatchObject({
        added: 0,
        changed: 0,
        same: before.length,
        refusedCount: 0,
      });
      expect(await everyRecord(store, kind), kind).toEqual(before);
    }
  });
});

describe('a change made in the exported table', () => {
  const edited = async () => {
    const path = await written(store, 'hydrants', 'csv');
    const text = readFileSync(path, 'utf8');
    await writeFile(path, text.replace('out of service,frozen', 'out of service,hit by a truck'));
    return path;
  };
  const odd = async () => (await store.list('hydrants', { where: { name: "'=odd" } })).records[0]!;

  it('comes back into the record that it was made on, though no list knows it', async () => {
    const report = await bring(store, await edited(), 'hydrants');
    expect(report).toMatchObject({ added: 0, changed: 1, refusedCount: 0, keptCount: 0 });
    expect((await odd()).statusReason).toBe('hit by a truck');
  });

  it('gives way to what the department has written since, and is told', async () => {
    const path = await edited();
    const { id, version } = await odd();
    await store.change('hydrants', id, version, { statusReason: 'dug up' });
    const report = await bring(store, path, 'hydrants');
    expect(report).toMatchObject({ added: 0, changed: 0, keptCount: 1 });
    expect((await odd()).statusReason).toBe('dug up');
  });
});

describe('the outlets of a flow test', () => {
  it('stand in columns, and a pitot mended there comes back', async () => {
    const path = await written(store, 'flow-tests', 'csv');
    const text = readFileSync(path, 'utf8');
    expect(text).toContain('Pitot 1 (psi),Outlet 1 (in)');
    expect(text).not.toContain('pitotPsi');
    const lines = text.split('\r\n');
    const at = lines[0]!.split(',').indexOf('Pitot 1 (psi)');
    expect(lines[1]!.split(',')[at]).toBe('20');
    const cells = lines[1]!.split(',');
    cells[at] = '22';
    await writeFile(path, [lines[0], cells.join(','), ...lines.slice(2)].join('\r\n'));
    const report = await bring(store, path, 'flow-tests');
    expect(report).toMatchObject({ added: 0, changed: 1, refusedCount: 0, keptCount: 0 });
    const { records } = await store.list('flow-tests');
    expect(records.map(({ flowing }) => flowing[0]?.pitotPsi).sort()).toEqual([0, 20, 22]);
  });

  it('come back whole where columns could not hold them', async () => {
    const [one] = (await store.list('flow-tests')).records;
    const many = Array.from({ length: 6 }, (_, n) => ({ hydrant: `H-${n}`, flowGpm: 0.1 + n }));
    await store.change('flow-tests', one!.id, one!.version, {
      flowing: [...many, { hydrant: 'not read', outletIn: 2.5 }],
    });
    const before = await everyRecord(store, 'flow-tests');
    const report = await bring(store, await written(store, 'flow-tests', 'csv'), 'flow-tests');
    expect(report).toMatchObject({ added: 0, changed: 0, refusedCount: 0 });
    expect(await everyRecord(store, 'flow-tests')).toEqual(before);
  });
});

describe('cells', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+1 555', "'+1 555"],
    ['-x', "'-x"],
    ['@x', "'@x"],
    ['\tx', '"\'\tx"'],
    ["'=x", "''=x"],
    ['-84.3', '-84.3'],
    ['plain', 'plain'],
    ['a"b', '"a""b"'],
  ])('%j is written %j', (value, cell) => {
    expect(csvCell(value)).toBe(cell);
  });

  it('a number is never marked as text', () => {
    expect(csvCell(-84.3)).toBe('-84.3');
  });
});

describe('exportAll', () => {
  it('holds every kind, as tables and maps that can be read', async () => {
    const path = join(folder, 'all.zip');
    const counts = await exportAll(store, path);
    const files = unzipSync(new Uint8Array(readFileSync(path)));
    expect(Object.keys(files)).toContain('hydrants.csv');
    const collection = JSON.parse(strFromU8(files['hydrants.geojson']!)) as { features: unknown[] };
    expect(collection.features).toHaveLength(counts.hydrants!);
    expect(counts.hydrants).toBe(483);
  });
});
