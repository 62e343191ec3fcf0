import { type FieldsIn, type Kind, kinds } from '../model/index.ts';
import type { RecordStore } from '../store/record-store.ts';
import { references } from '../store/references.ts';
import { demoDistrict } from './demo-district.ts';
import { demoTerrain } from './demo-terrain.ts';

/**
 * Puts the invented district into a store, its ground too: all of it or, where anything fails, none.
 * Filling a store again changes nothing, and terrain that was loaded since stays.
 * @param seed whole number; 1 where left out
 * @throws RecordIssuesError
 */
export async function fillDemo(store: RecordStore, seed = 1): Promise<void> {
  const { rows } = demoDistrict(seed);
  await store.transaction(async (inside) => {
    const ids = new Map<Kind, Map<string, string>>();
    for (const kind of kinds) {
      await inside.merge(
        kind,
        rows[kind].map((row) => withIds(kind, row, ids)),
      );
      if (references.some(({ to }) => to === kind)) {
        const source = rows[kind][0]?.externalSource;
        ids.set(kind, await idsByExternalId(inside, kind, source));
      }
    }
    if (await inside.terrainFile()) return;
    const { name, bytes } = demoTerrain();
    await inside.putTerrainFile({ name }, [bytes]);
  });
}

async function idsByExternalId(
  store: RecordStore,
  kind: Kind,
  source: string | undefined,
): Promise<Map<string, string>> {
  const ids = new Map<string, string>();
  for await (const { id, externalId, externalSource } of store.all(kind)) {
    if (externalId !== undefined && externalSource === source) ids.set(externalId, id);
  }
  return ids;
}

/** A row with the ids of the records that its fields name. */
function withIds<K extends Kind>(
  kind: K,
  row: FieldsIn<K>,
  ids: ReadonlyMap<Kind, ReadonlyMap<string, string>>,
): FieldsIn<K> {
  const resolved: Record<string, unknown> = { ...row };
  for (const { field, to, list } of references.filter(({ from }) => from === kind)) {
    const idOf = (externalId: string) => ids.get(to)?.get(externalId) ?? externalId;
    const given = resolved[field];
    if (given === undefined) continue;
    resolved[field] = list ? (given as string[]).map(idOf) : idOf(given as string);
  }
  return resolved as FieldsIn<K>;
}
