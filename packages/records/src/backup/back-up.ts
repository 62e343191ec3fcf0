import { createHash, randomBytes } from 'node:crypto';
import { type FileHandle, open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { kinds } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import {
  archiveFormats,
  DRILLS,
  fileOf,
  MANIFEST,
  MANIFEST_SUM,
  type Manifest,
  TERRAIN,
} from './manifest.ts';
import { zipInto } from './zip-writer.ts';

/**
 * Writes every record, as all were at one moment, into one archive: a zip of a file of JSON lines
 * for each kind, the terrain file where one is loaded, drills where there were any, and a manifest. Others may go on writing records meanwhile. The archive takes its
 * name when it is whole and on the disk; one of that name is replaced.
 * @param file where to write it
 * @returns the manifest, with how many records of each kind it holds
 */
export async function backUp(store: RecordStore, file: string): Promise<Manifest> {
  const target = resolve(file);
  const beside = join(
    dirname(target),
    `.${basename(target)}.${randomBytes(4).toString('hex')}.part`,
  );
  try {
    const handle = await open(beside, 'wx');
    let manifest: Manifest;
    try {
      manifest = await store.snapshot((still) => writeArchive(still, handle));
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, target);
    await syncFolder(dirname(target));
    return manifest;
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}

async function writeArchive(store: RecordStore, handle: FileHandle): Promise<Manifest> {
  const zip = zipInto(handle);
  const manifest: Manifest = {
    plugside: 'records',
    format: archiveFormats.records,
    madeAt: new Date().toISOString(),
    files: [],
  };
  for (const kind of kinds) {
    const name = fileOf(kind);
    let records = 0;
    async function* lines() {
      for await (const record of store.all(kind)) {
        records += 1;
        yield `${JSON.stringify(record)}\n`;
      }
    }
    const sha256 = await zip.add(name, lines());
    manifest.files.push({ name, kind, records, sha256 });
  }
  const terrain = await store.terrainFile();
  if (terrain) {
    const { name: title, ...rest } = terrain;
    const sha256 = await zip.add(TERRAIN, store.terrainPieces());
    manifest.format = archiveFormats.withTerrain;
    manifest.terrain = { name: TERRAIN, title, ...rest, sha256 };
  }
  const drills = await store.drillRuns.list({ limit: 1 });
  if (drills.length > 0) {
    let runs = 0;
    async function* lines() {
      for await (const drill of store.drillRuns.all()) {
        runs += 1;
        yield `${JSON.stringify(drill)}\n`;
      }
    }
    const sha256 = await zip.add(DRILLS, lines());
    manifest.format = archiveFormats.withDrills;
    manifest.drills = { name: DRILLS, runs, sha256 };
  }
  const text = `${JSON.stringify(manifest, null, 2)}\n`;
  await zip.add(MANIFEST, [text]);
  const sum = createHash('sha256').update(text).digest('hex');
  await zip.add(MANIFEST_SUM, [`${sum}  ${MANIFEST}\n`]);
  await zip.end();
  return manifest;
}

/** So that a power cut does not take the name back. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder);
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
