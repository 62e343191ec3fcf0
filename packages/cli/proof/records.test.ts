import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openStore } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Plugside, preparePlugside } from './run-plugside.ts';

// Each run is a process of its own, and a machine may be busy.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let plugside: Plugside;
const path = (name: string) => join(plugside.folder, name);

beforeAll(async () => {
  plugside = await preparePlugside();
  const store = await openStore({ file: path('district.db') });
  const place = { longitude: -84.1, latitude: 33.4 };
  for (const name of ['H-1', 'H-2']) await store.create('hydrants', { name, ...place });
  await store.create('stations', { name: 'Station 7', ...place });
  await store.close();
});
afterAll(() => plugside.remove());

describe('records backup and restore', () => {
  it('carry every record over, and say how many', async () => {
    const saved = plugside.run(['records', 'backup', '--db', 'district.db', '-o', 'a.zip']);
    expect(saved).toMatchObject({ status: 0, stderr: '' });
    expect(saved.stdout).toMatch(/^Wrote 3 records of district\.db to a\.zip\.$/m);
    expect(saved.stdout).toMatch(/^hydrants +2$/m);
    const back = plugside.run(['records', 'restore', 'a.zip', '--db', 'b.db']);
    expect(back).toMatchObject({ status: 0, stderr: '' });
    expect(back.stdout).toMatch(/^Restored 3 records .* into b\.db\.$/m);
    const store = await openStore({ file: path('b.db') });
    const { records } = await store.list('hydrants');
    await store.close();
    expect(records.map(({ name }) => name)).toEqual(['H-1', 'H-2']);
  });

  it('answer as JSON', () => {
    const args = ['records', 'backup', '--db', 'district.db', '-o', 'json.zip'];
    const { plugside: about, answer } = plugside.json(args);
    expect(about.command).toBe('records backup');
    expect(answer.manifest.files).toContainEqual(
      expect.objectContaining({ kind: 'hydrants', records: 2 }),
    );
  });

  it.each([
    ['no database named', ['backup', '-o', 'x.zip'], /No records are named\. .*--db FILE/],
    ['no archive named', ['backup', '--db', 'district.db'], /--output/],
    ['no such file', ['backup', '--db', 'nosuch.db', '-o', 'x.zip'], /no file nosuch\.db/],
    ['a folder', ['backup', '--db', 'folder', '-o', 'x.zip'], /folder is a folder/],
    ['no database', ['backup', '--db', 'text.db', '-o', 'x.zip'], /no SQLite database/],
    ['an archive that is there', ['backup', '--db', 'district.db', '-o', 'mine.zip'], /--force/],
    ['no such archive', ['restore', 'nosuch.zip', '--db', 'x.db'], /nosuch\.zip cannot be read/],
    ['no archive', ['restore', 'text.db', '--db', 'x.db'], /no zip file/],
    ['a database in use', ['restore', 'kept.zip', '--db', 'district.db'], /holds records already/],
  ])('%s is refused with exit code 2, and nothing is written', (_, args, words) => {
    mkdirSync(path('folder'), { recursive: true });
    writeFileSync(path('text.db'), 'name,longitude,latitude\n'.repeat(40));
    writeFileSync(path('mine.zip'), 'mine');
    plugside.run(['records', 'backup', '--db', 'district.db', '-o', 'kept.zip', '--force']);
    const { status, stdout, stderr } = plugside.run(['records', ...args]);
    expect(stderr).toMatch(words);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    for (const name of ['x.zip', 'x.db', 'nosuch.db']) expect(existsSync(path(name))).toBe(false);
    expect(readFileSync(path('mine.zip'), 'utf8')).toBe('mine');
  });

  it('are in the help, each with its own', () => {
    expect(plugside.run(['--help']).stdout).toMatch(/^ {2}records /m);
    for (const name of ['import', 'export', 'backup', 'restore']) {
      const { status, stdout } = plugside.run(['records', name, '--help']);
      expect(status).toBe(0);
      expect(stdout).toContain(`$ plugside records ${name} `);
    }
  });
});

describe('records import and export', () => {
  const list =
    'id,name,lon,lat,Static\n1,H-11,-84.11,33.41,410\n2,H-12,-84.12,33.42,420\n3,H-13,,,430\n';

  it('bring a list in, tell what was refused, and double nothing', () => {
    writeFileSync(path('list.csv'), list);
    const args = ['records', 'import', 'list.csv', '--kind', 'hydrants', '--db', 'lists.db'];
    const dry = plugside.run([...args, '--dry-run']);
    expect(dry).toMatchObject({ status: 0, stderr: '' });
    expect(dry.stdout).toMatch(/^Nothing was written\. .*2 added/m);
    expect(existsSync(path('lists.db'))).toBe(false);

    const done = plugside.run([...args, '--refused', 'mend.csv']);
    expect(done.stdout).toMatch(/2 added, 0 changed, 0 the same, 1\s+refused/);
    expect(done.stdout).toContain('Row 4, lon: ');
    expect(readFileSync(path('mend.csv'), 'utf8')).toContain('3,H-13,,,430');
    const { answer } = plugside.json(args);
    expect(answer.report).toMatchObject({ added: 0, changed: 0, same: 2, refusedCount: 1 });
  });

  it('take fields and units as they are told to', async () => {
    const tests = 'hydrant,on,S,R\nH-1,03/04/2024,410,280\n';
    writeFileSync(path('tests.csv'), tests);
    const { status, stderr } = plugside.run([
      ...['records', 'import', 'tests.csv', '--kind', 'flow-tests', '--db', 'district.db'],
      ...['--map', 'testedOn=on', '--map', 'staticPsi=S@kPa', '--map', 'residualPsi=R@kPa'],
      ...['--dates', 'day-first'],
    ]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const store = await openStore({ file: path('district.db') });
    const { records } = await store.list('flow-tests');
    await store.close();
    expect(records[0]?.testedOn).toBe('2024-04-03');
    // A psi is 6.894757 kPa (NIST SP 811, appendix B.8).
    expect(records[0]?.staticPsi).toBeCloseTo(410 / 6.894757, 6);
  });

  it("take a list's own words as they are told to, and say where its rows lie", async () => {
    writeFileSync(path('here.csv'), 'hydrant,lat,lon\nH-1,38.91,-77.01\n');
    const rows = ['C-1,38.91,77.01,A', 'C-2,38.92,77.02,R', 'C-3,38.93,77.03,A'];
    writeFileSync(path('codes.csv'), `hydrant,lat,lon,status\n${rows.join('\n')}\n`);
    const into = ['--kind', 'hydrants', '--db', 'words.db'];
    plugside.run(['records', 'import', 'here.csv', ...into]);
    const { status, stdout } = plugside.run([
      ...['records', 'import', 'codes.csv', ...into, '--map', 'status=status'],
      ...['--word', 'status=A=in service', '--word', 'status=R=out of service'],
    ]);
    expect(status).toBe(0);
    // The two places are 154.02° of longitude apart: some 11,000 km over the north at 39°.
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/lie about 1[01],\d{3} km from what is on record/);
    expect(stdout.replace(/\s+/g, ' ')).toContain('other sign of their longitude');
    const store = await openStore({ file: path('words.db') });
    const { records } = await store.list('hydrants');
    await store.close();
    expect(records.map((one) => one.status)).toEqual([
      'in service',
      'in service',
      'out of service',
      'in service',
    ]);
  });

  it('write a table that comes back as it was', () => {
    const table = plugside.run(['records', 'export', '--kind', 'stations', '--db', 'district.db']);
    expect(table.stdout).toContain('Station 7');
    writeFileSync(path('stations.csv'), table.stdout);
    const args = ['records', 'import', 'stations.csv', '--kind', 'stations', '--db', 'district.db'];
    const { answer } = plugside.json(args);
    expect(answer.report).toMatchObject({ added: 0, changed: 0, same: 1, refusedCount: 0 });
    const all = plugside.run(['records', 'export', '--db', 'district.db', '-o', 'everything.zip']);
    expect(all.stdout).toMatch(/^Wrote everything\.zip\. It holds /);
  });

  it.each([
    [
      'no such meaning',
      ['import', 'list.csv', '--kind', 'hydrants', '--db', 'n.db', '--word', 'status=A=fine'],
      /--word status=A=fine/,
    ],
    [
      'no such file',
      ['import', 'nosuch.csv', '--kind', 'hydrants', '--db', 'n.db'],
      /no such file/,
    ],
    ['no kind', ['import', 'list.csv', '--db', 'n.db'], /--kind/],
    [
      'no such column',
      ['import', 'list.csv', '--kind', 'hydrants', '--db', 'n.db', '--map', 'name=x'],
      /no column "x"/,
    ],
    [
      'no such field',
      ['import', 'list.csv', '--kind', 'hydrants', '--db', 'n.db', '--map', 'x=name'],
      /no field "x"/,
    ],
    [
      'no such unit',
      [
        'import',
        'list.csv',
        '--kind',
        'hydrants',
        '--db',
        'n.db',
        '--map',
        'mainIn=Static@furlong',
      ],
      /furlong/,
    ],
    [
      'no such coordinates',
      ['import', 'list.csv', '--kind', 'hydrants', '--db', 'n.db', '--crs', '99999'],
      /EPSG:99999/,
    ],
    ['everything to the screen', ['export', '--db', 'district.db'], /-o FILE/],
    ['nothing to export', ['export', '--db', 'n.db', '-o', 'n.zip'], /no file n\.db/],
  ])('%s is refused with exit code 2, and nothing is written', (_, args, words) => {
    writeFileSync(path('list.csv'), list);
    const { status, stdout, stderr } = plugside.run(['records', ...args]);
    expect(stderr).toMatch(words);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    for (const name of ['n.zip', 'n.db']) expect(existsSync(path(name))).toBe(false);
  });
});
