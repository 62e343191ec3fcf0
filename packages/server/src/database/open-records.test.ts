import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore } from '@plugside/records';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readDatabaseSettings } from './database-settings.ts';
import { openRecords } from './open-records.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'plugside-open-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

async function opened(env: Record<string, string>) {
  const { store, notice } = await openRecords(readDatabaseSettings(env, folder));
  const hydrants = await store.count('hydrants');
  await store.close();
  return { hydrants, notice };
}

describe('the default database', () => {
  it('is made with the invented district, and left alone afterwards', async () => {
    const first = await opened({});
    expect(first.hydrants).toBeGreaterThan(0);
    expect(first.notice).toContain('invented');
    expect(readdirSync(join(folder, 'data'))).toEqual(['plugside.sqlite']);
    const again = await opened({});
    expect(again).toEqual({ hydrants: first.hydrants, notice: undefined });
  });

  it('is not there by half when filling it fails', async () => {
    const failing = async () => {
      throw new Error('disk full');
    };
    await expect(openRecords(readDatabaseSettings({}, folder), failing)).rejects.toThrow('full');
    expect(readdirSync(join(folder, 'data'))).toEqual([]);
    expect((await opened({})).hydrants).toBeGreaterThan(0);
  });
});

describe('a database that somebody named', () => {
  it('is made empty', async () => {
    const file = join(folder, 'ours.sqlite');
    expect(await opened({ PLUGSIDE_DB: file })).toEqual({ hydrants: 0, notice: undefined });
    expect(existsSync(file)).toBe(true);
    expect(existsSync(join(folder, 'data'))).toBe(false);
  });

  it('is filled on request where it is empty, and only there', async () => {
    const file = join(folder, 'ours.sqlite');
    const store = await openStore({ file });
    await store.create('hydrants', { name: 'Ours', longitude: -71, latitude: 42 });
    await store.close();
    const kept = await opened({ PLUGSIDE_DB: file, PLUGSIDE_DEMO: '1' });
    expect(kept).toMatchObject({ hydrants: 1, notice: expect.stringContaining('left as it is') });
    const other = join(folder, 'trial.sqlite');
    expect((await opened({ PLUGSIDE_DB: other, PLUGSIDE_DEMO: '1' })).hydrants).toBeGreaterThan(1);
  });

  it('is refused where it is another program’s file', async () => {
    const file = join(folder, 'notes.txt');
    writeFileSync(file, 'no database '.repeat(100));
    await expect(opened({ PLUGSIDE_DB: file })).rejects.toThrow('cannot be opened');
  });
});

describe('readDatabaseSettings', () => {
  it('takes a file, a server, or the default beside the program', () => {
    expect(readDatabaseSettings({}, '/p')).toMatchObject({
      target: { file: join('/p', 'data', 'plugside.sqlite') },
      isDefault: true,
    });
    expect(readDatabaseSettings({ PLUGSIDE_DB: ' /a/b.db ' }, '/p')).toEqual({
      target: { file: '/a/b.db' },
      terrainFile: '/a/b.db.terrain.tif',
      isDefault: false,
      demo: false,
    });
    expect(readDatabaseSettings({ DATABASE_URL: 'postgresql://h/d' }, '/p')).toMatchObject({
      target: { url: 'postgresql://h/d' },
      isDefault: false,
    });
  });

  it.each([
    [{ PLUGSIDE_DB: 'a', DATABASE_URL: 'postgresql://h/d' }, 'leave one of them out'],
    [{ PLUGSIDE_DEMO: 'yes' }, 'PLUGSIDE_DEMO is "yes"'],
  ])('refuses %j', (env, told) => {
    expect(() => readDatabaseSettings(env, '/p')).toThrow(told);
  });
});
