import type { RecordStore } from '../store/index.ts';
import { terrainFrom } from './read-geotiff.ts';
import type { Terrain } from './terrain.ts';

/**
 * The ground that is kept with the records; undefined where none is.
 * @throws SourceRefusedError where what is kept cannot be read
 */
export function storedTerrain(store: RecordStore): Promise<Terrain | undefined> {
  return store.snapshot(async (still) => {
    const file = await still.terrainFile();
    if (!file) return undefined;
    const pieces: Uint8Array[] = [];
    for await (const piece of still.terrainPieces()) pieces.push(piece);
    return terrainFrom(Buffer.concat(pieces), file);
  });
}
