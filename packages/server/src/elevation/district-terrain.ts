import { existsSync } from 'node:fs';
import { copyFile, mkdir, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { readTerrain, type Terrain } from '@plugside/records';

/** The ground that was loaded for the district, kept in one file. */
export interface DistrictTerrain {
  /** Undefined where none was loaded. */
  current(): Promise<Terrain | undefined>;
  /**
   * Reads a GeoTIFF and keeps it in place of what was there.
   * @throws SourceRefusedError where it cannot be read; what was there stays
   */
  load(upload: string, options: { name: string; unit?: 'm' | 'ft' | undefined }): Promise<Terrain>;
  remove(): Promise<void>;
}

/** @param file where it is kept between starts */
export function districtTerrain(file: string): DistrictTerrain {
  let terrain: Promise<Terrain | undefined> | undefined;

  const fromFile = async (): Promise<Terrain | undefined> => {
    for (const unit of ['m', 'ft', undefined] as const) {
      const kept = keptAs(file, unit);
      if (existsSync(kept)) return readTerrain(kept, { name: 'the terrain file', unit });
    }
    return undefined;
  };

  return {
    current: () => {
      terrain ??= fromFile().catch((error: unknown) => {
        // A damaged file must not take the records with it.
        console.error(error);
        return undefined;
      });
      return terrain;
    },
    load: async (upload, { name, unit }) => {
      const loaded = await readTerrain(upload, { name, unit });
      await mkdir(dirname(file), { recursive: true });
      const beside = `${file}.new`;
      await copyFile(upload, beside);
      await removeAll(file);
      await rename(beside, keptAs(file, unit));
      terrain = Promise.resolve(loaded);
      return loaded;
    },
    remove: async () => {
      await removeAll(file);
      terrain = Promise.resolve(undefined);
    },
  };
}

/** The unit that was asked for is in the name, since the file itself may not say it. */
function keptAs(file: string, unit: 'm' | 'ft' | undefined): string {
  return unit === undefined ? file : file.replace(/(\.\w+)?$/, `.${unit}$1`);
}

async function removeAll(file: string): Promise<void> {
  for (const unit of ['m', 'ft', undefined] as const) await rm(keptAs(file, unit), { force: true });
}
