/** Lists as other offices hand them out (invented), from the file to the records. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openStore, type RecordStore } from '../store/index.ts';
import { guessMapping } from './mapping/guess-mapping.ts';
import type { ImportKind } from './mapping/mapping.ts';
import { type RunImportOptions, runImport } from './run-import.ts';
import { readSource } from './source/read-source.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let folder = '';
let store: RecordStore;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-towns-'));
  store = await openStore({ memory: true });
});
afterEach(async () => {
  await store.close();
  await rm(folder, { recursive: true, force: true });
});

async function bring(
  kind: ImportKind,
  text: string,
  name = 'list.csv',
  options: RunImportOptions = {},
) {
  const path = join(folder, name);
  await writeFile(path, text);
  const source = await readSource(path);
  return runImport(store, source, guessMapping(kind, source), options);
}

const hydrants = async () => (await store.list('hydrants', { limit: 100 })).records;
const statuses = async () => (await hydrants()).map(({ status }) => status);

describe('hydrants in and out of service', () => {
  it.each(['Out of Service', 'OOS', 'Inoperable', 'ABANDONED'])(
    'by yes and no under "%s", which asks the contrary',
    async (head) => {
      await bring(
        'hydrants',
        `Hydrant,Lat,Lon,${head}\nA,38.91,-77,N\nB,38.92,-77,Y\nC,38.93,-77,\n`,
      );
      expect(await statuses()).toEqual(['in service', 'out of service', 'in service']);
    },
  );

  it('by words, also of hydrants that are not there yet or no more', async () => {
    const said = ['In Service', 'Active - painted', 'Out of Service - stem', 'Proposed', 'Removed'];
    const rows = said.map((one, at) => `H-${at},38.9${at},-77,${one}`);
    await bring('hydrants', `Hydrant,Lat,Lon,Status\n${rows.join('\n')}\n`);
    expect(await statuses()).toEqual([
      'in service',
      'in service',
      'out of service',
      'out of service',
      'out of service',
    ]);
  });

  it('by "in" and "out", where the head asks both', async () => {
    await bring('hydrants', 'Hydrant,Lat,Lon,In/Out of Service\nA,38.91,-77,In\nB,38.92,-77,Out\n');
    expect(await statuses()).toEqual(['in service', 'out of service']);
  });

  it('and rigs by "OOS" too', async () => {
    await bring('rigs', 'Unit,Type,Pump GPM,OOS\nE1,Engine,1500,N\nE2,Engine,1500,Y\n');
    const { records } = await store.list('rigs', {});
    expect(records.map(({ inService }) => inService)).toEqual([true, false]);
  });
});

describe('a list that comes again', () => {
  const list = (...ids: string[]) =>
    `FACILITYID,Lat,Lon,Main\n${ids.map((id, at) => `${id},38.9${at},-77,8`).join('\n')}\n`;

  it('is the same with its numbers as decimals and its UUIDs in other letters', async () => {
    // RFC 4122, section 3: a UUID is read in any case.
    await bring('hydrants', list('12', '007', '{AB12CD34-0000-4000-8000-0000000000A1}'));
    const again = await bring(
      'hydrants',
      list('12.0', '007', 'ab12cd34-0000-4000-8000-0000000000a1'),
    );
    expect(again).toMatchObject({ added: 0, changed: 0, same: 3 });
    expect((await hydrants()).map(({ name }) => name).slice(0, 2)).toEqual(['12', '007']);
  });

  it('finds a record whose key was kept as it was written', async () => {
    await bring('hydrants', list('H-1'));
    const [one] = await hydrants();
    await store.change('hydrants', one!.id, one!.version, {
      externalId: '{AB12CD34-0000-4000-8000-0000000000A1}',
    });
    const again = await bring('hydrants', list('{AB12CD34-0000-4000-8000-0000000000A1}'));
    expect(again.added).toBe(0);
    expect(await store.count('hydrants')).toBe(1);
  });

  it('changes a hydrant that is known by its number alone and was measured anew', async () => {
    await bring('hydrants', 'Hydrant,Lat,Lon\n007,38.91,-77.01\n008,38.92,-77.02\n');
    const again = await bring(
      'hydrants',
      'Hydrant,Lat,Lon\n007,38.91001,-77.01001\n008,38.92,-77.02\n',
    );
    expect(again).toMatchObject({ added: 0, changed: 1, same: 1 });
  });

  it('under another name is told, with the list that it may be', async () => {
    await bring('hydrants', list('H-1', 'H-2'), 'hydrants-2023.csv');
    const again = await bring('hydrants', list('h 1', 'H-2', 'H-9'), 'hydrants-2024.csv', {
      dryRun: true,
    });
    expect(again.added).toBe(3);
    const notice = again.notices.join(' ');
    expect(notice).toContain('2 added rows have the name and the place');
    expect(notice).toContain('"hydrants-2023"');
  });

  it('says nothing of hydrants of one name in two towns', async () => {
    await bring('hydrants', 'Hydrant,Lat,Lon\n1,38.91,-77.01\n', 'one.csv');
    const other = await bring('hydrants', 'Hydrant,Lat,Lon\n1,39.91,-77.01\n', 'two.csv');
    expect(other).toMatchObject({ added: 1, notices: [] });
  });

  it('has its tests find hydrants whose number a spreadsheet made a decimal', async () => {
    await bring('hydrants', 'Hydrant,Lat,Lon\n12,38.91,-77.01\n');
    const tests = await bring(
      'flow-tests',
      'Hydrant,Date,Static psi,Residual psi,Flow gpm\n12.0,2024-03-31,62,44,1060\n',
    );
    expect(tests).toMatchObject({ added: 1, refusedCount: 0 });
  });
});

describe('values that cannot be what they are read as', () => {
  it('are refused with what they come to, as they stand, and can be mended', async () => {
    const refusedFile = join(folder, 'refused.csv');
    const report = await bring(
      'hydrants',
      'Hydrant,Lat,Lon,Main Size\n1,38.91,-77,8\n2,38.92,-77,0.2\n3,38.93,-77,200\n4,38.94,-77,6/8\n',
      'list.csv',
      { refusedFile },
    );
    expect(report.added).toBe(1);
    expect(report.refused.map(({ value, reason }) => [value, reason])).toEqual([
      ['0.2', expect.stringContaining('It comes to 0.2 in')],
      ['200', expect.stringContaining('It comes to 200 in; at most 120 in')],
      ['6/8', expect.stringContaining('It comes to 0.75 in')],
    ]);
    const mended = (await readFile(refusedFile, 'utf8'))
      .replace(',0.2,', ',0.2 m,')
      .replace(',200,', ',200 mm,')
      .replace(',6/8,', ',6,');
    expect(await bring('hydrants', mended, 'refused-mended.csv')).toMatchObject({ added: 3 });
    // 200 mm is 7.874 in (NIST SP 811, appendix B.8: an inch is 25.4 mm).
    expect((await hydrants()).map(({ mainIn }) => mainIn?.toFixed(3))).toEqual([
      '8.000',
      '7.874',
      '7.874',
      '6.000',
    ]);
  });

  it('a pressure is told as it stands in the file, not as it was converted', async () => {
    await bring('hydrants', 'Hydrant,Lat,Lon\n12,38.91,-77.01\n');
    const { refused } = await bring(
      'flow-tests',
      'Hydrant,Date,Static (kPa),Residual (kPa),Flow (L/s)\n12,2024-03-31,427000,303,66\n',
    );
    expect(refused[0]).toMatchObject({ column: 'Static (kPa)', value: '427000' });
    expect(refused[0]!.reason).toMatch(/psi; at most 500 psi is allowed/);
  });

  it('a key with a NUL character is refused, and the other rows come in', async () => {
    const report = await bring('rigs', 'ID,Unit,Type\n\0,E1,Engine\n2,E2,Engine\n3,E3,Engine\n');
    expect(report).toMatchObject({ added: 2, refusedCount: 1 });
    expect(report.refused[0]).toMatchObject({ column: 'ID', remedy: 'Take it out.' });
  });

  it('a line of totals is no rig', async () => {
    const report = await bring('rigs', 'Unit,Type,Pump GPM\nE1,Engine,1500\nTotal,,1500\n');
    expect(report).toMatchObject({ added: 1, refusedCount: 1 });
    expect(report.refused[0]!.reason).toContain('totals');
  });

  it('half storeys count as one more, and are told and kept', async () => {
    const report = await bring(
      'buildings',
      'ID,Address,Stories,Lat,Lon\n1,1 A St,2.5,38.91,-77\n2,2 A St,3+1,38.92,-77\n3,3 A St,0,38.93,-77\n4,4 A St,2.0,38.94,-77\n',
    );
    expect(report).toMatchObject({ added: 4, refusedCount: 0, notedCount: 2 });
    const { records } = await store.list('buildings', {});
    expect(records.map(({ storeys, note }) => [storeys, note])).toEqual([
      [3, 'Stories: 2.5'],
      [4, 'Stories: 3+1'],
      [undefined, undefined],
      [2, undefined],
    ]);
  });
});

describe('the file of refused rows', () => {
  it('is read as the whole list was: units by its sizes, months by its days, words by hand', async () => {
    await bring('hydrants', 'Hydrant,Lat,Lon\n1,38.91,-77\n2,38.92,-77\n3,38.93,-77\n');
    const path = join(folder, 'tests.csv');
    const rows = ['1,3/31/2024,4.3,3.1,66', '2,4/1/2024,4.4,3.2,60', '9,4/2/2024,15,14,61'];
    await writeFile(path, `Hydrant,Date,Static,Residual,Flow (L/s)\n${rows.join('\n')}\n`);
    const source = await readSource(path);
    const refusedFile = join(folder, 'refused.csv');
    await runImport(store, source, guessMapping('flow-tests', source), { refusedFile });
    const mended = (await readFile(refusedFile, 'utf8')).replace('\r\n9,', '\r\n3,');
    const report = await bring('flow-tests', mended, 'mended.csv');
    expect(report).toMatchObject({ added: 1, refusedCount: 0, sourceName: 'tests' });
    const { records } = await store.list('flow-tests', {});
    const last = records.find(({ testedOn }) => testedOn === '2024-04-02');
    // A bar is 100 kPa and a psi 6.894757 kPa (NIST SP 811, appendix B.8): 15 bar, no 15 psi.
    expect(last?.staticPsi).toBeCloseTo(1500 / 6.894757, 4);
  });

  it('whose note of how it was read is damaged is read as any list', async () => {
    const head = 'Hydrant,Lat,Lon,Main Size,refused_mapping';
    const notes = ['{', '{"kind":"hydrants","fields":7}', '"x"', '{"kind":"rigs","fields":[]}'];
    for (const [at, note] of notes.entries()) {
      const cell = `"${note.replaceAll('"', '""')}"`;
      const report = await bring('hydrants', `${head}\nH-${at},38.91,-77,8,${cell}\n`, `${at}.csv`);
      expect(report).toMatchObject({ added: 1, refusedCount: 0 });
    }
    expect((await hydrants()).map(({ mainIn }) => mainIn)).toEqual([8, 8, 8, 8]);
  });
});
