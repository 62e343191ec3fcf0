/** What a file of records does as a file: who may open it, and several processes at once. */
import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore, StoreOpenError } from '@plugside/records';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { collect, hydrant, refusal } from './acceptance/trial.ts';
import { buildWriter } from './crash/build-writer.ts';

const folder = mkdtempSync(join(tmpdir(), 'plugside-file-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let files = 0;
const freshFile = () => {
  files += 1;
  return join(folder, `${files}.db`);
};

describe('opening a file of records', () => {
  it('makes it where it is not there, and puts each commit on the disk before it is acknowledged', async () => {
    const file = freshFile();
    const store = await openStore({ file });
    await store.create('hydrants', hydrant('H-1'));
    const database = new Database(file, { readonly: true });
    expect(database.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(database.prepare('select name from hydrants').all()).toEqual([{ name: 'H-1' }]);
    database.close();
    await store.close();
    expect(existsSync(`${file}-wal`)).toBe(false);
  });

  const refused = async (file: string): Promise<string> => {
    const error = await refusal(openStore({ file }));
    expect(error).toBeInstanceOf(StoreOpenError);
    return (error as Error).message;
  };

  it('is refused for a folder, and where there is no folder', async () => {
    mkdirSync(join(folder, 'here'));
    expect(await refused(join(folder, 'here'))).toMatch(/here is a folder, .*here\/district\.db/);
    expect(await refused(join(folder, 'there', 'a.db'))).toMatch(/no folder .*there/);
    expect(existsSync(join(folder, 'there'))).toBe(false);
  });

  it('is refused for what is no database, and leaves it alone', async () => {
    const file = freshFile();
    const text = 'name,longitude,latitude\n'.repeat(100);
    writeFileSync(file, text);
    expect(await refused(file)).toMatch(/no SQLite database/);
    expect(readFileSync(file, 'utf8')).toBe(text);
  });

  it("is refused for another program's database, and leaves it alone", async () => {
    const file = freshFile();
    const other = new Database(file);
    other.exec('create table hydrants (x integer)');
    other.close();
    const before = readFileSync(file);
    expect(await refused(file)).toMatch(/another program's database/);
    expect(readFileSync(file)).toEqual(before);
  });

  it('is refused for a damaged one', async () => {
    const file = freshFile();
    const store = await openStore({ file });
    await store.merge(
      'hydrants',
      Array.from({ length: 500 }, (_, n) => hydrant(`H-${n}`)),
    );
    await store.close();
    const bytes = readFileSync(file);
    // The first page holds where every table lies.
    bytes.fill(0xff, 100, 4096);
    writeFileSync(file, bytes);
    expect(await refused(file)).toMatch(/damaged|malformed/);
  });

  it.skipIf(process.getuid?.() === 0)('is refused for one that may not be read', async () => {
    const file = freshFile();
    await (await openStore({ file })).close();
    chmodSync(file, 0);
    expect(await refused(file)).toMatch(/may not open it/);
  });
});

describe('two processes on one file', () => {
  let built: string;
  beforeAll(async () => {
    built = await buildWriter();
  }, 60_000);
  afterAll(() => rmSync(built, { recursive: true, force: true }));

  it('each wait for the other, and every write of both is there', async () => {
    const file = freshFile();
    const store = await openStore({ file });
    const child = spawn(
      process.execPath,
      [join(built, 'writer.js'), JSON.stringify({ file }), 'other'],
      {
        stdio: ['ignore', 'pipe', 'inherit'],
      },
    );
    let said = '';
    const saysEnough = new Promise<void>((resolve) => {
      child.stdout.on('data', (data) => {
        said += data;
        if (said.split('"create"').length > 25) resolve();
      });
    });
    const ours: string[] = [];
    let enough = false;
    void saysEnough.then(() => {
      enough = true;
    });
    while (!enough || ours.length < 100) {
      const { name } = await store.create('stations', hydrant(`S-${ours.length}`));
      ours.push(name);
    }
    child.kill('SIGKILL');
    await new Promise((resolve) => child.once('close', resolve));
    const theirs = said
      .split('\n')
      .slice(0, -1)
      .map((line) => JSON.parse(line));
    const made = theirs.filter(({ did }) => did === 'create').map(({ name }) => name);
    const stations = (await collect(store.all('stations'))).map(({ name }) => name);
    const hydrants = (await collect(store.all('hydrants'))).map(({ name }) => name);
    expect(stations).toEqual(ours);
    expect(hydrants).toEqual(expect.arrayContaining(made));
    await store.close();
  }, 120_000);

  it('a long import in one keeps the other waiting with its write and not with its reading', async () => {
    const file = freshFile();
    const [one, two] = [await openStore({ file }), await openStore({ file })];
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    async function* slow() {
      yield* Array.from({ length: 600 }, (_, n) => hydrant(`H-${n}`));
      await held;
    }
    const importing = one.merge('hydrants', slow());
    await new Promise((resolve) => setTimeout(resolve, 50));
    let wrote = false;
    const writing = two.create('stations', hydrant('S-1')).then(() => {
      wrote = true;
    });
    expect(await two.count('hydrants')).toBe(0);
    expect(await one.count('hydrants')).toBe(0);
    expect(wrote).toBe(false);
    release();
    expect(await importing).toMatchObject({ added: 600 });
    await writing;
    expect(await one.count('stations')).toBe(1);
    for (const store of [one, two]) await store.close();
  }, 60_000);
});
