/** The terrain file among the records. */
import { createHash } from 'node:crypto';
import { openStore, type RecordStore } from '@plugside/records';
import { describe, expect, it } from 'vitest';
import { type Fresh, refusal, withStore } from './trial.ts';

/** Every byte from 0 to 255 again and again, over more than one row. */
export const terrainBytes = Uint8Array.from({ length: 2_500_001 }, (_, n) => (n * 31) & 255);

export async function bytesOf(store: RecordStore): Promise<Buffer> {
  const pieces: Uint8Array[] = [];
  for await (const piece of store.terrainPieces()) pieces.push(piece);
  return Buffer.concat(pieces);
}

export function describeTerrain(fresh: Fresh): void {
  describe('terrain', () => {
    it(
      'comes back byte for byte with what is said of it, after closing and opening too',
      withStore(fresh, async (store, target) => {
        expect(await store.terrainFile()).toBeUndefined();
        const pieces = [terrainBytes.subarray(0, 7), terrainBytes.subarray(7)];
        const put = await store.putTerrainFile({ name: 'a.tif', unit: 'ft' }, pieces);
        expect(put).toMatchObject({
          name: 'a.tif',
          unit: 'ft',
          bytes: terrainBytes.length,
          sha256: createHash('sha256').update(terrainBytes).digest('hex'),
        });
        const again = 'memory' in target ? store : await openStore(target);
        expect(await again.terrainFile()).toEqual(put);
        expect((await bytesOf(again)).equals(terrainBytes)).toBe(true);
        if (again !== store) await again.close();
      }),
    );

    it(
      'is replaced whole, or stays whole where the new file breaks off',
      withStore(fresh, async (store) => {
        await store.putTerrainFile({ name: 'long.tif' }, [terrainBytes]);
        await store.putTerrainFile({ name: 'short.tif' }, [terrainBytes.subarray(0, 10)]);
        expect(await bytesOf(store)).toHaveLength(10);
        async function* broken() {
          yield terrainBytes;
          throw new Error('The connection is gone.');
        }
        await refusal(store.putTerrainFile({ name: 'broken.tif' }, broken()));
        expect(await store.terrainFile()).toMatchObject({ name: 'short.tif', bytes: 10 });
        expect(await bytesOf(store)).toHaveLength(10);
        await store.removeTerrainFile();
        expect(await store.terrainFile()).toBeUndefined();
        expect(await bytesOf(store)).toHaveLength(0);
      }),
    );

    it(
      'put in by several at once is one of theirs, whole',
      withStore(fresh, async (store) => {
        await Promise.all(
          [1, 2, 3].map((n) =>
            store.putTerrainFile({ name: `${n}.tif` }, [terrainBytes.subarray(0, n * 800_000)]),
          ),
        );
        const file = await store.terrainFile();
        expect(file?.bytes).toBe(Number(file?.name[0]) * 800_000);
        expect(await bytesOf(store)).toHaveLength(file!.bytes);
      }),
    );
  });
}
