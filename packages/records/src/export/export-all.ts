import { open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { zipInto } from '../backup/zip-writer.ts';
import { kinds, recordSchemas } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import { exportCsv } from './export-csv.ts';
import { exportGeoJson } from './export-geojson.ts';

const about = `What a department keeps, as tables and maps for any program.

A CSV for each kind of record; a GeoJSON as well for those with a place.
Values are in gpm, psi, ft, in and gal, as the columns' names say; places in degrees WGS 84.
"origins" says of each value where it comes from.

Each file can be imported again. To move everything to another database, or to keep a copy
against loss, use the backup: it holds the records exactly.
`;

/**
 * Every record of every kind as one zip archive for people: CSV and GeoJSON, all as they were at one
 * moment. The archive takes its name when it is whole.
 * @param file where to write it; one of that name is replaced
 * @returns how many records of each kind
 */
export async function exportAll(store: RecordStore, file: string): Promise<Record<string, number>> {
  const target = resolve(file);
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}.part`);
  const counts: Record<string, number> = {};
  try {
    const handle = await open(beside, 'w');
    try {
      await store.snapshot(async (still) => {
        const zip = zipInto(handle);
        await zip.add('READ-ME.txt', [about]);
        for (const kind of kinds) {
          counts[kind] = await still.count(kind);
          await zip.add(`${kind}.csv`, exportCsv(still, kind));
          if (hasShape(kind)) await zip.add(`${kind}.geojson`, exportGeoJson(still, kind));
        }
        await zip.end();
      });
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, target);
    return counts;
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}

const hasShape = (kind: (typeof kinds)[number]) =>
  'longitude' in recordSchemas[kind].shape || 'path' in recordSchemas[kind].shape;
