import { createReadStream, existsSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { type RecordStore, readTerrain, storedTerrain, type Terrain } from '@plugside/records';

/** The ground that was loaded for the district, kept with its records. */
export interface DistrictTerrain {
  /** Comes when what earlier versions kept is among the records, for others to read there. */
  takenIn(): Promise<void>;
  /** Undefined where none was loaded. */
  current(): Promise<Terrain | undefined>;
  /**
   * Reads a GeoTIFF and keeps it in place of what was there.
   * @throws SourceRefusedError where it cannot be read; what was there stays
   */
  load(upload: string, options: { name: string; unit?: 'm' | 'ft' | undefined }): Promise<Terrain>;
  remove(): Promise<void>;
}

/** @param earlierFile where earlier versions kept it, beside the records: it is taken in from there */
export function districtTerrain(store: RecordStore, earlierFile?: string): DistrictTerrain {
  /** As last read: others may have put another file in since. */
  let known: { addedAt: string; sha256: string; terrain: Promise<Terrain | undefined> } | undefined;
  let taken: Promise<void> | undefined;

  const takeIn = async () => {
    if (!earlierFile) return;
    for (const unit of ['m', 'ft', undefined] as const) {
      const kept = keptAs(earlierFile, unit);
      if (!existsSync(kept)) continue;
      // A newer one may have been loaded by another server on the same records.
      if (!(await store.terrainFile())) {
        const given = { name: 'the terrain file', ...(unit && { unit }) };
        await store.putTerrainFile(given, createReadStream(kept));
      }
      await rm(kept);
    }
  };

  const takeInOnce = () => {
    taken ??= takeIn().catch(tell);
    return taken;
  };

  return {
    takenIn: takeInOnce,
    current: async () => {
      await takeInOnce();
      const file = await store.terrainFile();
      if (!file) return undefined;
      const { addedAt, sha256 } = file;
      if (known?.sha256 !== sha256 || known.addedAt !== addedAt) {
        known = { addedAt, sha256, terrain: storedTerrain(store).catch(tell) };
      }
      return known.terrain;
    },
    load: async (upload, { name, unit }) => {
      const terrain = await readTerrain(upload, { name, ...(unit && { unit }) });
      const given = { name, ...(unit && { unit }) };
      const { addedAt, sha256 } = await store.putTerrainFile(given, createReadStream(upload));
      known = { addedAt, sha256, terrain: Promise.resolve(terrain) };
      return terrain;
    },
    remove: async () => {
      await takeInOnce();
      await store.removeTerrainFile();
    },
  };
}

/** Damaged terrain must not take the records with it. */
function tell(error: unknown): undefined {
  console.error(error);
  return undefined;
}

/** Earlier versions kept the unit that was asked for in the name. */
function keptAs(file: string, unit: 'm' | 'ft' | undefined): string {
  return unit === undefined ? file : file.replace(/(\.\w+)?$/, `.${unit}$1`);
}
