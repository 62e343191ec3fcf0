import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  ArchiveError,
  backUp,
  type Manifest,
  NotEmptyError,
  openStore,
  type RecordStore,
  restore,
  type StoreTarget,
} from '@plugside/records';
import { kinds } from '@plugside/records/model';
import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bytesOf, terrainBytes } from './acceptance/terrain.ts';
import { collect, hydrant, refusal } from './acceptance/trial.ts';
import { fillExamples } from './fill-examples.ts';
import { findPostgresql, type PostgresqlServer, startPostgresql } from './postgresql-server.ts';

const folder = mkdtempSync(join(tmpdir(), 'plugside-backup-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let files = 0;
const freshFile = (ending: string) => {
  files += 1;
  return join(folder, `${files}.${ending}`);
};
const sqlite = async (): Promise<StoreTarget> => ({ file: freshFile('db') });

/** Every kind, many of one, awkward text, and versions above 1. */
async function fill(target: StoreTarget): Promise<void> {
  const store = await openStore(target);
  await fillExamples(store);
  const rows = Array.from({ length: 1203 }, (_, n) => ({
    ...hydrant(`H-${n}`),
    longitude: -84 + n / 3e5,
    externalSource: 'list',
    externalId: String(n),
  }));
  await store.merge('hydrants', rows);
  await store.merge('hydrants', rows.map((row) => ({ ...row, mainIn: 8 })).slice(0, 40));
  const odd = '\u2028\u2029\r\n\t"\\ 🚒 \ufeff';
  await store.create('buildings', { ...hydrant('Odd'), note: odd, occupancy: '\ufeffx' });
  await store.close();
}

async function everything(store: RecordStore) {
  return Promise.all(kinds.map((kind) => collect(store.all(kind))));
}

async function read(target: StoreTarget) {
  const store = await openStore(target);
  const all = await everything(store);
  await store.close();
  return all;
}

async function backUpFrom(target: StoreTarget): Promise<string> {
  const file = freshFile('zip');
  const store = await openStore(target);
  await backUp(store, file);
  await store.close();
  return file;
}

describe('a backup', () => {
  it('comes back record for record, and work goes on from there', async () => {
    const from = await sqlite();
    await fill(from);
    const file = await backUpFrom(from);
    const to = await sqlite();
    const manifest = await restore(file, to);
    expect(await read(to)).toStrictEqual(await read(from));
    expect(manifest.files.map(({ kind }) => kind)).toEqual([...kinds]);
    expect(manifest.files.find(({ kind }) => kind === 'hydrants')?.records).toBe(1204);
    const store = await openStore(to);
    const more = await store.create('hydrants', hydrant('after'));
    expect(more.version).toBe(1);
    await store.close();
  });

  it.skipIf(!has('python3') || !has('sha256sum'))(
    'is unpacked and checked by other programs',
    async () => {
      const from = await sqlite();
      await fill(from);
      const out = join(folder, 'unpacked');
      execFileSync('python3', ['-m', 'zipfile', '-e', await backUpFrom(from), out]);
      execFileSync('sha256sum', ['-c', 'manifest.json.sha256'], { cwd: out, stdio: 'ignore' });
      const { files } = JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8')) as Manifest;
      for (const { name, sha256, records } of files) {
        const text = readFileSync(join(out, name), 'utf8');
        expect(sha256Of(text)).toBe(sha256);
        expect(text.split('\n').filter(Boolean)).toHaveLength(records);
      }
    },
  );

  it('brings its terrain back, and refuses one that is damaged or a database that has its own', async () => {
    const from = await sqlite();
    const store = await openStore(from);
    const put = await store.putTerrainFile({ name: 'hills.tif', unit: 'm' }, [terrainBytes]);
    await store.close();
    const file = await backUpFrom(from);
    const to = await sqlite();
    const manifest = await restore(file, to);
    expect(manifest).toMatchObject({ format: 2, terrain: { title: 'hills.tif' } });
    const restored = await openStore(to);
    expect(await restored.terrainFile()).toEqual(put);
    expect((await bytesOf(restored)).equals(terrainBytes)).toBe(true);
    await restored.close();
    expect(await refusal(restore(file, to))).toBeInstanceOf(NotEmptyError);

    const entries = unzipSync(readFileSync(file));
    expect(entries['terrain.tif']).toHaveLength(terrainBytes.length);
    entries['terrain.tif']![7]! ^= 1;
    const spoilt = freshFile('zip');
    writeFileSync(spoilt, zipSync(entries));
    const error = await refusal(restore(spoilt, await sqlite()));
    expect(error).toBeInstanceOf(ArchiveError);
    expect((error as Error).message).toContain('terrain.tif');
  });

  it('brings drills back with their logs, and refuses a database that has its own', async () => {
    const from = await sqlite();
    const store = await openStore(from);
    const scene = { title: 'Boost', parts: [0.1, null, '\u2028'] };
    for (const code of ['KTMRB', 'BCDFG', 'XYZWP']) {
      const run = await store.drillRuns.add({ code, title: code, seed: 1, scene, seats: {} });
      const log = [0, 1].map((seq) => ({ seq, entry: { seq }, sender: 'x', clientSeq: seq + 1 }));
      const ended = { at: new Date().toISOString(), result: [{ met: true }] };
      const { id, changedAt: since } = run!;
      const changedAt = new Date(Date.parse(since) + 1).toISOString();
      const change = { id, since, changedAt, tick: 7, log, keyframe: { tick: 7 } };
      await store.drillRuns.write([code === 'KTMRB' ? change : { ...change, ended }]);
    }
    const kept = await collect(store.drillRuns.all());
    expect(kept).toHaveLength(3);
    await store.close();
    const file = await backUpFrom(from);
    const to = await sqlite();
    expect(await restore(file, to)).toMatchObject({ format: 3, drills: { runs: 3 } });
    const restored = await openStore(to);
    expect(await collect(restored.drillRuns.all())).toEqual(kept);
    expect(await restored.drillRuns.runningAs('KTMRB')).toMatchObject({ tick: 7 });
    await restored.close();
    expect(await refusal(restore(file, to))).toBeInstanceOf(NotEmptyError);

    const entries = unzipSync(readFileSync(file));
    entries['drills.jsonl']![9]! ^= 1;
    const spoilt = freshFile('zip');
    writeFileSync(spoilt, zipSync(entries));
    expect(await refusal(restore(spoilt, await sqlite()))).toBeInstanceOf(ArchiveError);
  });

  it('without terrain is of the format that there was before, and read as it', async () => {
    const from = await sqlite();
    await fill(from);
    const file = await backUpFrom(from);
    const text = Buffer.from(unzipSync(readFileSync(file))['manifest.json']!).toString('utf8');
    expect(Object.keys(JSON.parse(text))).toEqual(['plugside', 'format', 'madeAt', 'files']);
    expect(JSON.parse(text)).toMatchObject({ format: 1 });
    const to = await sqlite();
    await restore(file, to);
    const store = await openStore(to);
    expect(await store.terrainFile()).toBeUndefined();
    expect(await store.count('hydrants')).toBe(1204);
    await store.close();
  });

  it('of nothing comes back as nothing', async () => {
    const file = await backUpFrom(await sqlite());
    const to = await sqlite();
    await restore(file, to);
    expect((await read(to)).flat()).toEqual([]);
  });

  it('holds what was there at one moment, and keeps no writer waiting', async () => {
    const target = await sqlite();
    await fill(target);
    const before = await read(target);
    const store = await openStore(target);
    const file = freshFile('zip');
    const [, ...made] = await Promise.all([
      backUp(store, file),
      ...Array.from({ length: 20 }, (_, n) => store.create('hydrants', hydrant(`late ${n}`))),
    ]);
    expect(made).toHaveLength(20);
    await store.close();
    const to = await sqlite();
    await restore(file, to);
    const after = await read(to);
    // Some of the late ones may have come before the moment; in the order of making then.
    const late = after[1]!.length - before[1]!.length;
    expect(after[1]!.slice(0, before[1]!.length)).toStrictEqual(before[1]);
    expect(after[1]!.slice(before[1]!.length)).toStrictEqual(made.slice(0, late));
  });

  it('takes its name when it is whole, and leaves nothing where it cannot be written', async () => {
    const target = await sqlite();
    const store = await openStore(target);
    await expect(backUp(store, join(folder, 'no such folder', 'a.zip'))).rejects.toThrow('ENOENT');
    await store.close();
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

describe('a restore is refused', () => {
  let whole: string;
  beforeAll(async () => {
    const target = await sqlite();
    await fill(target);
    whole = await backUpFrom(target);
  });

  const changed = (change: (files: Record<string, Uint8Array>) => void): string => {
    const entries = unzipSync(readFileSync(whole));
    change(entries);
    const file = freshFile('zip');
    writeFileSync(file, zipSync(entries));
    return file;
  };

  const refused = async (file: string): Promise<Error> => {
    const to = freshFile('db');
    const error = await refusal(restore(file, { file: to }));
    expect(error).toBeInstanceOf(ArchiveError);
    expect(existsSync(to)).toBe(false);
    return error as Error;
  };

  it('into a database that holds records, which stay as they are', async () => {
    const to = await sqlite();
    const store = await openStore(to);
    await store.create('settings', { name: 'name', value: 'Invented' });
    await store.close();
    const before = await read(to);
    expect(await refusal(restore(whole, to))).toBeInstanceOf(NotEmptyError);
    expect(await read(to)).toStrictEqual(before);
  });

  it('of an archive with a byte changed, unless it says nothing of the records', async () => {
    const bytes = readFileSync(whole);
    // A zip's own headers hold dates and marks that nobody reads.
    await fc.assert(
      fc.asyncProperty(
        fc.nat(bytes.length - 1),
        fc.integer({ min: 1, max: 255 }),
        async (at, by) => {
          const file = freshFile('zip');
          const spoilt = Buffer.from(bytes);
          spoilt[at] = spoilt[at]! ^ by;
          writeFileSync(file, spoilt);
          const to = freshFile('db');
          const outcome = await restore(file, { file: to }).catch((error: unknown) => error);
          if (outcome instanceof Error) {
            expect(outcome).toBeInstanceOf(ArchiveError);
            expect(existsSync(to)).toBe(false);
          } else {
            expect(await read({ file: to })).toStrictEqual(await restored());
          }
          rmSync(file);
        },
      ),
      { numRuns: 60 },
    );
  }, 60_000);

  let known: Awaited<ReturnType<typeof read>> | undefined;
  const restored = async () => {
    if (!known) {
      const to = await sqlite();
      await restore(whole, to);
      known = await read(to);
    }
    return known;
  };

  it('of an archive cut short', async () => {
    for (const share of [0, 0.01, 0.5, 0.99]) {
      const file = freshFile('zip');
      copyFileSync(whole, file);
      truncateSync(file, Math.floor(readFileSync(whole).length * share));
      expect((await refused(file)).message).toContain('zip');
    }
  });

  it('of an archive with a record changed, lost or doubled', async () => {
    const name = 'hydrants.jsonl';
    const lines = (entries: Record<string, Uint8Array>) =>
      Buffer.from(entries[name]!).toString('utf8').trimEnd().split('\n');
    const put = (entries: Record<string, Uint8Array>, all: string[]) => {
      entries[name] = Buffer.from(`${all.join('\n')}\n`);
    };
    const edits: ((all: string[]) => string[])[] = [
      (all) => all.map((line) => line.replace('"mainIn":8', '"mainIn":6')),
      (all) => all.slice(1),
      (all) => [...all, all[0]!],
    ];
    for (const edit of edits) {
      const file = changed((entries) => put(entries, edit(lines(entries))));
      expect((await refused(file)).message).toContain(name);
    }
  });

  it('of an archive of a newer format', async () => {
    const file = changed((entries) => {
      const text = Buffer.from(entries['manifest.json']!).toString('utf8');
      const newer = text.replace('"format": 1', '"format": 4');
      entries['manifest.json'] = Buffer.from(newer);
      entries['manifest.json.sha256'] = Buffer.from(sha256Of(newer));
    });
    expect((await refused(file)).message).toContain('newer version');
  });

  it('of what is no archive of records', async () => {
    const empty = freshFile('zip');
    writeFileSync(empty, zipSync({ 'readme.txt': Buffer.from('Hello') }));
    expect((await refused(empty)).message).toContain('manifest.json');
    const text = freshFile('zip');
    writeFileSync(text, 'name,longitude,latitude\n');
    expect((await refused(text)).message).toContain('zip');
    expect((await refused(folder)).message).toContain('folder');
    expect((await refused(join(folder, 'none.zip'))).message).toContain('ENOENT');
  });
});

const bin = findPostgresql();
describe.skipIf(!bin)('a backup onto the other kind of database', () => {
  let server: PostgresqlServer;
  beforeAll(async () => {
    server = await startPostgresql(bin!);
  }, 60_000);
  afterAll(() => server?.stop(), 60_000);

  it('goes from SQLite to PostgreSQL and back, and every record is the same', async () => {
    const from = await sqlite();
    await fill(from);
    const middle = { url: await server.freshDatabase() };
    const hills = await openStore(from);
    await hills.putTerrainFile({ name: 'hills.tif' }, [terrainBytes]);
    await hills.close();
    await restore(await backUpFrom(from), middle);
    expect(await read(middle)).toStrictEqual(await read(from));
    const back = await sqlite();
    await restore(await backUpFrom(middle), back);
    expect(await read(back)).toStrictEqual(await read(from));
    const [here, there] = [await openStore(from), await openStore(back)];
    expect(await there.terrainFile()).toEqual(await here.terrainFile());
    expect((await bytesOf(there)).equals(terrainBytes)).toBe(true);
    await Promise.all([here.close(), there.close()]);
    const again = { url: middle.url };
    expect(await refusal(restore(await backUpFrom(from), again))).toBeInstanceOf(NotEmptyError);
  });
});

function sha256Of(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

function has(program: string): boolean {
  return spawnSync(program, ['--version'], { stdio: 'ignore' }).error === undefined;
}
