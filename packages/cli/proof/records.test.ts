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
    for (const name of ['backup', 'restore']) {
      const { status, stdout } = plugside.run(['records', name, '--help']);
      expect(status).toBe(0);
      expect(stdout).toContain(`$ plugside records ${name} `);
    }
  });
});
