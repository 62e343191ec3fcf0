import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openStore, type RecordStore } from '../store/index.ts';
import { guessMapping } from './mapping/guess-mapping.ts';
import type { ImportKind, Mapping } from './mapping/mapping.ts';
import type { ImportReport } from './report.ts';
import { type RunImportOptions, runImport } from './run-import.ts';
import { readSource } from './source/read-source.ts';

// Time for a slow machine: nothing here is about speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const data = (name: string) => fileURLToPath(new URL(`../../test-data/${name}`, import.meta.url));

let folder = '';
let store: RecordStore;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-import-'));
  store = await openStore({ memory: true });
});
afterEach(async () => {
  await store.close();
  await rm(folder, { recursive: true, force: true });
});

type Change = (mapping: Mapping) => void;

async function bring(
  path: string,
  kind: ImportKind,
  change: Change = () => {},
  options: RunImportOptions = {},
): Promise<ImportReport> {
  const source = await readSource(path);
  const mapping = guessMapping(kind, source);
  change(mapping);
  return runImport(store, source, mapping, options);
}

async function bringText(
  text: string,
  kind: ImportKind,
  change?: Change,
  options?: RunImportOptions,
) {
  const path = join(folder, 'list.csv');
  await writeFile(path, text);
  return bring(path, kind, change, options);
}

const everyHydrant = async () => (await store.list('hydrants', { limit: 5000 })).records;

describe('a town of OpenStreetMap', () => {
  it('comes in whole: hydrants, stations, sources, streets and buildings', async () => {
    const counts = async (name: string, kind: ImportKind) => {
      const { added, skipped, refusedCount } = await bring(data(name), kind);
      return [added, skipped, refusedCount];
    };
    // 479 hydrants and 2 stations are in the file; the counts of the rest are those of its lines.
    expect(await counts('hydrants.geojson', 'hydrants')).toEqual([479, 2, 0]);
    expect(await counts('hydrants.geojson', 'stations')).toEqual([2, 479, 0]);
    expect(await counts('streets.geojson', 'streets')).toEqual([300, 0, 0]);
    expect((await counts('buildings.geojson', 'buildings'))[2]).toBe(0);
    expect((await counts('water_and_stations.geojson', 'water-sources'))[2]).toBe(0);
  });

  it('adds nothing when it comes again, on whatever day', async () => {
    await bring(data('hydrants.geojson'), 'hydrants', undefined, { importedOn: '2026-01-01' });
    const again = await bring(data('hydrants.geojson'), 'hydrants', undefined, {
      importedOn: '2026-02-01',
    });
    expect(again).toMatchObject({ added: 0, changed: 0, same: 479, refusedCount: 0 });
    expect(await store.count('hydrants')).toBe(479);
  });

  it('has each value with its unit converted and its origin', async () => {
    await bring(data('hydrants.geojson'), 'hydrants', undefined, { importedOn: '2026-01-01' });
    const { records } = await store.list('hydrants', { where: { externalId: 'n249157943' } });
    expect(records[0]).toMatchObject({
      longitude: 11.2639082,
      latitude: 49.5272578,
      type: 'underground',
      mainIn: 150 / 25.4,
      origins: {
        mainIn: {
          kind: 'imported',
          text: 'hydrants.geojson, fire_hydrant:diameter, imported 2026-01-01',
          date: '2026-01-01',
        },
      },
    });
    expect(records[0]?.origins.sideOutlets).toBeUndefined();
  });
});

describe('flow tests', () => {
  it('find their hydrants by name, and are refused where none goes by it', async () => {
    const names = [
      'First St. & Grant Ave.',
      'Second St. & Lincoln Ave.',
      'Third St. & Grant Ave.',
      'Fourth St. & Lincoln Ave.',
    ];
    for (const name of names)
      await store.create('hydrants', { name, longitude: -105, latitude: 39 });
    const report = await bring(data('flow_tests_quoted.csv'), 'flow-tests');
    // Four of the eight name a hydrant that is there; one does not; three give no day.
    expect(report).toMatchObject({ added: 4, refusedCount: 4 });
    expect(report.byReason.map(({ code, count }) => [code, count])).toEqual([
      ['value not understood', 3],
      ['not found', 1],
    ]);
    const { records } = await store.list('flow-tests', { where: { externalId: 'CO-1' } });
    // As quoted: static 53, residual 5, pitot 4 psi, 331 gpm.
    expect(records[0]).toMatchObject({
      staticPsi: 53,
      residualPsi: 5,
      statedFlowGpm: 331,
      testedOn: '1975-09-30',
      flowing: [{ pitotPsi: 4 }],
    });
  });
});

describe('refused rows', () => {
  const table =
    'id,name,lon,lat,main size\n1,H-1,-84.1,33.1,6\n2,H-2,33.1,-84.1,6\n3,H-3,,,6\n4,H-4,-84.1,33.2,big\n5,H-5,-84.1,33.2,8,9\n1,H-6,-84.1,33.1,6\n7,H-7,-84.12,33.1,6\n8,H-8,-84.1,33.13,six inch\n';

  it('are told by line, column, value, reason and remedy', async () => {
    const report = await bringText(table, 'hydrants');
    expect(report).toMatchObject({ added: 3, refusedCount: 5 });
    expect(report.refused.map(({ row, code, column }) => [row, code, column])).toEqual([
      [3, 'place swapped', 'lon'],
      [4, 'no place', 'lon'],
      [5, 'value not understood', 'main size'],
      [6, 'column count', undefined],
      [7, 'duplicate key', 'id'],
    ]);
    for (const refusal of report.refused) expect(refusal.remedy).not.toBe('');
    expect(report.refused[4]?.reason).toContain('Row 2');
  });

  it('go into a file that, mended, is imported as it is', async () => {
    const refusedFile = join(folder, 'mend.csv');
    await bringText(table, 'hydrants', undefined, { refusedFile });
    const text = await readFile(refusedFile, 'utf8');
    expect(text.split('\r\n')[0]).toContain('id,name,lon,lat,main size,refused_row');
    const mended = text
      .replace('33.1,-84.1', '-84.1,33.1')
      .replace(',big,', ',10,')
      .replace('H-3,,', 'H-3,-84.2,33.3');
    await writeFile(refusedFile, mended);
    const report = await bring(refusedFile, 'hydrants');
    // H-5 came with a cell too many; without the cell it is sound. H-6 still has H-1's id: taken from
    // this file alone, it would write over H-1.
    expect(report).toMatchObject({ sourceName: 'list', added: 4, changed: 0, refusedCount: 1 });
    expect(report.refused[0]).toMatchObject({ code: 'duplicate key', key: '1' });
    expect(
      (await bringText(table.replace('2,H-2,33.1,-84.1', '2,H-2,-84.1,33.1'), 'hydrants')).added,
    ).toBe(0);
  });

  it('leave no file where there are none', async () => {
    const refusedFile = join(folder, 'none.csv');
    await bringText('id,lon,lat\n1,11,49\n', 'hydrants', undefined, { refusedFile });
    expect(existsSync(refusedFile)).toBe(false);
  });
});

describe('importing again', () => {
  const first = 'id,name,lon,lat,main size (in)\n1,H-1,11.1,49.1,6\n2,H-2,11.2,49.2,8\n';

  it('changes what the list changed and leaves the rest', async () => {
    await bringText(first, 'hydrants', undefined, { importedOn: '2026-01-01' });
    const report = await bringText(first.replace('49.2,8', '49.2,10'), 'hydrants', undefined, {
      importedOn: '2026-02-01',
    });
    expect(report).toMatchObject({ added: 0, changed: 1, same: 1 });
    const two = (await everyHydrant()).find(({ name }) => name === 'H-2')!;
    expect(two.mainIn).toBe(10);
    expect([two.origins.mainIn?.date, two.origins.longitude?.date]).toEqual([
      '2026-02-01',
      '2026-01-01',
    ]);
  });

  it('does not clear what a blank cell says nothing of', async () => {
    await bringText(first, 'hydrants');
    await bringText(first.replace('49.2,8', '49.2,'), 'hydrants');
    expect((await everyHydrant()).map(({ mainIn }) => mainIn)).toEqual([6, 8]);
  });

  it('keeps a value that the department gave itself, and tells of it', async () => {
    await bringText(first, 'hydrants');
    const [one] = await everyHydrant();
    await store.change('hydrants', one!.id, one!.version, { mainIn: 12 });
    const report = await bringText(first, 'hydrants');
    expect(report).toMatchObject({ changed: 0, same: 2, keptCount: 1 });
    expect(report.kept[0]).toEqual({
      row: 2,
      record: 'H-1',
      field: 'mainIn',
      ours: '12',
      theirs: '6',
    });
    expect((await everyHydrant())[0]?.mainIn).toBe(12);
  });

  it('keeps a field cleared by hand empty, and a status set back by hand, and tells of both', async () => {
    const list = 'id,name,lon,lat,main size (in),status\n1,H-1,11.1,49.1,6,OOS\n';
    await bringText(list, 'hydrants');
    const [one] = await everyHydrant();
    await store.change('hydrants', one!.id, one!.version, {
      mainIn: undefined,
      status: 'in service',
    });
    const report = await bringText(list, 'hydrants');
    expect(report).toMatchObject({ added: 0, changed: 0, same: 1, keptCount: 2 });
    expect(report.kept.map(({ field, ours, theirs }) => [field, ours, theirs]).sort()).toEqual([
      ['mainIn', 'cleared', '6'],
      ['status', 'in service', 'out of service'],
    ]);
    const [kept] = await everyHydrant();
    expect(kept).toMatchObject({ status: 'in service' });
    expect(kept).not.toHaveProperty('mainIn');
  });

  it('fills in what nobody has entered or cleared', async () => {
    await bringText('id,name,lon,lat\n1,H-1,11.1,49.1\n', 'hydrants');
    const report = await bringText(
      'id,name,lon,lat,main size (in),status\n1,H-1,11.1,49.1,6,OOS\n',
      'hydrants',
    );
    expect(report).toMatchObject({ changed: 1, keptCount: 0 });
    expect((await everyHydrant())[0]).toMatchObject({ mainIn: 6, status: 'out of service' });
  });

  it('knows rows without ids by their name and place', async () => {
    const list = 'name,lon,lat,status\nA,11.1,49.1,active\nB,11.2,49.2,OOS\n';
    expect((await bringText(list, 'hydrants')).added).toBe(2);
    const report = await bringText(list.replace('active', 'out of service'), 'hydrants');
    expect(report).toMatchObject({ added: 0, changed: 1, same: 1 });
  });
});

describe('an import', () => {
  it('counts and writes nothing in a dry run', async () => {
    const report = await bring(data('hydrants.geojson'), 'hydrants', undefined, { dryRun: true });
    expect(report).toMatchObject({ dryRun: true, added: 479 });
    expect(await store.count('hydrants')).toBe(0);
  });

  it('takes formulas as the text that they are', async () => {
    await bringText('id,name,lon,lat\n1,=HYPERLINK("x"),11.1,49.1\n', 'hydrants');
    expect((await everyHydrant())[0]?.name).toBe('=HYPERLINK("x")');
  });

  it('refuses a row with a NUL character and takes the others', async () => {
    const report = await bringText(
      `id,name,lon,lat\n1,A\0B,11.1,49.1\n2,C,11.2,49.2\n${'3,D,11.3,49.3\n'.repeat(1)}`,
      'hydrants',
    );
    expect(report).toMatchObject({ added: 2, refusedCount: 1 });
  });

  it('never crashes on what stands in a table, and loses no row', async () => {
    const cell = fc.oneof(
      fc.constantFrom(
        '',
        '1',
        '11.1',
        '49.2',
        '6"',
        'six',
        'DN 100',
        '2024-01-02',
        '=1',
        '\0',
        '"',
        'x'.repeat(5000),
        '1e999',
        '-9999',
        'NaN',
      ),
      fc.string({ maxLength: 20 }),
      fc.string({ unit: 'binary', maxLength: 10 }),
    );
    const kinds = fc.constantFrom<ImportKind>(
      'hydrants',
      'flow-tests',
      'buildings',
      'streets',
      'rigs',
      'stations',
      'water-sources',
    );
    const heads = 'id,name,longitude,latitude,main size,static,residual,date,hydrant,status,kind';
    await fc.assert(
      fc.asyncProperty(
        kinds,
        fc.array(fc.array(cell, { minLength: 9, maxLength: 12 }), { minLength: 1, maxLength: 6 }),
        async (kind, rows) => {
          const text = [
            heads,
            ...rows.map((row) => row.map((one) => `"${one.replaceAll('"', '""')}"`).join(',')),
          ].join('\n');
          const path = join(folder, 'fuzz.csv');
          await writeFile(path, `${text}\n`);
          const source = await readSource(path).catch(() => undefined);
          if (!source) return;
          const report = await runImport(store, source, guessMapping(kind, source));
          const { added, changed, same, skipped, refusedCount } = report;
          expect(added + changed + same + skipped + refusedCount).toBe(source.total);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('what is taken and should be looked at', () => {
  it('is a test that plans cannot use, with why', async () => {
    await bringText('id,name,lat,lon\n1,H-1,42.3,-71.1\n2,H-2,42.31,-71.1\n', 'hydrants');
    const report = await bringText(
      'Hydrant No,Test Date,Static,Residual,Pitot 1,Outlet 1\n' +
        'H-1,2026-05-01,60,70,20,2.5\nH-2,2026-05-02,62,44,,\nH-2,2026-05-03,62,44,18,2.5\n' +
        'H-1,2090-05-06,60,40,20,2.5\n',
      'flow-tests',
    );
    expect(report).toMatchObject({ added: 3, refusedCount: 1, notedCount: 2 });
    expect(report.noted.map(({ record, what }) => [record, what])).toEqual([
      ['H-1, 2026-05-01', 'cannot be used'],
      ['H-2, 2026-05-02', 'cannot be used'],
    ]);
    expect(report.noted[0]!.text).toContain('above static');
    expect(report.refused[0]).toMatchObject({ field: 'testedOn', value: '2090-05-06' });
    expect(report.refused[0]!.reason).toContain('up to');
  });

  it('is a size that says nothing, kept in the note, and the same again', async () => {
    const list =
      'id,name,lat,lon,Main size,Note\n1,H-1,42.3,-71.1,fixme,by the gate\n2,H-2,42.31,-71.1,8 in,\n';
    const report = await bringText(list, 'hydrants');
    expect(report.noted).toMatchObject([{ record: 'H-1', what: 'kept in the note' }]);
    const [first] = await everyHydrant();
    expect(first?.note).toBe('by the gate; Main size: fixme');
    expect(first?.mainIn).toBeUndefined();
    expect(await bringText(list, 'hydrants')).toMatchObject({ same: 2, changed: 0 });
  });

  it('is what kind skipped rows are of', async () => {
    const report = await bring(data('water_and_stations.geojson'), 'stations', undefined, {
      dryRun: true,
    });
    // Counted in the file by hand: natural=water 55, rivers 4, streams 35, banks 10, a canal, ditches
    // 19, covered reservoirs 8, water towers 2. Drains, weirs and fords are none of these kinds.
    expect(report.otherKinds).toEqual([
      { kind: 'water-sources', count: 134 },
      { kind: 'buildings', count: 2 },
    ]);
  });

  it('is told without a word of drawings where a list has no place at all', async () => {
    const report = await bringText('Hydrant No,Static\nH-1,60\n', 'hydrants');
    expect(report.refused[0]).toMatchObject({ code: 'no place' });
    expect(report.refused[0]!.remedy).toContain('choose that kind');
  });
});
